import { useEffect, useState } from 'preact/hooks';
import { assemble, valueIn } from '../../core/assemble.ts';
import type { Contract } from '../../core/contract.ts';
import { parseKey, type RecordKey } from '../../core/keys.ts';
import { chargeList, type ChargeList } from '../../core/rental.ts';
import type { RentalInput, RentalWalk } from '../../core/rental-input.ts';
import { ok } from '../../core/result.ts';
import { score } from '../../core/score.ts';
import type { Stored } from '../../storage/store.ts';
import { loadBuiltIn } from '../data/built-in.ts';
import { store } from '../data/phone.ts';
import { shelfFor, type WalkModel } from '../data/walk-model.ts';
import { photosOf } from '../photos/walk-photos.ts';
import { contractsOf, handOutKeyOf } from '../rental/lookup.ts';

/** The charge list of a return with what it was made of. */
export interface Charge {
  readonly list: ChargeList;
  readonly input: RentalInput;
  /** Undefined where no contract was entered, and one without prices stands in. */
  readonly contractKey: RecordKey<'contract'> | undefined;
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

/** The contract that the walk names, else the machine's last one. */
async function agreedFor({ walk }: WalkModel): Promise<Agreed | undefined> {
  if (walk.contract !== undefined && parseKey(walk.contract)?.kind === 'contract') {
    const key = walk.contract as RecordKey<'contract'>;
    const found = await store.read(key);
    const value = found.ok ? valueIn<Contract>(found.value) : undefined;
    if (value) return { key, value };
  }
  return (await contractsOf(walk.machine))[0];
}

async function walkIn(key: RecordKey<'walk'>): Promise<RentalWalk | undefined> {
  const shelf = await shelfFor(key);
  const assembled = shelf.ok ? assemble(shelf.value, await loadBuiltIn(), key) : undefined;
  if (!assembled?.ok) return undefined;
  const { input } = assembled.value;
  const photos = await photosOf(key);
  return { key, input, scored: score(input), photos: photos.ok ? photos.value : [] };
}

/** The hand-out that the walk or its contract names, else the machine's last one before the return. */
async function handOutFor({ key, walk }: WalkModel): Promise<RentalWalk | undefined> {
  const named = await handOutKeyOf(key, walk);
  return named !== undefined && parseKey(named)?.kind === 'walk'
    ? walkIn(named as RecordKey<'walk'>)
    : undefined;
}

/** Works the charge list of a return out, from what is on this phone. */
export async function loadCharge(model: WalkModel): Promise<Stored<Charge>> {
  const photos = await photosOf(model.key);
  if (!photos.ok) return photos;
  const agreed = await agreedFor(model);
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
  return ok({ list: chargeList(input), input, contractKey: agreed?.key });
}

const watched = ['contract/', 'photo/', 'demo/contract/', 'demo/photo/'];

/** The same, worked out anew whenever the walk, its contract or its pictures change; undefined until it is there. */
export function useCharge(model: WalkModel): Charge | 'failed' | undefined {
  const [charge, setCharge] = useState<{ readonly key: string; readonly value: Charge | 'failed' }>();
  useEffect(() => {
    let current = true;
    const load = async (): Promise<void> => {
      const loaded = await loadCharge(model);
      if (current) setCharge({ key: model.key, value: loaded.ok ? loaded.value : 'failed' });
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
