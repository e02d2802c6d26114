import type { Id, RecordKey } from '../../core/keys.ts';
import type { Photo, Shown } from '../../core/photo.ts';
import type { ObservedAt } from '../../core/readings.ts';
import { store } from './phone.ts';

/** The draft that says that the camera was opened: the phone may end the app while another app takes the picture. */
export const pendingPhoto = 'pending-photo';

/** What new pictures are taken for. */
export interface TakenFor {
  readonly walk: RecordKey<'walk'>;
  readonly shows: readonly Shown[];
  readonly scale?: Photo['scale'];
  readonly note?: Photo['note'];
  /** Which picture of a rental walk's sequence it is. */
  readonly shot?: Photo['shot'];
  /** A picture that the new one takes the place of. */
  readonly replaces?: RecordKey<'photo'>;
}

export interface PendingPhoto {
  readonly walk: string;
  readonly step: string;
  readonly from: Photo['from'];
  readonly taken: TakenFor;
  readonly since: ObservedAt;
  /** The same as milliseconds, to be reckoned with. */
  readonly sinceMs: number;
  /** The run of the app that opened the camera. */
  readonly run: Id;
}

/** After this long nobody waits for the picture any more. */
const stillMs = 30 * 60_000;

/** The picture that the camera was opened for and that did not arrive, if it was lately. */
export async function pendingPhotoNow(nowMs: number): Promise<PendingPhoto | undefined> {
  const draft = await store.drafts.get(pendingPhoto);
  const pending = draft.ok ? (draft.value as PendingPhoto | undefined) : undefined;
  return pending && Math.abs(nowMs - pending.sinceMs) < stillMs ? pending : undefined;
}
