import * as z from 'zod/mini';

/** What a seal may take as text: it holds a whole walk. */
export const mostSealBytes = 524_288;

/** A sealed walk as it was signed: a compact JWS. Its key names the SHA-256 of this text. */
export const sealSchema = z.looseObject({
  v: z.literal(1),
  jws: z.string().check(z.maxLength(mostSealBytes), z.regex(/^[\w-]+\.[\w-]+\.[\w-]+$/)),
});
export type SealRecord = z.infer<typeof sealSchema>;
