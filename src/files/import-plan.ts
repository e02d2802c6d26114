import type { RecordKey } from '../core/keys.ts';
import type { Version } from '../core/versions.ts';
import type { Unstamped } from './envelope.ts';

/** What to do with a walk file: versions to merge, records to write, and what stays out. */
export interface ImportPlan {
  readonly versions: readonly Version[];
  readonly writes: readonly Unstamped[];
  /** Sheets and rule sets that come with some build of the app. */
  readonly leftOut: readonly RecordKey[];
}

/** How the keys of sheets and rule sets that come with the app begin, those of later builds too. */
const ownSheet = /^(?:limits|rules)\/starting(?:-|$)/;

/** True for a sheet or rule set that comes with the app. */
export const comesWithApp = (key: string): boolean => ownSheet.test(key);

/**
 * Sorts the records of a walk file for a phone. What comes with the app stays out: a file must never change what
 * every machine on the phone leans on.
 */
export function planImport(content: {
  readonly versions: readonly Version[];
  readonly unstamped: readonly Unstamped[];
}): ImportPlan {
  const { versions, unstamped } = content;
  const out = [...versions, ...unstamped].map(({ key }) => key).filter(comesWithApp);
  return {
    versions: versions.filter(({ key }) => !comesWithApp(key)),
    writes: unstamped.filter(({ key }) => !comesWithApp(key)),
    leftOut: [...new Set(out)],
  };
}
