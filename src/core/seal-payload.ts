import * as z from 'zod/mini';
import { jsonFault } from './canonical-json.ts';
import { differencesOf, type Difference } from './differences.ts';
import { idSchema, isKind, keySchema, kindOf, parseKey, partsOf, type Id, type RecordKey } from './keys.ts';
import { text } from './machine.ts';
import { signerRoles } from './person.ts';
import { hashSchema } from './photo-evidence.ts';
import { observedAtSchema } from './readings.ts';
import { counterOf, deviceOf, parseStamp, stampSchema } from './stamp.ts';
import { versionSchema } from './versions.ts';

export const sealFormat = 'sagline-seal';

/** Records that one seal may hold; a full walk of a large machine has some two hundred. */
const mostSealedRecords = 5000;

const json = z.unknown().check(z.refine((value) => value !== undefined && jsonFault(value) === undefined));

/** A record as it was when it was sealed, with the stamp that says which version it is. */
const sealedRecordSchema = z.strictObject({
  key: keySchema,
  value: z.record(z.string(), z.unknown()).check(z.refine((value) => jsonFault(value) === undefined)),
  stamp: z.optional(stampSchema),
  seen: z.optional(versionSchema.shape.seen),
  by: z.optional(idSchema),
});
export type SealedRecord = z.infer<typeof sealedRecordSchema>;

/**
 * What a seal signs, as canonical JSON: the walk with everything that its verdict leans on, and the verdict itself.
 * People are named by a salted hash alone, pictures by the hashes in their keys.
 */
export const sealPayloadSchema = z.strictObject({
  format: z.literal(sealFormat),
  version: z.literal(1),
  walk: keySchema.check(z.refine((key) => isKind(key, 'walk'))),
  machine: keySchema.check(z.refine((key) => isKind(key, 'machine'))),
  sealedAt: observedAtSchema,
  /** The build of the core that worked the verdict out. */
  core: text(80),
  /** One version of each record: the one that counted. */
  records: z.array(sealedRecordSchema).check(
    z.minLength(1),
    z.maxLength(mostSealedRecords),
    z.refine((records) => new Set(records.map(({ key }) => key)).size === records.length),
  ),
  people: z
    .array(
      z.strictObject({
        key: keySchema.check(z.refine((key) => isKind(key, 'person'))),
        role: z.enum(signerRoles),
        hash: hashSchema,
        /** They signed that they do not agree; in which words, their own record says. */
        objects: z.optional(z.boolean()),
      }),
    )
    .check(z.maxLength(20)),
  /** Call, meanwhile and reasons. */
  verdict: json,
  /** What was not known, with why. */
  open: z.array(json),
  /** What the walk's purpose asks for beside the verdict. */
  outcome: z.optional(json),
  hours: z.optional(json),
  plan: z.optional(json),
  /** The last seal of this machine before this one: SHA-256 of its text. */
  previous: z.optional(hashSchema),
});
export type SealPayload = z.infer<typeof sealPayloadSchema>;

/** A record that lies in the clear beside a seal, in a file or on a phone. */
export interface ClearRecord {
  readonly key: RecordKey;
  readonly value?: unknown;
  readonly stamp?: string | undefined;
  readonly seen?: unknown;
  readonly by?: string | undefined;
}

/** How the records differ from what was sealed; a path begins at the record: `value`, then its fields. */
export interface SealChange extends Difference {
  readonly kind: 'changed' | 'missing' | 'added';
  readonly key: RecordKey;
  /** It is by another version, written beside the sealed one or after it: a removal where the record is missing. */
  readonly otherVersion?: true;
}

/** Whether whoever made the sealed version had this one, so that it cannot have come after it. */
function isBefore({ stamp }: ClearRecord, { stamp: own, seen }: SealedRecord): boolean {
  const parsed = stamp === undefined || stamp === own ? undefined : parseStamp(stamp);
  return parsed !== undefined && (seen?.[deviceOf(parsed)] ?? 0) >= counterOf(parsed);
}

/** Whether a record was written beside the sealed one: with a stamp of its own, and not before it. */
const isBeside = (record: ClearRecord, sealed: SealedRecord): boolean =>
  record.stamp !== undefined && record.stamp !== sealed.stamp && !isBefore(record, sealed);

const mark = (isOther: boolean): Pick<SealChange, 'otherVersion'> => (isOther ? { otherVersion: true } : {});

function changesOf(sealed: SealedRecord, clear: readonly ClearRecord[]): readonly SealChange[] {
  const { key } = sealed;
  if (clear.every(({ value }) => value === undefined))
    return [{ kind: 'missing', key, path: [], ...mark(clear.some((each) => isBeside(each, sealed))) }];
  const isHere = clear.some(({ stamp }) => stamp === sealed.stamp);
  // Beside the sealed version an older one says nothing; in its place it does.
  const telling = isHere ? clear.filter((record) => !isBefore(record, sealed)) : clear;
  return telling.flatMap((record) =>
    differencesOf(sealed, record).map((each): SealChange => ({
      kind: 'changed',
      key,
      ...each,
      ...mark(isBeside(record, sealed)),
    })),
  );
}

/** Readings and pictures belong to the walk; what else lies beside the seal may belong to others. */
function belongsTo(walk: Id, key: RecordKey): boolean {
  const parts = partsOf(key);
  return (parts.kind === 'reading' || parts.kind === 'photo') && parts.walk === walk;
}

/** Every difference between what was sealed and the records in the clear, and what came to the walk since. */
export function changesSince(payload: SealPayload, clear: readonly ClearRecord[]): readonly SealChange[] {
  const byKey = new Map<RecordKey, ClearRecord[]>();
  for (const record of clear) byKey.set(record.key, [...(byKey.get(record.key) ?? []), record]);
  const walk = parseKey(payload.walk);
  const sealed = new Set(payload.records.map(({ key }) => key));
  const added = [...byKey.keys()].filter((key) => {
    if (walk?.kind !== 'walk' || sealed.has(key) || !belongsTo(walk.id, key)) return false;
    return byKey.get(key)?.some(({ value }) => value !== undefined) === true;
  });
  return [
    ...payload.records.flatMap((record) => changesOf(record, byKey.get(record.key) ?? [])),
    ...added.map((key): SealChange => ({ kind: 'added', key, path: [] })),
  ];
}

/** The hashes of the pictures that a seal holds. */
export const sealedPhotos = ({ records }: SealPayload): readonly string[] =>
  records.flatMap(({ key }) => {
    const parts = kindOf(key) === 'photo' ? partsOf(key) : undefined;
    return parts?.kind === 'photo' ? [parts.hash] : [];
  });
