import { isDemo, makeKey, parseKey, type Id, type RecordKey } from '../../core/keys.ts';

/** `…/id` or `…/demo/id` of a machine, walk, sheet or rule set, as it stands in the address bar. */
const tail = (key: string): string => {
  const parts = parseKey(key);
  const id = parts && 'id' in parts ? parts.id : '';
  return isDemo(key) ? `demo/${id}` : id;
};

export const machinePath = (key: string, screen?: 'edit' | 'history' | 'start' | 'work'): string =>
  `/machine/${tail(key)}${screen ? `/${screen}` : ''}`;

/** A walk's address; a step's dots become strokes, because the server takes a dot for a file. */
export const walkPath = (key: string, step?: string): string =>
  `/walk/${tail(key)}${step === undefined ? '' : `/${step.replaceAll('.', '/')}`}`;

/** A stored or built-in sheet or rule set: `/sheets/id`, `/rules/id`. */
export const bookPath = (key: string): string => {
  const parts = parseKey(key);
  return `${parts?.kind === 'rules' ? '/rules' : '/sheets'}/${tail(key)}`;
};

/** An address taken apart again: the key it names, and what follows it. */
export function fromPath<K extends 'machine' | 'walk' | 'limits' | 'rules'>(
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
