/** What a reading is taken with. Steps and uncertainties in millimetres. */
export interface Tool {
  readonly id: string;
  /** The smallest step it shows. */
  readonly resolutionMm: number;
  /** Standard uncertainty of using it on a cleaned, worn part, besides its step: our estimates. */
  readonly uMm: number;
}

export const tools: readonly Tool[] = [
  { id: 'caliper', resolutionMm: 0.1, uMm: 0.2 },
  { id: 'depth-gauge', resolutionMm: 0.5, uMm: 0.3 },
  { id: 'tread-gauge', resolutionMm: 25.4 / 32, uMm: 0.3 },
  { id: 'rule', resolutionMm: 1, uMm: 0.5 },
  { id: 'tape', resolutionMm: 1, uMm: 0.5 },
  { id: 'straightedge', resolutionMm: 1, uMm: 1 },
  { id: 'bolt-or-dowel', resolutionMm: 1, uMm: 1 },
  { id: 'eye', resolutionMm: 5, uMm: 5 },
];

/** Standard uncertainty by tool, as `score` takes it. */
export const toolUncertainty: Readonly<Record<string, number>> = Object.fromEntries(
  tools.map(({ id, uMm }) => [id, uMm]),
);
