import 'fake-indexeddb/auto';
import { beforeEach, describe, expect, test } from 'vitest';
import { put, save } from '../../src/app/actions/saved.ts';
import { loadCharge } from '../../src/app/charging/load-charge.ts';
import { chargePins, sealedCharge } from '../../src/app/charging/sealed-charge.ts';
import { settleLine } from '../../src/app/charging/settle-line.ts';
import { isAnew, signedCharge } from '../../src/app/charging/signed-charge.ts';
import { store } from '../../src/app/data/phone.ts';
import { loadWalk, type WalkModel } from '../../src/app/data/walk-model.ts';
import type { Contract } from '../../src/core/contract.ts';
import type { RecordKey } from '../../src/core/keys.ts';
import type { Walk } from '../../src/core/walk.ts';
import { displayed } from '../../src/core/versions.ts';
import type { SealView } from '../../src/files/seal-view.ts';
import { machineOf, walkOf } from '../core/made.ts';
import { contractOf, cut, lugs, sound, tenthSheet } from '../core/rental-made.ts';

const back = 'walk/back' as RecordKey<'walk'>;
const day = (date: string) => ({ utc: `${date}T08:00:00Z`, offsetMinutes: 0 });
const key = (text: string): RecordKey => text as RecordKey;

const walk = (purpose: Walk['purpose'], date: string, more: Partial<Walk> = {}): Walk =>
  walkOf({
    machine: 'machine/made-up',
    purpose,
    depth: 'short',
    startedAt: day(date),
    finishedAt: day(date),
    ...more,
  });

const readings = (of: string, all: typeof cut) =>
  all.map(({ place, item, n, reading }) => put(key(`reading/${of}/${place}/${item}/${n}`), reading));

const model = async (): Promise<WalkModel> => {
  const loaded = await loadWalk(back);
  if (!loaded.ok) throw new Error(loaded.error.kind);
  return loaded.value;
};

const charged = async () => {
  const loaded = await loadCharge(await model());
  if (!loaded.ok) throw new Error(loaded.error.kind);
  return loaded.value;
};

/** A seal that holds, with this outcome; what else it says does not matter here. */
const sealWith = (outcome: unknown) => [{ says: { outcome } }] as unknown as readonly SealView[];

async function hire(contract: Partial<Contract> = {}, returned: Partial<Walk> = {}): Promise<void> {
  await save([
    put(key('machine/made-up'), { ...machineOf('rubber-cored'), sheet: 'limits/tenth' }),
    put(key('limits/tenth'), tenthSheet),
    put(key('contract/c1'), contractOf({ from: '2026-03-01', ...contract })),
    put(key('walk/out'), walk('hand-out', '2026-03-01')),
    put(back, walk('rental-return', '2026-03-20', returned)),
    ...readings('out', [...sound, ...lugs([20, 20])]),
    ...readings('back', [...cut, ...lugs([20, 20])]),
  ]);
}

beforeEach(async () => {
  const rows = await store.list({ prefix: '' });
  if (rows.ok) await save(rows.value.map(({ key: each }) => ({ key: each, removed: true })));
});

describe('the charge list on the phone', () => {
  test('[RC70] before it is signed the walk names its contract and its hand-out', async () => {
    await hire();
    expect(await chargePins(await model())).toEqual({
      ok: true,
      value: { contract: 'contract/c1', handOut: 'walk/out' },
    });
    await hire({}, { contract: 'contract/c1', handOut: '' });
    expect(await chargePins(await model())).toEqual({ ok: true, value: {} });
  });

  test('[RC71] a contract that is named and not here is never replaced by another', async () => {
    await hire({}, { contract: 'contract/another' });
    expect(await charged()).toMatchObject({ contractGone: true, contractKey: undefined });
    await hire({ machine: 'machine/other' }, { contract: 'contract/c1' });
    expect(await charged()).toMatchObject({ contractGone: true });
  });

  test('[RC72] a contract of a hire that had not begun is not that of the return', async () => {
    await hire({ from: '2026-04-01' });
    expect(await charged()).toMatchObject({ contractGone: false, contractKey: undefined });
  });

  test('[RC73] a walk is not its own hand-out, nor is one made for something else', async () => {
    for (const handOut of ['walk/back', 'walk/job']) {
      await hire({}, { handOut });
      await save([put(key('walk/job'), walk('jobsite', '2026-03-02'))]);
      expect((await charged()).list.handOut).toBeUndefined();
    }
  });

  test('[RC74] what was changed after it was signed is told, and what was not is not', async () => {
    await hire();
    const sealed = await sealedCharge(await model());
    const signed = signedCharge(sealWith({ charge: sealed.ok ? sealed.value : undefined }));
    if (!signed) throw new Error('nothing is signed');
    expect(isAnew((await charged()).list, signed)).toBe(false);
    await save([put(key('contract/c1'), contractOf({ from: '2026-03-01', taxPercent: 20 }))]);
    expect(isAnew((await charged()).list, signed)).toBe(true);
    expect(signedCharge(sealWith({ answers: [] }))).toBeUndefined();
  });

  test('[RC75] a sealed walk keeps what was settled', async () => {
    await hire();
    const settled = { line: 'damage.renew-track.left', is: 'not-charged' } as const;
    const settledNow = async () => {
      const found = await store.read(back);
      return found.ok ? (displayed(found.value)?.value as Walk | undefined)?.settled : found.error;
    };
    expect(await settleLine(back, settled.line, settled)).toMatchObject({ ok: true });
    expect(await settledNow()).toEqual([settled]);
    await save([put(key(`seal/back/${'ab'.repeat(32)}`), { v: 1, jws: 'a.b.c' })]);
    expect(await settleLine(back, settled.line, undefined)).toMatchObject({ ok: true });
    expect(await settledNow()).toEqual([settled]);
  });
});
