import builtInUrl from 'virtual:data/built-in';
import demoUrl from 'virtual:data/demo';
import drawingsUrl from 'virtual:data/drawings';
import helpUrl from 'virtual:data/help';
import reasonsUrl from 'virtual:data/reasons';
import { signal, type ReadonlySignal } from '@preact/signals';
import type { BuiltIn } from '../../core/assemble.ts';
import type { RecordKey } from '../../core/keys.ts';
import type { RecordValue } from '../../core/versions.ts';
import type { HelpWords } from '../../words/en/help.ts';
import type { ReasonTexts } from '../../words/en/reason-line.ts';
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

const texts = signal<ReasonTexts>({});

/** Sentences of what a rule says; there from when the built-in data has been loaded. */
export const reasonTexts: ReadonlySignal<ReasonTexts> = texts;

/** Sheets, rule sets and tools that come with the app; no rule can be shown before. */
export async function loadBuiltIn(): Promise<BuiltIn> {
  const [builtIn, reasons] = await Promise.all([load<BuiltIn>(builtInUrl), load<ReasonTexts>(reasonsUrl)]);
  texts.value = reasons;
  return builtIn;
}

/** The records of the demo machines. */
export const loadDemo = (): Promise<readonly { readonly key: RecordKey; readonly value: RecordValue }[]> =>
  load(demoUrl);

/** Help by item id or sag method. */
export const loadHelp = (): Promise<Readonly<Record<string, HelpWords>>> => load(helpUrl);

/** Drawings by item id, sag method, `front` or `raised`. */
export const loadDrawings = (): Promise<Readonly<Record<string, DrawingTree>>> => load(drawingsUrl);
