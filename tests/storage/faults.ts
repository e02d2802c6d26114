/**
 * A database that fails at its n-th call, put around the fake one: every way into IndexedDB is counted, and the
 * one that was asked for fails as real engines do.
 */
export type Style =
  | 'server-lost' // iOS ended the process behind the connection: the call throws
  | 'closing' // the handle is dead: the call throws
  | 'aborted' // the transaction goes away under the call
  | 'quota' // Chromium: only the transaction tells
  | 'quota-closes' // Firefox: the same, and the connection is dead from then on
  | 'complete-unheard' // it was committed, but nobody hears of it
  | 'dead'; // this and every later call throws, until somebody opens anew with `mended`

export const oneShots = [
  'server-lost',
  'closing',
  'aborted',
  'quota',
  'quota-closes',
  'complete-unheard',
] as const satisfies readonly Style[];

const lost = (): DOMException =>
  new DOMException(
    'Connection to Indexed Database server lost. Refresh the page to try again',
    'UnknownError',
  );
const closing = (): DOMException =>
  new DOMException('The database connection is closing.', 'InvalidStateError');
const full = (): DOMException => new DOMException('full', 'QuotaExceededError');

const storeMethods = [
  'get',
  'getAll',
  'getKey',
  'getAllKeys',
  'openCursor',
  'put',
  'delete',
  'clear',
  'index',
] as const;
const indexMethods = ['get', 'getAll', 'getAllKeys', 'openCursor'] as const;

type Listen = (type: string, listener: (event: Event) => void) => void;
type Patchable = Record<string, (...args: unknown[]) => unknown>;

export class FaultyFactory {
  /** Calls so far. */
  calls = 0;
  /** Connections asked for so far. */
  opens = 0;
  /** True: the disk is full, every put aborts its transaction, until the reserve is cleared. */
  full = false;
  /** True: no write is allowed, as in a private window. */
  readOnly = false;
  /** True: what is put is not there afterwards. */
  forgetful = false;
  /** True: open requests are made but never answer. */
  silent = false;
  /** True: the answers of open requests are held back until `release`. */
  holding = false;
  /** Thrown by every call. */
  failure: DOMException | undefined;
  /** Thrown by every call inside a transaction but those of the self test. */
  failLater: DOMException | undefined;
  /** Thrown by the self test's first request. */
  failSelfTest: DOMException | undefined;
  /** False: clearing the reserve leaves the disk as full as it was. */
  reserveHelps = true;
  /** How often the reserve is cleared before its room comes back, as where an engine frees its files late. */
  late = 0;
  /** The connections that were opened. */
  readonly connections: IDBDatabase[] = [];
  /** Steps that cursors took. */
  steps = 0;
  /** True once the fault has been met. */
  reached = false;
  /** What each transaction was begun with. */
  readonly begun: {
    readonly stores: readonly string[];
    readonly mode: string;
    readonly durability: string;
  }[] = [];
  readonly #held: (() => void)[] = [];
  readonly #inner: IDBFactory;
  readonly #at: number;
  readonly #style: Style;

  /** Fails at call `at`; without one it only watches. */
  constructor(inner: IDBFactory, at = Infinity, style: Style = 'server-lost') {
    this.#inner = inner;
    this.#at = at;
    this.#style = style;
  }

