interface Step {
  readonly upToMm: number;
  readonly sagMm: number;
}

// sottocarri.it tensioning page: pitch 125/140/155 → 20 mm; 160/171/175/190 → 35 mm; 203/215/228/260 → 50 mm.
// Between two printed pitches the smaller sag is taken up to half-way.
const steps: readonly Step[] = [
  { upToMm: 157.5, sagMm: 20 },
  { upToMm: 196.5, sagMm: 35 },
  { upToMm: 260, sagMm: 50 },
];

/** The least pitch in mm that the print speaks of. */
const leastMm = 125;

/**
 * Sag in mm of the top run of a small steel undercarriage by chain pitch in mm, read with a rule (sottocarri.it).
 * Undefined outside 125 to 260 mm.
 */
export const sagByPitch = (pitchMm: number): number | undefined =>
  pitchMm < leastMm ? undefined : steps.find(({ upToMm }) => pitchMm <= upToMm)?.sagMm;
