import type { RecordKey } from '../core/keys.ts';
import type { Version } from '../core/versions.ts';
import type { Unstamped } from './envelope.ts';

/** What to do with a walk file: versions to merge, records to write, and what stays out. */
export interface ImportPlan {
  readonly versions: readonly Version[];
  readonly writes: readonly Unstamped[];
  /** Sheets, rule sets, prices and rates that come with some build of the app. */
  readonly leftOut: readonly RecordKey[];
}

/** How the keys of all of these that come with the app begin, those of later builds too. */
const ownBook = /^(?:limits|rules|price|rate)\/starting(?:-|$)/;

/** True for a sheet, a rule set, prices or rates that come with the app. */
export const comesWithApp = (key: string): boolean => ownBook.test(key);

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
