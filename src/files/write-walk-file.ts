import { isDemo, kindOf } from '../core/keys.ts';
import { assert } from '../core/result.ts';
import type { FileRecord } from './envelope.ts';
import { formatVersion, walkFormat, type Format } from './document.ts';

/** Both formats stand one record to a line, so that they can be read, compared and mended line by line. */
export const headLine = (format: Format): string =>
  `{"format":"${format}","version":${formatVersion},"records":[\n`;

export const lineBreak = ',\n';

/** The text of a record; a demo record never leaves with real data. */
export function recordText(record: FileRecord): string {
  assert(!isDemo(record.key), `not to be exported: ${record.key}`);
  return JSON.stringify(record);
}

/** A seal is a text that can be checked by itself, so it stands beside the records. */
const sealOf = ({ key, value }: FileRecord): string | undefined =>
  kindOf(key) === 'seal' && typeof value?.['jws'] === 'string' && value['v'] === 1 ? value['jws'] : undefined;

/** Writes records as a walk file; so are a single limit sheet or rule set. Reading it gives the same records. */
export function writeWalkFile(records: readonly FileRecord[]): string {
  const texts = records.filter((record) => sealOf(record) === undefined).map(recordText);
  const seals = records.flatMap((record) => sealOf(record) ?? []);
  return `${headLine(walkFormat)}${texts.join(lineBreak)}\n],"seals":${JSON.stringify(seals)}}\n`;
}
