import { store } from './phone.ts';

/** The draft that says that the camera was opened: the phone may end the app while another app takes the picture. */
export const pendingPhoto = 'pending-photo';

export interface PendingPhoto {
  readonly walk: string;
  readonly step: string;
  /** UTC, ISO 8601. */
  readonly since: string;
}

const isPending = (value: unknown): value is PendingPhoto =>
  typeof value === 'object' && value !== null && 'walk' in value && 'step' in value && 'since' in value;

/** After this long nobody waits for the picture any more. */
const stillMs = 30 * 60_000;

/** The picture that the camera was opened for and that did not arrive, if it was lately. */
export async function pendingPhotoNow(now: Date): Promise<PendingPhoto | undefined> {
  const draft = await store.drafts.get(pendingPhoto);
  if (!draft.ok || !isPending(draft.value)) return undefined;
  return Math.abs(now.getTime() - Date.parse(draft.value.since)) < stillMs ? draft.value : undefined;
}
