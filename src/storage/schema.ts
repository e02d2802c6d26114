import type { DBSchema, IDBPDatabase, IDBPTransaction, StoreNames } from 'idb';
import type { DeviceId, Stamp } from '../core/stamp.ts';
import type { RecordKey } from '../core/keys.ts';
import type { Version } from '../core/versions.ts';

export const databaseName = 'sagline';

/** The schema this build makes; upgrades only ever add, see upgrade.ts. */
export const schemaVersion = 3;

/** Every version of one key that no other covers, in rank order; never empty. */
export interface RecordRow {
  readonly key: RecordKey;
  readonly versions: readonly Version[];
  /** Present only while the versions say different things, so that the index `clash` holds just these. */
  readonly clash?: 1;
}

/** What is half typed: never synced, never scored. */
export interface DraftRow {
  readonly key: string;
  readonly value: unknown;
}

/** Bytes, never a Blob or File: some engines refuse these or lose them. */
export interface PhotoRow {
  readonly sha256: string;
  readonly type: string;
  readonly bytes: Uint8Array;
}

/** A small JPEG of a photo, for lists; it can be made again from the photo. */
export interface ThumbnailRow {
  /** The hash of the photo, not of these bytes. */
  readonly sha256: string;
  readonly bytes: Uint8Array;
}

/** Bytes that no record named when they were last looked at, and the run of the app that looked. */
export interface UnnamedRow {
  readonly sha256: string;
  readonly run: string;
}

/** A version that the office does not have yet. */
export interface OutboxRow {
  readonly key: RecordKey;
  readonly stamp: Stamp;
}

/** Something worked out from records; it leaves in the transaction that changes one of those it comes from. */
export interface DerivedRow {
  readonly name: string;
  /** The build of the core that worked it out. */
  readonly core: string;
  readonly from: readonly RecordKey[];
  readonly value: unknown;
}

/** Who this device is and how far it has counted. */
export interface ClockRow {
  readonly name: 'clock';
  readonly device: DeviceId;
  readonly counter: number;
  /** Rises with every transaction that changes records; absent in version 1. */
  readonly sequence?: number;
  /** True once the phone belongs to an office, so that what it writes has to be sent. */
  readonly joined?: boolean;
}

/** What a build must know of the database before it may use it. */
export interface SchemaRow {
  readonly name: 'schema';
  /** The oldest schema whose builds can still use this database without harm. */
  readonly addsOnlySince: number;
  /** The schema of the build that opened it last: an older one leaves newer indexes and lists stale. */
  readonly writtenBy: number;
}

export interface PreferenceRow {
  readonly name: `preference/${string}`;
  readonly value: unknown;
}

export interface ProbeRow {
  readonly name: 'probe';
  readonly value: string;
}

export type MetaRow = ClockRow | SchemaRow | PreferenceRow | ProbeRow;

export interface ReserveRow {
  readonly name: 'reserve';
  readonly bytes: Uint8Array;
}

export interface SaglineSchema extends DBSchema {
  versions: { key: string; value: RecordRow; indexes: { clash: number } };
  drafts: { key: string; value: DraftRow };
  photos: { key: string; value: PhotoRow };
  thumbnails: { key: string; value: ThumbnailRow };
  unnamed: { key: string; value: UnnamedRow };
  outbox: { key: [string, string]; value: OutboxRow };
  derived: { key: string; value: DerivedRow; indexes: { from: string } };
  meta: { key: string; value: MetaRow };
  reserve: { key: string; value: ReserveRow };
}

export type StoreName = StoreNames<SaglineSchema>;
export type Connection = IDBPDatabase<SaglineSchema>;
export type Transaction<
  Stores extends readonly StoreName[] = readonly StoreName[],
  Mode extends IDBTransactionMode = IDBTransactionMode,
> = IDBPTransaction<SaglineSchema, Stores, Mode>;
