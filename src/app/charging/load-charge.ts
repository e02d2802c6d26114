import { useEffect, useState } from 'preact/hooks';
import { valueIn } from '../../core/assemble.ts';
import type { Contract } from '../../core/contract.ts';
import { lastContract } from '../../core/hire.ts';
import { parseKey, type RecordKey } from '../../core/keys.ts';
import { chargeList, type ChargeList } from '../../core/rental.ts';
import type { RentalInput, RentalWalk } from '../../core/rental-input.ts';
import { ok } from '../../core/result.ts';
import type { Stored } from '../../storage/store.ts';
import { store } from '../data/phone.ts';
import type { WalkModel } from '../data/walk-model.ts';
import { photosOf } from '../photos/walk-photos.ts';
import { handedOutIn } from '../rental/handed-out.ts';
import { contractsOf, handOutKeyOf } from '../rental/lookup.ts';

/** The charge list of a return with what it was made of. */
export interface Charge {
  readonly list: ChargeList;
  readonly input: RentalInput;
  /** Undefined where no contract was entered, and one without prices stands in. */
  readonly contractKey: RecordKey<'contract'> | undefined;
  /** The walk names a contract that is not on this phone. */
  readonly contractGone: boolean;
}

/** What is charged where nothing was agreed: damage alone, and nothing has a price. */
const nothingAgreed = (machine: string): Contract => ({
  v: 1,
  machine,
  charges: 'damage',
  hours: 'meter',
  currency: 'XXX',
  parts: [],
});

interface Agreed {
  readonly key: RecordKey<'contract'>;
  readonly value: Contract;
}

/**
 * The contract that the walk names, else the machine's last one that had begun. One that it names and that is not
 * here is `gone`: nobody else's stands in for it.
 */
async function agreedFor({ walk }: WalkModel): Promise<Stored<Agreed | 'gone' | undefined>> {
  if (walk.contract === undefined) return ok(lastContract(walk, await contractsOf(walk.machine)));
  if (parseKey(walk.contract)?.kind !== 'contract') return ok('gone');
  const key = walk.contract as RecordKey<'contract'>;
  const found = await store.read(key);
  if (!found.ok) return found;
  const value = valueIn<Contract>(found.value);
  return ok(value?.machine === walk.machine ? { key, value } : 'gone');
}

/** The hand-out that the walk or its contract names, else the machine's last one before the return. */
async function handOutFor({ key: back, walk }: WalkModel): Promise<RentalWalk | undefined> {
  const named = await handOutKeyOf(back, walk);
  const found = await handedOutIn(named, { key: back, machine: walk.machine });
  if (!found) return undefined;
  const { key, input, scored } = found;
  const photos = await photosOf(key);
  return { key, input, scored, photos: photos.ok ? photos.value : [] };
}

/** Works the charge list of a return out, from what is on this phone. */
export async function loadCharge(model: WalkModel): Promise<Stored<Charge>> {
  const photos = await photosOf(model.key);
  if (!photos.ok) return photos;
  const found = await agreedFor(model);
  if (!found.ok) return found;
  const agreed = found.value === 'gone' ? undefined : found.value;
  const contract = agreed?.value ?? nothingAgreed(model.walk.machine);
  const input: RentalInput = {
    contract,
    handOut: await handOutFor(model),
    returned: {
      key: model.key,
      input: model.assembled.input,
      scored: model.scored,
      photos: photos.value,
    },
  };
  return ok({
    list: chargeList(input),
    input,
    contractKey: agreed?.key,
    contractGone: found.value === 'gone',
  });
}

const kinds = ['contract/', 'photo/', 'walk/', 'reading/'];
const watched = [...kinds, ...kinds.map((kind) => `demo/${kind}`)];

/** The same, worked out anew whenever the walk, its contract or its pictures change; undefined until it is there. */
export function useCharge(model: WalkModel): Charge | 'failed' | undefined {
  const [charge, setCharge] = useState<{ readonly key: string; readonly value: Charge | 'failed' }>();
  useEffect(() => {
    let current = true;
    let asked = 0;
    const load = async (): Promise<void> => {
      asked += 1;
      const mine = asked;
      const loaded = await loadCharge(model).catch(() => undefined);
      // One that was asked for earlier may come later.
      if (current && mine === asked)
        setCharge({ key: model.key, value: loaded?.ok ? loaded.value : 'failed' });
    };
    const stops = watched.map((prefix) => store.changes.subscribe(prefix, () => void load()));
    void load();
    return () => {
      current = false;
      for (const stop of stops) stop();
    };
  }, [model]);
  return charge?.key === model.key ? charge.value : undefined;
}
