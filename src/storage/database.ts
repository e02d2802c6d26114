import { err, ok, type Result } from '../core/result.ts';
import { isBug, transactionError, type StorageError } from './errors.ts';
import { openDatabase, type OpeningEvent, type Source } from './opening.ts';
import { freeReserve } from './reserve.ts';
import type { Connection, StoreName } from './schema.ts';
import { selfTest } from './self-test.ts';
import { StatusHolder, type StatusCode } from './status.ts';
import { inTransaction, type Job, type Mode } from './transaction.ts';
import type { Worth } from './worth.ts';

const retryAfterMs = 10_000;
const flushWithinMs = 1_000;

/** Waits before the tries with the reserve given up: an engine may free its files only a moment after closing. */
const roomAfterMs = [0, 250, 1_000];

const statusOf: Record<StorageError['kind'], StatusCode> = {
  closed: 'lost',
  unknown: 'lost',
  quota: 'full',
  blocked: 'blocked',
  stuck: 'stuck',
  corrupt: 'corrupt',
  denied: 'denied',
  'too-new': 'too-new',
  'updated-elsewhere': 'updated-elsewhere',
};

/** A connection after its self test; `denied` when it turned out that it keeps nothing. */
interface Handle {
  readonly db: Connection;
  readonly denied?: StorageError;
}

type Opened = Result<Handle, StorageError>;

/**
 * The only owner of the connection. Every failure ends up here, and each kind has one reaction:
 *
 *     closed, unknown    drop the connection, reopen, run the whole transaction once more; then `lost`
 *     quota              reopen, give up the reserve if the work is worth it, once more and, since the room may come
 *                        back a moment later, again after a wait; `full`
 *     blocked, stuck     told and waited for; calls are answered with the error meanwhile
 *     corrupt, lost      tried again every 10 s and at every call; no copy in memory that only seems to save
 *     denied             reading goes on, writing is refused
 *     too-new            refused for good
 *     versionchange      flush, close for good: another tab has a newer build
 */
export class Database {
  readonly status = new StatusHolder();
  readonly #source: Source;
  readonly #changedUnseen: () => void;
  readonly #flushes = new Set<() => Promise<unknown>>();
  #opening: Promise<Opened> | undefined;
  #current: Handle | undefined;
  #ended: StorageError | undefined;
  #cancelRetry = (): void => undefined;

  /** Starts to open at once; `changedUnseen` is called when the data may have been replaced behind our back. */
  constructor(source: Source, changedUnseen: () => void) {
    this.#source = source;
    this.#changedUnseen = changedUnseen;
    void this.#handle();
  }

  read<T, const Stores extends readonly StoreName[]>(
    stores: Stores,
    work: Job<T, Stores, 'readonly'>['work'],
  ): Promise<Result<T, StorageError>> {
    return this.#run({ stores, mode: 'readonly', durability: 'relaxed', work }, false);
  }

  write<T, const Stores extends readonly StoreName[]>(
    stores: Stores,
    { durability, reserve }: Worth,
    work: Job<T, Stores, 'readwrite'>['work'],
  ): Promise<Result<T, StorageError>> {
    return this.#run({ stores, mode: 'readwrite', durability, work }, reserve);
  }

  /** There is room again. */
  hasRoom(): void {
    if (this.status.current() === 'full') this.status.set('open');
  }

  /** Forgets that nothing could be kept, so that the next call finds out anew. */
  testAgain(): void {
    if (this.#current?.denied !== undefined) this.#drop(this.#current);
  }

  beforeClose(flush: () => Promise<unknown>): () => void {
    this.#flushes.add(flush);
    return () => void this.#flushes.delete(flush);
  }

  /** Closes for good, after the transactions that are under way. */
  close(): void {
    this.#end({ kind: 'closed', detail: 'closed-by-app' });
  }

  async #run<T, Stores extends readonly StoreName[], M extends Mode>(
    job: Job<T, Stores, M>,
    mayUseReserve: boolean,
  ): Promise<Result<T, StorageError>> {
    const first = await this.#handle();
    if (!first.ok) return first;
    const tried = await attempt(first.value, job);
    if (tried.ok || first.value.denied !== undefined) return tried;
    const error = this.#asToldNow(tried.error);
    this.#drop(first.value);
    if (error.kind === 'denied') this.status.set('denied');
    if (error.kind === 'denied') return tried;
    return error.kind === 'quota' ? this.#withReserve(job, error, mayUseReserve) : this.#again(job);
  }

