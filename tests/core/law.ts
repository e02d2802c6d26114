import fc from 'fast-check';

/** The same cases on every run; another seed looks further: `SEED=7 npx vitest …`. */
const seed = Number(process.env['SEED'] ?? 20_260_102);

/** The share of the cases to run of laws over whole walks: mutation tests run every law for every mutant. */
const portion = Number(process.env['LAW_PORTION'] ?? 1);

/** How many cases of so many are run. */
export const casesOf = (numRuns: number): number => Math.ceil(numRuns * portion);

/** Checks a property over many cases; a case that fails is printed with its seed and shrunk. */
export function law<T extends [unknown, ...unknown[]]>(
  property: fc.IPropertyWithHooks<T>,
  numRuns = 200,
): void {
  fc.assert(property, { seed, numRuns });
}

/** The same over whole walks, which take long. */
export function lawOfWalks<T extends [unknown, ...unknown[]]>(
  property: fc.IPropertyWithHooks<T>,
  numRuns = 200,
): void {
  law(property, casesOf(numRuns));
}
