import { kindOf, type RecordKey } from '../core/keys.ts';
import { forksOf, type Beside } from '../seal/check-seal.ts';
import { readSeal, type ReadSeal } from '../seal/seals.ts';
import type { WalkFile } from './open-file.ts';
import { viewSeal, type SealView } from './seal-view.ts';

/** What came of checking the seals of a file. */
export interface CheckedSeals {
  readonly seals: readonly SealView[];
  /** Two of them name the same seal before them. */
  readonly fork: boolean;
  /** SHA-256 of each seal of the file, to tell whether the one before another is there. */
  readonly here: ReadonlySet<string>;
}

interface Found {
  readonly jws: string;
  /** Absent where it stands beside the records, as we write it. */
  readonly key?: RecordKey;
}

/** The seals of a file; somebody may have put one among the records. */
function foundIn({ seals, versions, unstamped }: WalkFile): readonly Found[] {
  const asRecords = [...versions, ...unstamped].flatMap(({ key, value }): readonly Found[] => {
    const jws = kindOf(key) === 'seal' ? value?.['jws'] : undefined;
    return typeof jws === 'string' ? [{ jws, key }] : [];
  });
  return [...[...new Set(seals)].map((jws) => ({ jws })), ...asRecords];
}

/** A picture that a seal names and the file does not bring along is missing, however the file came without it. */
const besideIn = ({ versions, unstamped, pictures }: WalkFile): Beside => ({
  records: [...versions, ...unstamped],
  photo: async (sha256) => (pictures?.hashes.includes(sha256) ? pictures.read(sha256) : undefined),
});

/** Checks every seal of a walk file or bundle against all that lies beside it in the file. */
export async function checkSeals(file: WalkFile): Promise<CheckedSeals> {
  const beside = besideIn(file);
  const seals: SealView[] = [];
  const holding: ReadSeal[] = [];
  for (const { jws, key } of foundIn(file)) {
    seals.push(await viewSeal(jws, beside, key));
    const read = await readSeal(jws);
    if (read.ok) holding.push(read.value);
  }
  return {
    seals,
    fork: forksOf(holding).length > 0,
    here: new Set(holding.map(({ hash }) => hash)),
  };
}
