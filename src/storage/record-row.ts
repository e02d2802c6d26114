import type { RecordKey } from '../core/keys.ts';
import { isClash, type Version } from '../core/versions.ts';
import type { RecordRow } from './schema.ts';

/** The row that holds a merged, non-empty set. */
export function recordRow(key: RecordKey, versions: readonly Version[]): RecordRow {
  return isClash(versions) ? { key, versions, clash: 1 } : { key, versions };
}
