import { parseKey, parsePlace } from '../../core/keys.ts';
import { placeName } from '../../words/en/items.ts';
import { fieldWords, recordWords } from '../../words/en/sealing.ts';
import { formatter } from '../data/format.ts';

/** A record as a person knows it: `left track: lug depth 2`, or its kind. */
export function recordText(key: string): string {
  const parts = parseKey(key);
  if (parts?.kind !== 'reading') return recordWords[parts?.kind ?? ''] ?? key;
  const number = parts.n > 1 ? ` ${parts.n}` : '';
  return `${placeName(parsePlace(parts.place))}: ${formatter.value.item(parts.item)}${number}`;
}

/** The last part of a path that has a word; a number in a list does not. */
function fieldText(path: readonly (string | number)[]): string | undefined {
  const known = path.filter((each) => typeof each === 'string' && Object.hasOwn(fieldWords, each));
  const last = known.at(-1);
  return last === undefined ? path.at(-1)?.toString() : fieldWords[last];
}

/** Record and field in words; without a path the whole record. */
export function changedText(key: string, path: readonly (string | number)[]): string {
  const field = fieldText(path);
  return field === undefined ? recordText(key) : `${recordText(key)}, ${field}`;
}

const isShort = (value: unknown): value is string | number | boolean =>
  typeof value === 'number' ||
  typeof value === 'boolean' ||
  (typeof value === 'string' && value.length <= 40);

/** A value that fits into a sentence; undefined where it is a list, an object or a long text. */
export function valueText(value: unknown): string | undefined {
  if (!isShort(value)) return undefined;
  return typeof value === 'number' ? formatter.value.number(value) : String(value);
}
