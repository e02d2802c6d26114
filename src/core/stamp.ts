import * as z from 'zod/mini';
import { assert, err, ok, type Result } from './result.ts';

const hex = (value: number, digits: number): string => value.toString(16).padStart(digits, '0');

/** Name of one device: 16 lower-case hex digits of randomness; made once, never derived from a person. */
export const deviceIdSchema = z
  .string()
  .check(z.regex(/^[0-9a-f]{16}$/))
  .brand<'DeviceId'>();
export type DeviceId = z.infer<typeof deviceIdSchema>;

/** A Lamport counter; the first version of a device carries 1, 0 means that nothing was made or seen. */
export const highestCounter = 2 ** 48 - 1;
export const counterSchema = z.int().check(z.gte(0), z.lte(highestCounter));

/** Names one version: 12 hex digits of a Lamport counter, `-`, device id. Bytewise order is counter order. */
export const stampSchema = z
  .string()
  .check(z.regex(/^[0-9a-f]{12}-[0-9a-f]{16}$/))
  .brand<'Stamp'>();
export type Stamp = z.infer<typeof stampSchema>;

/** Makes a device id of exactly 8 random bytes. */
export function deviceIdOf(random: Uint8Array): DeviceId {
  assert(random.length === 8, 'a device id takes 8 random bytes');
  return Array.from(random, (byte) => hex(byte, 2)).join('') as DeviceId;
}

/** Makes the stamp of a device's version; counters outside 1 … 2^48 − 1 are a bug. */
export function makeStamp(counter: number, device: DeviceId): Stamp {
  assert(Number.isInteger(counter) && counter > 0 && counter <= highestCounter, 'a stamp counts from 1');
  return `${hex(counter, 12)}-${device}` as Stamp;
}

/** Reads a stamp that somebody else wrote; undefined when it is none. */
export function parseStamp(text: string): Stamp | undefined {
  const parsed = stampSchema.safeParse(text);
  return parsed.success ? parsed.data : undefined;
}

export const counterOf = (stamp: Stamp): number => Number.parseInt(stamp.slice(0, 12), 16);

export const deviceOf = (stamp: Stamp): DeviceId => stamp.slice(13) as DeviceId;

/** Bytewise order of stamps, or of any strings of one kind: below 0, 0 or above 0. Never by locale. */
export const compareBytewise = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** How far ahead of ours a foreign counter may run; one further is a fault or an attack, not work. */
export const furthestAhead = 1_000_000;

/**
 * Our counter after having seen others', or the first one that runs further ahead of it than `furthest`.
 * Without foreign stamps the counter stays.
 */
export function observeStamps(
  counter: number,
  foreign: readonly Stamp[],
  furthest = furthestAhead,
): Result<number, Stamp> {
  const ahead = foreign.find((stamp) => counterOf(stamp) > counter + furthest);
  if (ahead !== undefined) return err(ahead);
  return ok(foreign.reduce((highest, stamp) => Math.max(highest, counterOf(stamp)), counter));
}
