import { answered, completed } from './lab.ts';

/** A database as some build left it: schema and rows. Bytes are written as `{"bytes": [...]}`. */
export interface Fixture {
  readonly version: number;
  readonly stores: readonly {
    readonly name: string;
    readonly keyPath: string | readonly string[];
    /** Names of indexes and what they are on; many to a row. */
    readonly indexes?: Readonly<Record<string, string>>;
    readonly rows: readonly Record<string, unknown>[];
  }[];
}

type Bytes = { readonly bytes: readonly number[] };
const isBytes = (value: unknown): value is Bytes =>
  typeof value === 'object' && value !== null && Object.keys(value).join() === 'bytes';

const rowOf = (row: Record<string, unknown>): Record<string, unknown> =>
  Object.fromEntries(
    Object.entries(row).map(([name, value]) => [name, isBytes(value) ? Uint8Array.from(value.bytes) : value]),
  );

/** Makes the fixture's database, as the build that it was taken from did, and answers its open connection. */
export async function makeDatabase(
  factory: IDBFactory,
  name: string,
  fixture: Fixture,
): Promise<IDBDatabase> {
  const request = factory.open(name, fixture.version);
  request.onupgradeneeded = () => {
    for (const store of fixture.stores) {
      const keyPath = typeof store.keyPath === 'string' ? store.keyPath : [...store.keyPath];
      const made = request.result.createObjectStore(store.name, { keyPath });
      for (const [index, path] of Object.entries(store.indexes ?? {}))
        made.createIndex(index, path, { multiEntry: true });
    }
  };
  const db = await answered(request);
  const tx = db.transaction(
    fixture.stores.map((store) => store.name),
    'readwrite',
  );
  for (const { name: store, rows } of fixture.stores) {
    for (const row of rows) tx.objectStore(store).put(rowOf(row));
  }
  await completed(tx);
  return db;
}