  async #again<T, Stores extends readonly StoreName[], M extends Mode>(
    job: Job<T, Stores, M>,
  ): Promise<Result<T, StorageError>> {
    const handle = await this.#handle();
    if (!handle.ok) return handle;
    const again = await attempt(handle.value, job);
    if (!again.ok) this.#fail(again.error, handle.value);
    return again;
  }

  /** Gives up the reserve where the work is worth it, and tries again. */
  async #withReserve<T, Stores extends readonly StoreName[], M extends Mode>(
    job: Job<T, Stores, M>,
    error: StorageError,
    mayUseReserve: boolean,
  ): Promise<Result<T, StorageError>> {
    this.status.set('full');
    let last: Result<T, StorageError> = err(error);
    let gave = false;
    for (const wait of mayUseReserve ? roomAfterMs : []) {
      await this.#pause(wait);
      const handle = await this.#handle();
      if (!handle.ok) return handle;
      const freed = await freedOf(handle.value);
      gave ||= freed !== false;
      if (freed !== undefined) last = await attempt(handle.value, job);
      if (last.ok) return last;
      last = err(this.#asToldNow(last.error));
      this.#fail(last.error, handle.value);
      if (!gave || last.error.kind !== 'quota') break;
    }
    return last;
  }

  /** Firefox tells a full disk in more than one way; where it was full just now, it is so still. */
  #asToldNow(error: StorageError): StorageError {
    const isVague = error.kind === 'unknown' || error.kind === 'denied';
    return isVague && this.status.current() === 'full' ? { ...error, kind: 'quota' } : error;
  }

  async #pause(ms: number): Promise<void> {
    if (ms === 0) return;
    await new Promise<void>((resolve) => void this.#source.timers.after(ms, resolve));
  }

  /** The connection, opened if need be; while that is blocked or stuck an error, so that nobody waits for ever. */
  async #handle(): Promise<Opened> {
    if (this.#ended !== undefined) return err(this.#ended);
    if (this.#current !== undefined) return ok(this.#current);
    this.#opening ??= this.#open();
    return this.#unlessHopeless(this.#opening);
  }

  #unlessHopeless(opening: Promise<Opened>): Promise<Opened> {
    return new Promise((resolve) => {
      const look = (code: StatusCode): void => {
        if (code === 'blocked' || code === 'stuck') answer(err({ kind: code, detail: 'still-opening' }));
      };
      const stop = this.status.subscribe(look);
      const answer = (opened: Opened): void => {
        stop();
        resolve(opened);
      };
      void opening.then(answer);
      look(this.status.current());
    });
  }

  async #open(): Promise<Opened> {
    this.#cancelRetry();
    const first = await this.#openAndTest();
    const opened = isSettled(first) ? first : await this.#openAndTest();
    if (opened !== first && first.ok) first.value.db.close();
    this.#opening = undefined;
    if (!opened.ok) this.#fail(opened.error);
    return opened.ok ? this.#adopt(opened.value) : opened;
  }

  async #openAndTest(): Promise<Opened> {
    const opened = await openDatabase(this.#source, (event) => this.#tell(event));
    if (!opened.ok) return opened;
    const db = opened.value;
    db.addEventListener('versionchange', () => void this.#giveUp(db));
    db.addEventListener('close', () => this.#terminated(db));
    const found = await selfTest(db);
    if (found === undefined) return ok({ db });
    const failure = this.#asToldNow(found);
    if (failure.kind === 'closed' || failure.kind === 'corrupt') {
      db.close();
      return err(failure);
    }
    if (failure.kind !== 'quota') return ok({ db, denied: failure });
    this.status.set('full');
    return ok({ db });
  }

  #tell(event: OpeningEvent): void {
    const now = this.status.current();
    const hidden =
      event === 'slow' ? now !== 'opening' && now !== 'open' : event === 'stuck' && now === 'blocked';
    if (!hidden) this.status.set(event);
  }

  #adopt(handle: Handle): Opened {
    if (this.#ended !== undefined) {
      handle.db.close();
      return err(this.#ended);
    }
    this.#current = handle;
    if (handle.denied !== undefined) this.status.set('denied');
    else if (this.status.current() !== 'full') this.status.set('open');
    return ok(handle);
  }

  #fail(error: StorageError, handle?: Handle): void {
    if (handle !== undefined) this.#drop(handle);
    if (this.#ended !== undefined) return;
    this.status.set(statusOf[error.kind]);
    if (error.kind === 'too-new') this.#ended = error;
    this.#cancelRetry();
    this.#cancelRetry = this.#source.timers.after(retryAfterMs, () => void this.#handle());
  }

  #drop(handle: Handle): void {
    if (this.#current !== handle) return; // another call has seen to it
    this.#current = undefined;
    handle.db.close();
  }

  #terminated(db: Connection): void {
    if (this.#current?.db !== db) return;
    this.#current = undefined;
    void this.#handle().then(() => this.#changedUnseen());
  }

  async #giveUp(db: Connection): Promise<void> {
    const flushed = Promise.allSettled([...this.#flushes].map(async (flush) => flush()));
    await new Promise((resolve) => {
      const cancel = this.#source.timers.after(flushWithinMs, () => resolve(undefined));
      void flushed.then(cancel).then(resolve);
    });
    this.#end({ kind: 'updated-elsewhere', detail: 'versionchange' });
    db.close();
  }

  #end(error: StorageError): void {
    this.#ended ??= error;
    this.#cancelRetry();
    this.#current?.db.close();
    this.#current = undefined;
    this.status.set(statusOf[this.#ended.kind]);
  }
}

/** False after what may have been a passing fault of opening: it deserves its second try at once. */
const isSettled = (opened: Opened): boolean =>
  opened.ok ? opened.value.denied === undefined : ['quota', 'too-new'].includes(opened.error.kind);

async function attempt<T, Stores extends readonly StoreName[], M extends Mode>(
  { db, denied }: Handle,
  job: Job<T, Stores, M>,
): Promise<Result<T, StorageError>> {
  if (denied !== undefined && job.mode === 'readwrite') return err(denied);
  try {
    return ok(await inTransaction(db, job));
  } catch (error) {
    if (isBug(error)) throw error;
    return err(transactionError(error));
  }
}

/** True when there was a reserve to give up, undefined when not even that can be done. */
async function freedOf({ db }: Handle): Promise<boolean | undefined> {
  try {
    return await freeReserve(db);
  } catch (error) {
    if (isBug(error)) throw error;
    return undefined;
  }
}
