import * as z from 'zod/mini';
import { assert } from './result.ts';

/** An id inside a key: a UUIDv7 of ours, or up to 64 of `0-9 a-z -` in files written by hand. */
export const idSchema = z
  .string()
  .check(z.regex(/^[0-9a-z-]{1,64}$/))
  .brand<'Id'>();
export type Id = z.infer<typeof idSchema>;

/** Where on the machine, as text: `left.bottom-roller.3`, `left.track`, `whole.frame`. */
export type Place = string & z.core.$brand<'Place'>;
export type PlaceSide = 'left' | 'right' | 'whole';

/** A place taken apart; the number counts from the idler, from 1, and is absent where there is only one. */
export interface PlaceParts {
  readonly side: PlaceSide;
  readonly component: string;
  readonly number?: number;
}

const kebab = '[a-z][a-z0-9]*(?:-[a-z0-9]+)*';
const place = `(?:left|right|whole)\\.${kebab}(?:\\.[1-9][0-9]{0,2})?`;
const id = '[0-9a-z-]{1,64}';

/** What each segment of a key looks like. */
const segments = {
  id,
  walk: id,
  machine: id,
  place,
  item: kebab,
  n: '(?:0|[1-9][0-9]{0,3})',
  hash: '[0-9a-f]{64}',
  job: '[0-9a-z][0-9a-z.-]{0,127}',
};

interface SegmentTypes {
  readonly id: Id;
  readonly walk: Id;
  readonly machine: Id;
  readonly place: Place;
  readonly item: string;
  readonly n: number;
  readonly hash: string;
  readonly job: string;
}

/** Which segments follow each kind. */
const shapes = {
  machine: ['id'],
  limits: ['id'],
  rules: ['id'],
  walk: ['id'],
  reading: ['walk', 'place', 'item', 'n'],
  photo: ['walk', 'hash'],
  seal: ['walk', 'hash'],
  verdict: ['walk'],
  work: ['machine', 'id'],
  contract: ['id'],
  option: ['id'],
  price: ['id'],
  rate: ['id'],
  hold: ['machine', 'job'],
  same: ['id'],
  person: ['id'],
} as const;

export type Kind = keyof typeof shapes;
export const kinds = Object.keys(shapes) as readonly Kind[];

declare const kindOfKey: unique symbol;

/** The key of a record, known to be well formed, of one kind or of any. */
export type RecordKey<K extends Kind = Kind> = string & { readonly [kindOfKey]: K };

/** A key taken apart; `demo` marks records that are never queued, exported with real data or learned from. */
export type KeyParts<K extends Kind = Kind> = {
  readonly [Each in K]: { readonly kind: Each; readonly demo?: boolean } & {
    readonly [Segment in (typeof shapes)[Each][number]]: SegmentTypes[Segment];
  };
}[K];

const demoPrefix = 'demo/';
const shapePattern = (kind: Kind): string => [kind, ...shapes[kind].map((name) => segments[name])].join('/');
const keyPattern = new RegExp(`^(?:${demoPrefix})?(?:${kinds.map(shapePattern).join('|')})$`);

/** Checks the key of a record that comes in from outside. */
export const keySchema = z.string().check(z.regex(keyPattern)) as unknown as z.ZodMiniType<RecordKey, string>;

const isKey = (text: string): text is RecordKey => keyPattern.test(text);

/** Makes a key; parts that do not fit their pattern are a bug. */
export function makeKey<K extends Kind>(parts: KeyParts<K>): RecordKey<K> {
  const values = parts as unknown as Record<string, string | number>;
  const path = [parts.kind, ...shapes[parts.kind].map((name) => String(values[name]))].join('/');
  const key = parts.demo === true ? demoPrefix + path : path;
  assert(isKey(key), `no such key: ${key}`);
  return key as RecordKey<K>;
}

/** Takes a key apart. */
export function partsOf<K extends Kind>(key: RecordKey<K>): KeyParts<K> {
  const kind = kindOf(key);
  const given = withoutDemo(key).split('/').slice(1);
  const named = shapes[kind].map((name, at) => [name, name === 'n' ? Number(given[at]) : given[at]]);
  return { kind, ...(isDemo(key) && { demo: true }), ...Object.fromEntries(named) } as KeyParts<K>;
}

/** Takes a text apart that may be a key; undefined when it is none. */
export const parseKey = (text: string): KeyParts | undefined => (isKey(text) ? partsOf(text) : undefined);

const withoutDemo = (key: string): string => (isDemo(key) ? key.slice(demoPrefix.length) : key);

export const isDemo = (key: string): boolean => key.startsWith(demoPrefix);

export const kindOf = <K extends Kind>(key: RecordKey<K>): K => withoutDemo(key).split('/', 1)[0] as K;

export const isKind = <K extends Kind>(key: RecordKey, kind: K): key is RecordKey<K> => kindOf(key) === kind;

/** How all keys of a kind begin, or, with an owner, those of one walk or machine: `reading/<walk>/`. */
export function prefixOf(kind: Kind, of: { readonly owner?: Id; readonly demo?: boolean } = {}): string {
  const owner = of.owner === undefined ? '' : `${of.owner}/`;
  return `${of.demo === true ? demoPrefix : ''}${kind}/${owner}`;
}

/** The records whose picture changes with this one: itself, then the walk or machine that it belongs to. */
export function ownersOf(key: RecordKey): readonly RecordKey[] {
  const parts = partsOf(key);
  const demo = parts.demo === true;
  if ('walk' in parts) return [key, makeKey({ kind: 'walk', id: parts.walk, demo })];
  if ('machine' in parts) return [key, makeKey({ kind: 'machine', id: parts.machine, demo })];
  return [key];
}

const placePattern = new RegExp(`^${place}$`);

/** Checks a place that comes in from outside. */
export const placeSchema = z.string().check(z.regex(placePattern)).brand<'Place'>();

/** Makes the text of a place; a component that is not kebab-case or a number outside 1 … 999 is a bug. */
export function makePlace({ side, component, number }: PlaceParts): Place {
  const text = [side, component, ...(number === undefined ? [] : [number])].join('.');
  assert(placePattern.test(text), `no such place: ${text}`);
  return text as Place;
}

/** Takes a place apart. */
export function parsePlace(text: Place): PlaceParts {
  const [side, component, number] = text.split('.') as [PlaceSide, string, string?];
  return { side, component, ...(number !== undefined && { number: Number(number) }) };
}
