import * as z from 'zod/mini';
import { canonicalJson, jsonFault } from './canonical-json.ts';
import { idSchema, keySchema, type Id, type RecordKey } from './keys.ts';
import {
  compareBytewise,
  counterOf,
  counterSchema,
  deviceIdSchema,
  deviceOf,
  makeStamp,
  stampSchema,
  type DeviceId,
  type Stamp,
} from './stamp.ts';

/** Device → highest counter of one key that the author of a version had; devices it had nothing of are absent. */
export type Seen = { readonly [device: DeviceId]: number };

/** What a record holds, opaque here: unknown fields and values of newer builds are carried along untouched. */
export type RecordValue = { readonly [field: string]: unknown };

/** One state of a record that somebody left; without a value it is a removal, which is kept for ever. */
export interface Version<V = RecordValue> {
  readonly key: RecordKey;
  readonly value?: V;
  readonly stamp: Stamp;
  readonly seen: Seen;
  /** The person's id, or the device's while nobody has a name on this phone. */
  readonly by: Id;
}

/** What somebody wants a record to be from now on. */
export type Change<V = RecordValue> =
  { readonly key: RecordKey; readonly value: V } | { readonly key: RecordKey; readonly removed: true };

/** Who writes: the device, its counter before this version, and the person. */
export interface Author {
  readonly device: DeviceId;
  readonly counter: number;
  readonly by: Id;
}

const valueSchema = z
  .record(z.string(), z.unknown())
  .check(z.refine((value) => jsonFault(value) === undefined));

/** Checks a version that comes in by file or network: the envelope strictly, of the value only that it is JSON. */
export const versionSchema = z
  .strictObject({
    key: keySchema,
    value: z.optional(valueSchema),
    stamp: stampSchema,
    seen: z.record(deviceIdSchema, counterSchema),
    by: idSchema,
  })
  // A Lamport counter is above all that its author had seen; otherwise two versions could cover each other.
  .check(z.refine(({ stamp, seen }) => Object.values(seen).every((counter) => counter < counterOf(stamp))));

const seenOf = (seen: Seen, device: DeviceId): number =>
  Object.hasOwn(seen, device) ? (seen[device] ?? 0) : 0;

/** True when the author of `later` had `earlier` before it, whatever lay between them. */
export const covers = (later: Version<unknown>, earlier: Version<unknown>): boolean =>
  seenOf(later.seen, deviceOf(earlier.stamp)) >= counterOf(earlier.stamp);

/** The highest counter per device of all of these; none gives none. */
function joinSeen(seens: readonly Seen[]): Seen {
  const joined: Record<DeviceId, number> = {};
  for (const [device, counter] of seens.flatMap((seen) => Object.entries(seen) as [DeviceId, number][])) {
    joined[device] = Math.max(seenOf(joined, device), counter);
  }
  return joined;
}

const ownSeen = ({ stamp }: Version<unknown>): Seen => ({ [deviceOf(stamp)]: counterOf(stamp) });

export const isRemoval = (version: Version<unknown>): boolean => version.value === undefined;

const valueText = (version: Version<unknown>): string =>
  version.value === undefined ? '' : canonicalJson(version.value);

/** True when both say the same, however their fields are ordered; two removals say the same. */
export const sameValue = (a: Version<unknown>, b: Version<unknown>): boolean => valueText(a) === valueText(b);

/** Rank among the versions of one key: by stamp; under one stamp (a cloned device) by the value's text. */
const compareVersions = (a: Version<unknown>, b: Version<unknown>): number =>
  compareBytewise(a.stamp, b.stamp) || compareBytewise(valueText(a), valueText(b));

/**
 * All versions of one key that no other covers, in rank order; equal ones once. Commutes, associates and is
 * idempotent; whatever version in between is missing changes nothing. None gives none.
 */
export function mergeVersions<V>(...sets: readonly (readonly Version<V>[])[]): readonly Version<V>[] {
  const all = sets.flat().sort(compareVersions);
  const once = all.filter((version, at) => {
    const next = all[at + 1];
    return next === undefined || compareVersions(version, next) !== 0;
  });
  const had = joinSeen(once.map((version) => version.seen));
  return once.filter((version) => seenOf(had, deviceOf(version.stamp)) < counterOf(version.stamp));
}

/** The version to show: the highest of a merged set, which may be a removal; undefined when there is none. */
export const displayed = <V>(set: readonly Version<V>[]): Version<V> | undefined => set.at(-1);

/** True when versions that say different things stand side by side, so that a person has to decide. */
export function isClash(set: readonly Version<unknown>[]): boolean {
  const [first, ...rest] = set;
  return first !== undefined && rest.some((other) => !sameValue(first, other));
}

/**
 * The version that a change makes of all that its author had; over a clash it is the decision. It covers the
 * whole set, never a part of it: a device whose own versions stood side by side could not be covered one by one.
 */
export function nextVersion<V>(
  set: readonly Version<unknown>[],
  change: Change<V>,
  author: Author,
): Version<V> {
  const seen = joinSeen([...set.map((version) => version.seen), ...set.map(ownSeen)]);
  const counter = Math.max(author.counter, ...Object.values(seen)) + 1;
  const stamp = makeStamp(counter, author.device);
  const { key } = change;
  return { key, ...('value' in change && { value: change.value }), stamp, seen, by: author.by };
}

/** A device that found another writing under its id: what left it up to `sentThrough` keeps the old id. */
export interface NewIdentity {
  readonly from: DeviceId;
  readonly to: DeviceId;
  readonly sentThrough: number;
}

/**
 * The same version under the device's new id if it never left the device, otherwise itself. It goes on
 * covering its own unsent forerunners, but of the old id only what was sent: the rest may be the twin's.
 */
export function restamp<V>(version: Version<V>, { from, to, sentThrough }: NewIdentity): Version<V> {
  const counter = counterOf(version.stamp);
  if (deviceOf(version.stamp) !== from || counter <= sentThrough) return version;
  const { [from]: own = 0, ...others } = version.seen;
  const seen: Record<DeviceId, number> = { ...others };
  if (Math.min(own, sentThrough) > 0) seen[from] = Math.min(own, sentThrough);
  if (own > sentThrough) seen[to] = own;
  const by = version.by === (from as string) ? (to as string as Id) : version.by;
  return { ...version, stamp: makeStamp(counter, to), seen, by };
}

/** The newest `v` of a record value that this build understands, the same for all kinds so far. */
export const valueVersion = 1;

/** True when a newer build wrote this value: it is shown as such, counts as open and is never edited. */
export const isNewer = (value: RecordValue, ours: number): boolean =>
  typeof value['v'] === 'number' && value['v'] > ours;
