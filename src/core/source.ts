import * as z from 'zod/mini';

/**
 * How far a figure can be trusted: printed by a maker, standard or handbook; computed from such; weakly
 * published; from memory; common practice without a source; our own estimate; entered or measured by a person.
 */
export const sourceMarks = [
  'published',
  'derived',
  'weak',
  'from-memory',
  'common-practice',
  'estimate',
  'entered',
  'measured',
] as const;
export type SourceMark = (typeof sourceMarks)[number];

export const sourceSchema = z.looseObject({
  mark: z.enum(sourceMarks),
  text: z.string().check(z.maxLength(400)),
});
export type Source = z.infer<typeof sourceSchema>;

/** True for a figure that no verdict should lean on without saying so. */
export const isSoft = (source: Source): boolean =>
  source.mark === 'estimate' || source.mark === 'from-memory' || source.mark === 'weak';
