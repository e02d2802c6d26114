import * as z from 'zod/mini';

/** A SHA-256 as 64 hexadecimal digits. */
export const hashSchema = z.string().check(z.regex(/^[0-9a-f]{64}$/));

const pixel = z.number().check(z.gte(-20_000), z.lte(40_000));
const mark = z.tuple([pixel, pixel]);
const size = z.number().check(z.gt(0), z.lte(100_000));
const u = z.number().check(z.gte(0), z.lte(10_000));

/** What gives a picture its scale: a known length, or the four corners of a known rectangle, width first. */
const pictureScaleSchema = z.discriminatedUnion('kind', [
  z.looseObject({
    kind: z.literal('length'),
    mm: size,
    /** Standard uncertainty of the length in mm. */
    uMm: u,
    marks: z.tuple([mark, mark]),
    of: z.optional(z.string().check(z.maxLength(40))),
  }),
  z.looseObject({
    kind: z.literal('rectangle'),
    mm: z.tuple([size, size]),
    /** Standard uncertainties of width and height in mm. */
    uMm: z.tuple([u, u]),
    marks: z.tuple([mark, mark, mark, mark]),
    of: z.optional(z.string().check(z.maxLength(40))),
  }),
]);
export type PictureScale = z.infer<typeof pictureScaleSchema>;

/** What can be measured: the way between two marks, or how far others lie from the line through the first two. */
const pictureMeasures = ['distance', 'from-line'] as const;
export type PictureMeasure = (typeof pictureMeasures)[number];

/** The picture and the marks in it from which a reading was taken. Marks are pixels of the picture as stored. */
export const photoEvidenceSchema = z.looseObject({
  /** SHA-256 of the picture's bytes. */
  photo: hashSchema,
  scale: pictureScaleSchema,
  measure: z.enum(pictureMeasures),
  marks: z.array(mark).check(z.minLength(2), z.maxLength(12)),
  /** Standard deviation of a mark in picture pixels, each way. */
  uPx: z.number().check(z.gt(0), z.lte(1000)),
  /** Size as measured and its standard uncertainty, in mm. */
  mm: z.number().check(z.gte(0), z.lte(100_000)),
  uMm: u,
});
export type PhotoEvidence = z.infer<typeof photoEvidenceSchema>;
