import type { Id, RecordKey } from '../core/keys.ts';
import type { Result } from '../core/result.ts';
import type { DeviceId, Stamp } from '../core/stamp.ts';
import type { Change, RecordValue, Version } from '../core/versions.ts';
import type { StorageError } from './errors.ts';
import type { DraftRow, PhotoRow, RecordRow, ThumbnailRow } from './schema.ts';
import type { Status } from './status.ts';

/** The answer of everything that touches the disk; good only after the transaction has completed. */
export type Stored<T> = Result<T, StorageError>;

/** What a record is to be from now on; `decides` says that the person saw all sides of a clash, and settles it. */
export type Write = (Change | Edit) & { readonly decides?: true };

/**
 * A change of what is there, worked out inside the transaction, so that two tabs do not undo each other. It gets
 * the displayed value, undefined where there is none or it was removed; it may be called twice, and awaits nothing.
 */
export interface Edit {
  readonly key: RecordKey;
  readonly edit: (value: RecordValue | undefined) => RecordValue;
}

export interface WriteOptions {
  /** Drafts that become these records; they leave in the same transaction. */
  readonly dropDrafts?: readonly string[];
  /** The person who writes; without one the device's id stands in. */
  readonly by?: Id;
  /** Bytes that these records name: on disk in the same transaction, so that neither is ever without the other. */
  readonly photos?: readonly PhotoRow[];
  readonly thumbnails?: readonly ThumbnailRow[];
}

/**
 * Why nothing was written: a value of a newer build is never edited by an older one, and of two versions that
 * say different things none may vanish by an edit: the person has to see both and decide.
 */
export interface NotEditable {
  readonly kind: 'made-by-newer' | 'clash';
  readonly key: RecordKey;
}

/** A stamp that counts a million and more ahead of this phone is a fault or an attack; nothing was merged. */
export interface CountsAhead {
  readonly kind: 'counts-ahead';
  readonly stamp: Stamp;
}

export interface Merged {
  /** Versions that were new here. */
  readonly added: number;
  /** Versions that were here already, or covered by what is here. */
  readonly known: number;
  /** Keys that came to need a decision. */
  readonly clashes: readonly RecordKey[];
}

/** A part of the records in order of their keys; without a limit all of it. */
export interface Page {
  readonly prefix: string;
  readonly limit?: number;
  /** The last key of the page before. */
  readonly after?: string;
  /** Highest key first: ids that carry a time come newest first. */
  readonly reverse?: boolean;
}

export interface Drafts {
  get(key: string): Promise<Stored<unknown>>;
  put(key: string, value: unknown): Promise<Stored<undefined>>;
  delete(key: string): Promise<Stored<undefined>>;
  list(prefix: string): Promise<Stored<readonly DraftRow[]>>;
}

export interface Photos {
  /**
   * Bytes by their hash, which the caller has computed; putting the same again changes nothing. Who puts bytes before
   * the record that names them calls this even if they are here: it keeps them from being swept until the next run.
   */
  put(photo: PhotoRow): Promise<Stored<undefined>>;
  /** Undefined when the bytes are gone, which is a state to show and not a fault. */
  get(sha256: string): Promise<Stored<PhotoRow | undefined>>;
  /**
   * Deletes bytes and thumbnails that no photo record names, if they were already unnamed in an earlier run of the
   * app; answers how many. Does nothing while another page is open, or where that cannot be known.
   */
  sweep(): Promise<Stored<number>>;
}

/** Small pictures by the hash of the photo that they were made from. */
export interface Thumbnails {
  put(thumbnail: ThumbnailRow): Promise<Stored<undefined>>;
  get(sha256: string): Promise<Stored<ThumbnailRow | undefined>>;
}

/** Something to be worked out from records, and kept until one of them changes. */
export interface Derivation<T> {
  readonly name: string;
  /** The version of the core that works it out; another one's result is not used. */
  readonly core: string;
  /**
   * The records that it depends on. A walk's key stands for its readings, photos, seals and verdict, a
   * machine's key for its work and holds.
   */
  readonly from: readonly RecordKey[];
  readonly compute: () => Promise<Stored<T>>;
}

export interface Preferences {
  get(name: string): Promise<Stored<unknown>>;
  put(name: string, value: unknown): Promise<Stored<undefined>>;
}

export interface Changes {
  /** Calls back with the changed keys that begin so, from this tab (after commit) and from other tabs. */
  subscribe(prefix: string, listener: (keys: readonly RecordKey[]) => void): () => void;
}

/** The phone's storage. Every call waits for opening, but answers with an error once that is blocked or stuck. */
export interface Store {
  readonly status: Status;
  readonly changes: Changes;
  readonly drafts: Drafts;
  readonly photos: Photos;
  readonly thumbnails: Thumbnails;
  readonly preferences: Preferences;

  /**
   * Makes versions, all or none, puts the bytes they name and drops drafts with them. The answer has one version for each change, in
   * order; saying what is there already makes none and answers with that one.
   */
  write(
    changes: readonly Write[],
    options?: WriteOptions,
  ): Promise<Result<readonly Version[], StorageError | NotEditable>>;
  /** Takes in versions made elsewhere, all or none. */
  merge(versions: readonly Version[]): Promise<Result<Merged, StorageError | CountsAhead>>;
  /** The uncovered versions of a record in rank order; none when it was never there. */
  read(key: RecordKey): Promise<Stored<readonly Version[]>>;
  list(page: Page): Promise<Stored<readonly RecordRow[]>>;
  /** The records that wait for a decision. */
  clashes(): Promise<Stored<readonly RecordRow[]>>;
  derive<T>(derivation: Derivation<T>): Promise<Stored<T>>;

  /** All records but the demo's, in batches; the last one is an error if reading failed. */
  exportAll(): AsyncGenerator<Stored<readonly Version[]>>;
  /** Takes in a backup batch by batch; repeating it changes nothing. */
  importAll(
    batches: AsyncIterable<readonly Version[]> | Iterable<readonly Version[]>,
  ): Promise<Result<Merged, StorageError | CountsAhead>>;
  /** Deletes the demo's records, drafts and lists for good. */
  wipeDemo(): Promise<Stored<undefined>>;

  device(): Promise<Stored<DeviceId>>;
  /** From now on everything written has to be sent; what is here already is queued as well. */
  join(): Promise<Stored<undefined>>;
  /** Makes sure that 5 MB are set aside for the last save; `quota` means: do not start a long walk now. */
  ensureReserve(): Promise<Stored<undefined>>;
  /** A tiny read that finds out whether the connection still lives, and reopens it; when full, looks for room. */
  probe(): Promise<Stored<undefined>>;
  /** Called before the connection is given up to another tab; the answer is awaited for a second at most. */
  beforeClose(flush: () => Promise<unknown>): () => void;
  /** Gives the connection up for good; transactions under way complete. */
  close(): void;
}
