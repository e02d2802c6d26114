import { isDemo, makeKey, parseKey, type Id, type RecordKey } from '../../core/keys.ts';

/** `…/id` or `…/demo/id` of a machine, walk or book, as it stands in the address bar. */
const tail = (key: string): string => {
  const parts = parseKey(key);
  const id = parts && 'id' in parts ? parts.id : '';
  return isDemo(key) ? `demo/${id}` : id;
};

export const machinePath = (
  key: string,
  screen?: 'contract' | 'edit' | 'form' | 'hauling' | 'history' | 'options' | 'start' | 'work',
): string => `/machine/${tail(key)}${screen ? `/${screen}` : ''}`;

/** Which part work was done on, and where to go on from there. */
interface WorkAt {
  readonly component?: string;
  readonly side?: string;
  /** An address of this app. */
  readonly from?: string;
}

/** The form for work, with the part that it was noticed on. */
export function workPath(machine: string, at: WorkAt): string {
  const query = new URLSearchParams(Object.entries(at).filter(([, value]) => value !== undefined));
  return `${machinePath(machine, 'work')}?${query}`;
}

/** A walk's address; a step's dots become strokes, because the server takes a dot for a file. */
export const walkPath = (key: string, step?: string): string =>
  `/walk/${tail(key)}${step === undefined ? '' : `/${step.replaceAll('.', '/')}`}`;

/** A picture of a rental walk's sequence as a step of the walk. */
export const sequenceStep = (shot: string): string => `sequence.${shot}`;

const shelfPaths = { limits: '/sheets', rules: '/rules', price: '/prices', rate: '/rates' } as const;
type BookKind = keyof typeof shelfPaths;

/** Where the books of a kind stand; rates stand beside the price lists. */
export const shelfPath = (kind: BookKind): string => shelfPaths[kind === 'rate' ? 'price' : kind];

/** A stored or built-in book: `/sheets/id`, `/rules/id`, `/prices/id`, `/rates/id`. */
export const bookPath = (key: string): string => {
  const kind = parseKey(key)?.kind;
  const isBook = kind === 'rules' || kind === 'price' || kind === 'rate';
  return `${shelfPaths[isBook ? kind : 'limits']}/${tail(key)}`;
};

/** An address taken apart again: the key it names, and what follows it. */
export function fromPath<K extends 'machine' | 'walk' | BookKind>(
  kind: K,
  path: string,
): { readonly key: RecordKey<K>; readonly rest: readonly string[] } | undefined {
  const [, , ...parts] = decodeURI(path).split('/');
  const demo = parts[0] === 'demo';
  const [id, ...rest] = demo ? parts.slice(1) : parts;
  if (id === undefined || !/^[0-9a-z-]{1,64}$/.test(id)) return undefined;
  // Each of these kinds is named by an id alone, which the generic type cannot see.
  const key = makeKey({ kind, id: id as Id, demo } as unknown as Parameters<typeof makeKey<K>>[0]);
  return { key, rest };
}
