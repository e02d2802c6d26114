import builtInUrl from 'virtual:data/built-in';
import demoUrl from 'virtual:data/demo';
import drawingsUrl from 'virtual:data/drawings';
import helpUrl from 'virtual:data/help';
import type { BuiltIn } from '../../core/assemble.ts';
import type { RecordKey } from '../../core/keys.ts';
import type { RecordValue } from '../../core/versions.ts';
import type { HelpWords } from '../../words/en/help.ts';
import type { DrawingTree } from '../parts/tree-drawing.tsx';

const loaded = new Map<string, Promise<unknown>>();

/** Data of this build, which the service worker holds beside the code; asked for once, again after a failure. */
function load<T>(url: string): Promise<T> {
  const known = loaded.get(url);
  if (known) return known as Promise<T>;
  const asked = fetch(url).then((answer) => answer.json() as Promise<T>);
  loaded.set(url, asked);
  asked.catch(() => loaded.delete(url));
  return asked;
}

/** Sheets, rule sets and tools that come with the app. */
export const loadBuiltIn = (): Promise<BuiltIn> => load(builtInUrl);

/** The records of the demo machines. */
export const loadDemo = (): Promise<readonly { readonly key: RecordKey; readonly value: RecordValue }[]> =>
  load(demoUrl);

/** Help by item id or sag method. */
export const loadHelp = (): Promise<Readonly<Record<string, HelpWords>>> => load(helpUrl);

/** Drawings by item id, sag method, `front` or `raised`. */
export const loadDrawings = (): Promise<Readonly<Record<string, DrawingTree>>> => load(drawingsUrl);
