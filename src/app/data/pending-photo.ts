import type { ObservedAt } from '../../core/readings.ts';
import { store } from './phone.ts';

/** The draft that says that the camera was opened: the phone may end the app while another app takes the picture. */
export const pendingPhoto = 'pending-photo';

export interface PendingPhoto {
  readonly walk: string;
  readonly step: string;
  readonly since: ObservedAt;
  /** The same as milliseconds, to be reckoned with. */
  readonly sinceMs: number;
}

const isPending = (value: unknown): value is PendingPhoto =>
  typeof value === 'object' && value !== null && 'walk' in value && 'step' in value && 'sinceMs' in value;

/** After this long nobody waits for the picture any more. */
const stillMs = 30 * 60_000;

/** The picture that the camera was opened for and that did not arrive, if it was lately. */
export async function pendingPhotoNow(nowMs: number): Promise<PendingPhoto | undefined> {
  const draft = await store.drafts.get(pendingPhoto);
  if (!draft.ok || !isPending(draft.value)) return undefined;
  return Math.abs(nowMs - draft.value.sinceMs) < stillMs ? draft.value : undefined;
}
