import { browserDeps } from '../../src/storage/browser.ts';
import { openStore } from '../../src/storage/open-store.ts';
import type { Store } from '../../src/storage/store.ts';
import { contract } from './contract.ts';
import type { Case } from './lab.ts';
import { keyOf, value } from './samples.ts';

/** What one rule came to in this engine. */
export interface Outcome {
  readonly title: string;
  readonly error?: string;
}

async function outcomeOf(rule: Case, at: number): Promise<Outcome> {
  const open: Store[] = [];
  const name = `contract-${at}`;
  const here = (factory: IDBFactory): Store => {
    const store = openStore({ ...browserDeps(), factory, name });
    open.push(store);
    return store;
  };
  try {
    await rule.run({ factory: indexedDB, name, open: (factory = indexedDB) => here(factory) });
    return { title: rule.title };
  } catch (error) {
    return { title: rule.title, error: String(error) };
  } finally {
    for (const store of open) store.close();
  }
}

/** Runs the whole contract in this page, each rule on a database of its own. */
async function runContract(): Promise<readonly Outcome[]> {
  const outcomes: Outcome[] = [];
  for (const [at, rule] of contract.entries()) outcomes.push(await outcomeOf(rule, at));
  return outcomes;
}

function noise(length: number): Uint8Array {
  const bytes = new Uint8Array(length);
  for (let at = 0; at < length; at += 65_536) crypto.getRandomValues(bytes.subarray(at, at + 65_536));
  return bytes;
}

/** Text that no engine can compress to next to nothing. */
const noiseText = (length: number): string => {
  let text = '';
  for (const byte of noise(length)) text += String.fromCharCode(0x4e00 + byte * 64);
  return text;
};

let store: Store | undefined;

/** What the browser tests do on this page; answers are plain, so that they cross over. */
const page = {
  runContract,
  open: (): void => {
    store = openStore(browserDeps());
  },
  status: (): string | undefined => store?.status.current(),
  ensureReserve: async (): Promise<string> => saidOf(await store?.ensureReserve()),
  /** Photos of a size until one is refused: how many went in, and why no more did. */
  fill: async (bytes: number): Promise<{ readonly kept: number; readonly why: string }> => {
    for (let kept = 0; kept < 200; kept += 1) {
      const photo = { sha256: crypto.randomUUID(), type: 'image/jpeg', bytes: noise(bytes) };
      const said = saidOf(await store?.photos.put(photo));
      if (said !== 'saved') return { kept, why: said };
    }
    return { kept: 200, why: 'never' };
  },
  /** Photos with their records until one is refused: why, and how many records, pictures and thumbnails are here. */
  takePhotos: async (bytes: number): Promise<readonly [why: string, ...counts: number[]]> => {
    const names: string[] = [];
    let said = 'saved';
    while (said === 'saved' && names.length < 200) {
      const sha256 = [...noise(32)].map((byte) => byte.toString(16).padStart(2, '0')).join('');
      names.push(sha256);
      const photos = [{ sha256, type: 'image/jpeg', bytes: noise(bytes) }];
      const thumbnails = [{ sha256, bytes: noise(10_000) }];
      const writes = [{ key: keyOf(`photo/w1/${sha256}`), value: value('photo') }];
      said = saidOf(await store?.write(writes, { photos, thumbnails }));
    }
    const rows = await store?.list({ prefix: 'photo/' });
    const here = await Promise.all(
      names.map(async (name) => [await store?.photos.get(name), await store?.thumbnails.get(name)]),
    );
    const count = (at: number): number => here.filter((one) => one[at]?.ok && one[at].value).length;
    return [said, names.length - 1, rows?.ok === true ? rows.value.length : NaN, count(0), count(1)];
  },
  write: async (name: string, length = 0): Promise<string> =>
    saidOf(await store?.write([{ key: keyOf(`limits/${name}`), value: value(noiseText(length)) }])),
  draft: async (text: string): Promise<string> => saidOf(await store?.drafts.put('pad', text)),
  keys: async (): Promise<readonly string[]> => {
    const rows = await store?.list({ prefix: '' });
    return rows?.ok === true ? rows.value.map(({ key }) => key) : [];
  },
};

const saidOf = (
  result: { readonly ok: boolean; readonly error?: { readonly kind: string } } | undefined,
): string => (result?.ok === true ? 'saved' : (result?.error?.kind ?? 'no store'));

export type StoragePage = typeof page;
Object.assign(globalThis, { storagePage: page });
