/** A sheet of known size in mm, with the standard uncertainty of each side. */
interface KnownSheet {
  readonly mm: readonly [long: number, short: number];
  readonly uMm: readonly [long: number, short: number];
}

/** Half-widths are limits: u = a/√3 (JCGM 100:2008, 4.3.7). */
const fromLimits = (half: number): number => half / Math.sqrt(3);

/**
 * A4 is 297 × 210 mm, and dimensions over 150 and up to 600 mm are within 2 mm (ISO 216:2007, tolerances, from
 * memory). Letter is 11 × 8.5 in (ANSI/ASME Y14.1); for its tolerance that of ISO 216 is taken, estimate.
 */
export const knownSheets: Readonly<Record<'a4' | 'letter', KnownSheet>> = {
  a4: { mm: [297, 210], uMm: [fromLimits(2), fromLimits(2)] },
  letter: { mm: [279.4, 215.9], uMm: [fromLimits(2), fromLimits(2)] },
};

/** Standard uncertainty in mm of a length that was read with a rule and typed: as a rule's; estimate. */
export const typedU = 0.5;

/**
 * Length of so many links, from the pitch when new and at its limit, in mm: the middle, and a/√3 of half the way
 * between them, since the chain may be anywhere in its life.
 */
export function linksLength(
  newMm: number,
  limitMm: number,
  links: number,
): { readonly mm: number; readonly uMm: number } {
  return { mm: (links * (newMm + limitMm)) / 2, uMm: fromLimits((links * Math.abs(limitMm - newMm)) / 2) };
}
