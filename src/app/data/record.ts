import { valueIn } from '../../core/assemble.ts';
import type { RecordKey } from '../../core/keys.ts';
import { ok } from '../../core/result.ts';
import { displayed, isClash, isNewer, isRemoval, valueVersion, type Version } from '../../core/versions.ts';
import { useLive, type Live } from './live.ts';
import { store } from './phone.ts';

/** A record as it stands on this phone. */
export interface Found<T> {
  /** Absent when it was never here, was removed, or comes from a newer build. */
  readonly value: T | undefined;
  readonly stamp: string | undefined;
  readonly newer: boolean;
  readonly removed: boolean;
  /** More than one that say different things: a person has to decide. */
  readonly clash: readonly Version[];
}

export function foundIn<T>(versions: readonly Version[]): Found<T> {
  const shown = displayed(versions);
  return {
    value: valueIn<T>(versions),
    stamp: shown?.stamp,
    newer: shown?.value !== undefined && isNewer(shown.value, valueVersion),
    removed: shown !== undefined && isRemoval(shown),
    clash: isClash(versions) ? versions : [],
  };
}

/** One record, read again whenever it changes. */
export const useRecord = <T>(key: RecordKey | undefined): Live<Found<T>> =>
  useLive(`record ${key}`, key === undefined ? [] : [key], async () => {
    const answer = key === undefined ? ok([]) : await store.read(key);
    return answer.ok ? ok(foundIn<T>(answer.value)) : answer;
  });
