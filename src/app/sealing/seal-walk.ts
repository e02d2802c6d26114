import { canonicalJson } from '../../core/canonical-json.ts';
import { makeKey, partsOf, type RecordKey } from '../../core/keys.ts';
import type { Person } from '../../core/person.ts';
import { err, ok, type Result } from '../../core/result.ts';
import type { SealedRecord, SealPayload } from '../../core/seal-payload.ts';
import type { Walk } from '../../core/walk.ts';
import { gatherRecords } from '../../files/gather.ts';
import { sha256Hex } from '../../seal/hash.ts';
import { makeSeal, type SealFault } from '../../seal/seals.ts';
import type { StorageError } from '../../storage/errors.ts';
import type { NotEditable } from '../../storage/store.ts';
import { put, save, type Saved } from '../actions/saved.ts';
import { loadBuiltIn } from '../data/built-in.ts';
import { newId, observedNow } from '../data/moment.ts';
import { store } from '../data/phone.ts';
import { loadWalk, type WalkError, type WalkModel } from '../data/walk-model.ts';
import { keepInspector } from './inspector.ts';
import { lastSeal } from './last-seal.ts';
import { ownKey } from './own-key.ts';
import type { Signer } from './seal-form.ts';
import { pinsOf, sealedOutcome } from './sealed-outcome.ts';
import { sealedAhead, sealedOpen, sealedVerdict } from './sealed-findings.ts';
import { sealsOfMachine } from './walk-seals.ts';

export type NotSealed = StorageError | NotEditable | WalkError | SealFault | { readonly kind: 'no-key' };

export const sealDraftKey = (walk: string): string => `seal/${walk}`;

/**
 * Ends the walk, so that the version that is sealed is the one that stays, and takes the inspector's name out of it:
 * names are sealed as salted hashes of records of their own, so that they can be erased.
 */
async function close(model: WalkModel): Promise<Saved> {
  const { key, walk } = model;
  const pins = await pinsOf(model);
  if (!pins.ok) return pins;
  const isPinned = Object.keys(pins.value).length === 0;
  if (walk.finishedAt && walk.inspector === undefined && isPinned) return ok();
  const at = observedNow();
  const found = await store.read(key);
  if (!found.ok) return found;
  const edit = (value: unknown): Record<string, unknown> => {
    const { inspector: _name, ...rest } = value as Walk;
    return { finishedAt: at, ...pins.value, ...rest };
  };
  return save([{ key, edit: (value) => edit(value ?? walk) }]);
}

/** The salt makes the hash in the seal tell nothing about the name, even to whoever tries all names. */
function personOf(signer: Signer): { readonly key: RecordKey<'person'>; readonly value: Person } {
  const salt = Array.from(crypto.getRandomValues(new Uint8Array(32)), (byte) =>
    byte.toString(16).padStart(2, '0'),
  );
  return { key: makeKey({ kind: 'person', id: newId() }), value: { v: 1, ...signer, salt: salt.join('') } };
}

type Signed = ReturnType<typeof personOf>;

const namedInSeal = async ({ key, value }: Signed): Promise<SealPayload['people'][number]> => ({
  key,
  role: value.role,
  hash: await sha256Hex(canonicalJson(value)),
  ...(value.objection !== undefined && { objects: true }),
});

/** The version of each record that is shown; what was removed is not sealed, nor what says nothing of this walk. */
async function sealedRecords(
  walk: RecordKey<'walk'>,
): Promise<Result<readonly SealedRecord[], StorageError>> {
  const gathered = await gatherRecords([walk], store, await loadBuiltIn());
  if (!gathered.ok) return gathered;
  const shown = new Map(gathered.value.map((record) => [record.key, record]));
  const kinds = new Set(['seal', 'person']);
  return ok(
    [...shown.values()].flatMap((record) =>
      record.value === undefined || kinds.has(record.key.split('/')[0] ?? '')
        ? []
        : [record as unknown as SealedRecord],
    ),
  );
}

async function payloadOf(
  model: WalkModel,
  people: readonly Signed[],
): Promise<Result<SealPayload, NotSealed>> {
  const { key, scored, walk } = model;
  const { aheadScreens } = await import('../ahead-screens.ts');
  const outlook = await aheadScreens.loadOutlook(model);
  if (!outlook.ok) return outlook;
  const records = await sealedRecords(key);
  if (!records.ok) return records;
  const outcome = await sealedOutcome(model, outlook.value);
  if (!outcome.ok) return outcome;
  const before = await sealsOfMachine(walk.machine);
  if (!before.ok) return before;
  const last = lastSeal(before.value)?.hash;
  return ok({
    format: 'sagline-seal',
    version: 1,
    walk: key,
    machine: walk.machine as RecordKey<'machine'>,
    sealedAt: observedNow(),
    core: __BUILD_ID__,
    records: [...records.value],
    people: await Promise.all(people.map(namedInSeal)),
    verdict: sealedVerdict(scored),
    open: [...sealedOpen(scored)],
    outcome: outcome.value,
    ...sealedAhead(outlook.value),
    ...(last !== undefined && { previous: last }),
  });
}

async function seal(of: WalkModel, signers: readonly Signer[]): Promise<Result<undefined, NotSealed>> {
  const key = await ownKey();
  if (!key) return err({ kind: 'no-key' });
  const closed = await close(of);
  if (!closed.ok) return closed;
  const model = await loadWalk(of.key);
  if (!model.ok) return model;
  const people = signers.map(personOf);
  const payload = await payloadOf(model.value, people);
  if (!payload.ok) return payload;
  const made = await makeSeal(payload.value, key);
  if (!made.ok) return made;
  const hash = await sha256Hex(made.value);
  const sealKey = makeKey({ kind: 'seal', walk: partsOf(of.key).id, hash });
  const writes = people.map((each) => put(each.key, each.value));
  const saved = await save([...writes, put(sealKey, { v: 1, jws: made.value })], [sealDraftKey(of.key)]);
  if (saved.ok) await keepInspector(signers[0]?.name ?? '');
  return saved;
}

const underWay = new Map<string, Promise<Result<undefined, NotSealed>>>();

/** Seals a walk as it is on disk now, with these people; however often it is asked for meanwhile, it makes one seal. */
export function sealWalk(
  model: WalkModel,
  signers: readonly Signer[],
): Promise<Result<undefined, NotSealed>> {
  const begun = underWay.get(model.key);
  if (begun) return begun;
  const sealing = seal(model, signers).finally(() => underWay.delete(model.key));
  underWay.set(model.key, sealing);
  return sealing;
}
