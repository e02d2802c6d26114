import 'fake-indexeddb/auto';
import { describe, expect, test } from 'vitest';
import { put, save } from '../../../src/app/actions/saved.ts';
import { store } from '../../../src/app/data/phone.ts';
import { keepUse } from '../../../src/app/options/save-option.ts';
import type { RecordKey } from '../../../src/core/keys.ts';
import { displayed } from '../../../src/core/versions.ts';

const key = 'machine/yard-9' as RecordKey<'machine'>;

async function valueNow(): Promise<unknown> {
  const found = await store.read(key);
  return found.ok ? displayed(found.value)?.value : found.error;
}

describe('what a machine is used for', () => {
  test('[OS16] becomes part of its record, and makes no machine where one was removed', async () => {
    await save([put(key, { v: 1, name: 'Yard 9' })]);
    expect(await keepUse(key, { turning: 'much' })).toEqual({ ok: true, value: undefined });
    expect(await valueNow()).toEqual({ v: 1, name: 'Yard 9', use: { turning: 'much' } });
    await save([{ key, removed: true }]);
    expect(await keepUse(key, { turning: 'little' })).toMatchObject({ ok: false });
    expect(await valueNow()).toBeUndefined();
  });
});
