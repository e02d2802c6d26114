import type { Photo } from '../../core/photo.ts';
import { store } from '../data/phone.ts';

const wanted = 'photo-position';

/** Whether pictures are to say where they were taken; no, until the person says so. */
export async function isPositionWanted(): Promise<boolean> {
  const kept = await store.preferences.get(wanted);
  return kept.ok && kept.value === true;
}

export const wantPosition = (on: boolean): Promise<unknown> => store.preferences.put(wanted, on);

/** A place of this age still counts: nobody walks round a machine faster. */
const freshMs = 60_000;
const longestMs = 5000;

/** A ten-thousandth of a degree is 11 m: enough to tell one yard from the next, too little for a house. */
const rounded = (degrees: number): number => Math.round(degrees * 1e4) / 1e4;

const ask = (): Promise<Photo['position']> =>
  new Promise((resolve) =>
    navigator.geolocation.getCurrentPosition(
      ({ coords }) =>
        resolve({
          lat: rounded(coords.latitude),
          lon: rounded(coords.longitude),
          accuracyM: Math.ceil(coords.accuracy),
        }),
      () => resolve(undefined),
      { maximumAge: freshMs, timeout: longestMs },
    ),
  );

/** Where the phone is, if that is wanted and it knows; a picture never waits longer for it than five seconds. */
export const positionNow = async (): Promise<Photo['position']> =>
  (await isPositionWanted()) && 'geolocation' in navigator ? ask() : undefined;

/** Asks for the permission when it is switched on; false when the phone or the person refuses. */
export const mayAskPosition = async (): Promise<boolean> =>
  'geolocation' in navigator && (await ask()) !== undefined;
