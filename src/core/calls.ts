/** What an item needs, mildest first. */
export const calls = ['run', 'recheck', 'adjust', 'repair', 'replace', 'park'] as const;
export type Call = (typeof calls)[number];

/** What the machine may do until that is done, freest first. */
export const meanwhiles = ['work', 'light-work', 'move-only', 'nothing'] as const;
export type Meanwhile = (typeof meanwhiles)[number];

export const callRank = (call: Call): number => calls.indexOf(call);
export const meanwhileRank = (meanwhile: Meanwhile): number => meanwhiles.indexOf(meanwhile);

/** The more severe of two calls. */
export const worseCall = (a: Call, b: Call): Call => (callRank(a) >= callRank(b) ? a : b);

/** The stricter of two *meanwhile*s. */
export const stricter = (a: Meanwhile, b: Meanwhile): Meanwhile =>
  meanwhileRank(a) >= meanwhileRank(b) ? a : b;
