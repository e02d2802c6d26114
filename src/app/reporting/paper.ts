import { signal, type ReadonlySignal } from '@preact/signals';
import { preferences } from '../data/preferences.ts';
import { store } from '../data/phone.ts';

export type Paper = 'a4' | 'letter';

/** Where office paper is Letter (CLDR supplemental data, paperSize); everywhere else it is A4. */
const letterRegions = new Set('BZ,CA,CL,CO,CR,GT,MX,NI,PA,PH,PR,SV,US,VE'.split(','));

function usual(): Paper {
  try {
    return letterRegions.has(new Intl.Locale(preferences.value.locale).maximize().region ?? '')
      ? 'letter'
      : 'a4';
  } catch {
    return 'a4';
  }
}

const chosen = signal<Paper | undefined>(undefined);

/** The paper that this person prints on; undefined until it has been looked up. */
export const paper: ReadonlySignal<Paper | undefined> = chosen;

/** Looks up which paper was chosen; what is not stored is what the region uses. */
export async function loadPaper(): Promise<void> {
  const stored = await store.preferences.get('paper');
  const known = stored.ok && (stored.value === 'a4' || stored.value === 'letter') ? stored.value : undefined;
  chosen.value = known ?? usual();
}

/** Takes another paper at once and keeps it. */
export async function choosePaper(to: Paper): Promise<void> {
  chosen.value = to;
  await store.preferences.put('paper', to);
}
