import * as z from 'zod/mini';

export const grounds = ['soft-soil', 'mixed', 'gravel', 'rock', 'demolition', 'paving'] as const;
export const turnings = ['little', 'some', 'much'] as const;

const between = (least: number, most: number) => z.number().check(z.gte(least), z.lte(most));

/** What a machine is wanted for, by which tracks for it are compared. */
export const useSchema = z.looseObject({
  /** Shares of the working hours by ground; they count against each other, whatever they add up to. */
  ground: z.optional(z.partialRecord(z.enum(grounds), between(0, 100))),
  turning: z.optional(z.enum(turnings)),
  hoursAYear: z.optional(between(1, 8784)),
  /** True where rock or rubble is sharp, which cuts rubber. */
  sharp: z.optional(z.boolean()),
  /** True for a machine that has yet to get its tracks. */
  noTracksYet: z.optional(z.boolean()),
  /** True where paving must not be marked. */
  noMarks: z.optional(z.boolean()),
  /** False where the track frame takes no steel. */
  takesSteel: z.optional(z.boolean()),
  /** The most that the machine may weigh on the trailer, its attachments included. */
  mostMassKg: z.optional(z.number().check(z.gt(0))),
  /** Figures put in the place of starting ones, by their name. */
  own: z.optional(z.record(z.string(), between(0, 1e6))),
});
export type Use = z.infer<typeof useSchema>;