  get factory(): IDBFactory {
    const open = (name: string, version?: number): IDBOpenDBRequest => {
      this.opens += 1;
      this.#count();
      // A request for a database of its own name answers to nobody, as one that hangs.
      const request = this.#inner.open(this.silent ? `${name}-silent` : name, version);
      if (this.silent) request.addEventListener = () => undefined;
      if (this.holding) this.#holdSuccess(request);
      const patch = (): void => this.#patchDatabase(request.result);
      request.addEventListener('upgradeneeded', patch, { once: true });
      request.addEventListener('success', patch, { once: true });
      return request;
    };
    return { ...this.#inner, open } as IDBFactory;
  }

  /** Counts a call, and makes it fail if it is its turn. */
  #count(tx?: IDBTransaction, db?: IDBDatabase): void {
    if (this.failure !== undefined) throw this.failure;
    if (this.#style === 'complete-unheard') return;
    this.calls += 1;
    const isTurn = this.#style === 'dead' ? this.calls >= this.#at : this.calls === this.#at;
    if (!isTurn) return;
    this.reached = true;
    if (this.#style === 'closing') throw closing();
    if (this.#style === 'server-lost' || this.#style === 'dead' || tx === undefined) throw lost();
    this.#abort(tx, this.#style === 'aborted' ? lost() : full());
    if (this.#style === 'quota-closes' && db !== undefined) this.#kill(db);
  }

  /** Lets the held answers of open requests come, in order. */
  release(): void {
    this.holding = false;
    for (const answer of this.#held.splice(0)) answer();
  }

  #holdSuccess(request: IDBOpenDBRequest): void {
    const listen = request.addEventListener.bind(request) as Listen;
    const hold = (type: string, listener: (event: Event) => void): void =>
      listen(type, (event) => {
        if (type === 'success' && this.holding) this.#held.push(() => listener(event));
        else listener(event);
      });
    (request as unknown as { addEventListener: Listen }).addEventListener = hold;
  }

  #abort(tx: IDBTransaction, reason: DOMException): void {
    Object.defineProperty(tx, 'error', { value: reason, configurable: true });
    queueMicrotask(() => {
      try {
        tx.abort();
      } catch {
        // it has been aborted already
      }
    });
  }

  #kill(db: IDBDatabase): void {
    (db as unknown as Patchable)['transaction'] = () => {
      throw closing();
    };
  }

  #patchDatabase(db: IDBDatabase): void {
    if (Object.hasOwn(db, 'transaction')) return;
    this.connections.push(db);
    const begin = db.transaction.bind(db);
    db.transaction = (stores, mode, options) => {
      this.#count();
      const tx = begin(stores, mode, options);
      const names = typeof stores === 'string' ? [stores] : [...stores];
      this.begun.push({ stores: names, mode: tx.mode, durability: options?.durability ?? 'default' });
      this.#patchTransaction(tx, db);
      return tx;
    };
  }

  #patchTransaction(tx: IDBTransaction, db: IDBDatabase): void {
    const objectStore = tx.objectStore.bind(tx);
    tx.objectStore = (name) => {
      const store = objectStore(name);
      this.#patchMethods(store, storeMethods, tx, db);
      return store;
    };
    if (this.#style === 'complete-unheard') this.#patchComplete(tx);
  }

  #patchMethods(target: object, methods: readonly string[], tx: IDBTransaction, db: IDBDatabase): void {
    const methodsOf = target as Patchable;
    for (const name of methods) {
      if (Object.hasOwn(target, name)) continue;
      const method = methodsOf[name]?.bind(target);
      methodsOf[name] = (...args) => {
        this.#count(tx, db);
        this.#writeInto(target as IDBObjectStore, name, tx);
        const isForgotten = this.forgetful && name === 'put';
        const result = isForgotten ? methodsOf['get']?.call(target, 'nothing') : method?.(...args);
        if (name === 'openCursor')
          (result as IDBRequest).addEventListener('success', () => (this.steps += 1));
        if (name === 'index') this.#patchMethods(result as object, indexMethods, tx, db);
        return result;
      };
    }
  }

  #writeInto(store: IDBObjectStore, method: string, tx: IDBTransaction): void {
    if (method === 'put' && this.readOnly && tx.mode === 'readwrite') {
      throw new DOMException(
        'A mutation operation was attempted on a database that did not allow mutations.',
        'InvalidStateError',
      );
    }
    if (this.failSelfTest !== undefined && method === 'put' && tx.objectStoreNames.length === 1)
      throw this.failSelfTest;
    if (method === 'clear' && store.name === 'reserve' && this.reserveHelps && (this.late -= 1) < 0) {
      this.full = false;
    }
    if (this.failLater !== undefined && tx.objectStoreNames.length > 1) throw this.failLater;
    if (method === 'put' && this.full) this.#abort(tx, full());
  }

  /** Turns the n-th `complete` into an abort, after the commit. */
  #patchComplete(tx: IDBTransaction): void {
    const listen = tx.addEventListener.bind(tx) as Listen;
    const aborted: ((event: Event) => void)[] = [];
    let isTurn: boolean | undefined;
    const heard = (type: string, listener: (event: Event) => void): void => {
      if (type === 'abort') aborted.push(listener);
      if (type !== 'complete') return listen(type, listener);
      return listen(type, (event) => {
        isTurn ??= (this.calls += 1) === this.#at;
        if (!isTurn) return listener(event);
        this.reached = true;
        Object.defineProperty(tx, 'error', { value: lost(), configurable: true });
        for (const tell of aborted) tell(event);
      });
    };
    (tx as unknown as Record<string, unknown>)['addEventListener'] = heard;
  }
}
