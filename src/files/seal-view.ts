import type { Person, SignerRole } from '../core/person.ts';
import { parseKey, partsOf, type RecordKey } from '../core/keys.ts';
import type { ObservedAt } from '../core/readings.ts';
import type { ClearRecord, SealChange, SealPayload } from '../core/seal-payload.ts';
import { comesWithApp } from './import-plan.ts';
import { checkSeal, type Beside, type CheckedPerson, type CheckedSeal } from '../seal/check-seal.ts';
import { sha256Hex } from '../seal/hash.ts';

/** Somebody whom the seal names by a salted hash alone. */
export interface SealedPerson {
  readonly key: RecordKey;
  readonly role: SignerRole;
  /** `not-here`: their record does not lie beside the seal; `other`: it is not the one that was sealed. */
  readonly state: 'as-sealed' | 'erased' | 'not-here' | 'other';
  /** As sealed, or absent: another's name is never shown as the signer's. */
  readonly person: Person | undefined;
}

/** What was sealed, as far as screens show it. */
export interface SealSays {
  readonly walk: string;
  readonly sealedAt: ObservedAt;
  readonly machine: string | undefined;
  readonly call: string | undefined;
  readonly open: number;
  readonly previous: string | undefined;
  /** What the walk's purpose asked for; undefined where nothing was sealed of it. */
  readonly outcome: unknown;
}

/** What came to the records after the seal, by versions of their own: it stands and is no part of the seal. */
export interface Later {
  readonly key: string;
  readonly kind: 'added' | 'changed' | 'gone';
  /** Where it differs from what was sealed, by the path of each field. */
  readonly changes: readonly SealChange[];
}

/** A seal with all that came of checking it. */
export interface SealView {
  readonly hash: string;
  readonly fingerprint: string | undefined;
  /**
   * `alone`: no record lies beside it; `later`: only later versions differ from what was sealed; `misplaced`: its
   * record bears the name of another seal.
   */
  readonly state:
    'intact' | 'later' | 'changed' | 'alone' | 'misplaced' | 'altered' | 'unreadable' | 'too-large';
  /** Absent where the seal itself was altered: nothing it says is shown as if it held. */
  readonly says: SealSays | undefined;
  readonly changes: readonly SealChange[];
  readonly later: readonly Later[];
  readonly photos: CheckedSeal['photos'];
  readonly people: readonly SealedPerson[];
}

const fieldsOf = (value: unknown): Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null ? (value as Readonly<Record<string, unknown>>) : {};

const textIn = (value: unknown, name: string): string | undefined => {
  const text = fieldsOf(value)[name];
  return typeof text === 'string' ? text : undefined;
};

const saysOf = (payload: SealPayload): SealSays => ({
  outcome: payload.outcome,
  walk: payload.walk,
  sealedAt: payload.sealedAt,
  machine: textIn(payload.records.find(({ key }) => key === payload.machine)?.value, 'name'),
  call: textIn(payload.verdict, 'call'),
  open: payload.open.length,
  previous: payload.previous,
});

/** A removal that somebody made; where there is no version at all, the record was left out. */
const isRemoved = (key: string, records: readonly ClearRecord[]): boolean =>
  records.some((each) => each.key === key && each.value === undefined);

/** Another version of a record, or another edition of a book of the app: written beside the seal, not into it. */
const isLater = ({ key, kind, otherVersion }: SealChange): boolean =>
  otherVersion === true || kind === 'added' || (kind === 'changed' && comesWithApp(key));

const laterKinds = { added: 'added', changed: 'changed', missing: 'gone' } as const;

function laterOf(changes: readonly SealChange[]): readonly Later[] {
  const byKey = new Map<string, SealChange[]>();
  for (const change of changes) {
    const own = byKey.get(change.key);
    if (own) own.push(change);
    else byKey.set(change.key, [change]);
  }
  return [...byKey].flatMap(([key, own]): readonly Later[] => {
    const kind = own.at(-1)?.kind;
    return kind ? [{ key, kind: laterKinds[kind], changes: own }] : [];
  });
}

function personOf({ key, role, state, value }: CheckedPerson, records: readonly ClearRecord[]): SealedPerson {
  const isErased = state === 'not-here' && isRemoved(key, records);
  return { key, role, state: isErased ? 'erased' : state, person: value as Person | undefined };
}

function stateOf(
  { payload, photos, people }: CheckedSeal,
  changes: readonly SealChange[],
  later: readonly Later[],
) {
  const missing = changes.filter(({ kind }) => kind === 'missing');
  if (missing.length === payload.records.length) return 'alone';
  const isOther = people.some(({ state }) => state === 'other');
  if (changes.length + photos.length > 0 || isOther) return 'changed';
  return later.length > 0 ? 'later' : 'intact';
}

/** The key of a seal's record names its walk and the SHA-256 of its text. */
function isMisplaced({ hash, payload }: CheckedSeal, key: RecordKey | undefined): boolean {
  const [parts, walk] = [key && partsOf(key), partsOf(payload.walk)];
  return parts?.kind === 'seal' && walk.kind === 'walk' && (parts.hash !== hash || parts.walk !== walk.id);
}

function viewOf(checked: CheckedSeal, { records }: Beside, key: RecordKey | undefined): SealView {
  const changes = checked.changes.filter((each) => !isLater(each));
  const later = laterOf(checked.changes.filter(isLater));
  const state = stateOf(checked, changes, later);
  return {
    hash: checked.hash,
    fingerprint: checked.fingerprint,
    state: isMisplaced(checked, key) ? 'misplaced' : state,
    says: saysOf(checked.payload),
    changes: state === 'alone' ? [] : changes,
    later,
    photos: checked.photos,
    people: checked.people.map((each) => personOf(each, records)),
  };
}

/** A seal that does not hold says nothing. */
const silent = { fingerprint: undefined, says: undefined, changes: [], later: [], photos: [], people: [] };

/**
 * Checks a seal against what lies beside it, and puts what came of it as screens show it; `key` is that of its record,
 * where it has one.
 */
export async function viewSeal(jws: string, beside: Beside, key?: RecordKey): Promise<SealView> {
  const checked = await checkSeal(jws, beside);
  if (checked.ok) return viewOf(checked.value, beside, key);
  return { ...silent, hash: await sha256Hex(jws), state: checked.error.kind };
}

const isOfWalk = ({ key }: Later): boolean => ['reading', 'photo'].includes(parseKey(key)?.kind ?? '');

/** Readings and pictures that are part of none of these seals; what a later seal holds is part of that one. */
export function lateIn(seals: readonly SealView[]): readonly Later[] {
  const [first, ...others] = seals.filter(({ says }) => says !== undefined);
  const isLateIn = ({ key }: Later, { later }: SealView): boolean => later.some((each) => each.key === key);
  return (first?.later ?? []).filter(isOfWalk).filter((each) => others.every((seal) => isLateIn(each, seal)));
}
