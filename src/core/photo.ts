import * as z from 'zod/mini';
import { placeSchema } from './keys.ts';
import { text } from './machine.ts';
import { hashSchema } from './photo-evidence.ts';
import { observedAtSchema } from './readings.ts';

/** How near a picture was taken: the whole part, the region, the fault itself. */
export const photoScales = ['wide', 'mid', 'close'] as const;
export type PhotoScale = (typeof photoScales)[number];

/** Readings and places that one picture can speak for. */
export const mostShown = 20;

/** What a picture shows: a place, and the item there where it speaks for one. */
const shownSchema = z.looseObject({ place: placeSchema, item: z.optional(text(60)) });
export type Shown = z.infer<typeof shownSchema>;

/**
 * A picture of a walk. Its key names the SHA-256 of the bytes as stored: a JPEG without metadata, upright. Sizes are
 * bytes and pixels; `original` is the file as it came from camera or gallery, which is not kept.
 */
export const photoSchema = z.looseObject({
  v: z.literal(1),
  type: z.literal('image/jpeg'),
  bytes: z.int().check(z.gte(1)),
  width: z.int().check(z.gte(1), z.lte(20_000)),
  height: z.int().check(z.gte(1), z.lte(20_000)),
  original: z.looseObject({
    sha256: hashSchema,
    bytes: z.int().check(z.gte(1)),
    type: z.optional(text(60)),
  }),
  shows: z.array(shownSchema).check(z.maxLength(mostShown)),
  scale: z.optional(z.enum(photoScales)),
  /** Which picture of a rental walk's sequence it is. */
  shot: z.optional(text(60)),
  from: z.enum(['camera', 'gallery']),
  /** When it was taken in; the picture itself carries no time. */
  at: z.optional(observedAtSchema),
  /** When the camera says that it was taken: local time as written in the original, without a zone. */
  takenAt: z.optional(text(40)),
  /** Only where the person wants it. */
  position: z.optional(
    z.looseObject({
      lat: z.number().check(z.gte(-90), z.lte(90)),
      lon: z.number().check(z.gte(-180), z.lte(180)),
      accuracyM: z.optional(z.number().check(z.gte(0))),
    }),
  ),
  note: z.optional(text(4000)),
});
export type Photo = z.infer<typeof photoSchema>;
