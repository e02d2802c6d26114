import { isDemo } from '../core/keys.ts';
import { ok, type Result } from '../core/result.ts';
import type { Version } from '../core/versions.ts';
import { crc32, crcText } from './crc32.ts';
import { backupFormat } from './document.ts';
import { headLine, lineBreak, recordText } from './write-walk-file.ts';

/**
 * Writes everything as one file, batch by batch, so that a phone full of walks fits in memory. The last line
 * counts the records and sums them up (CRC-32 of their texts), so that a file that breaks off is found out.
 * @param write takes the next piece of the file's text
 */
export async function writeBackup<E>(
  batches: AsyncIterable<Result<readonly Version[], E>>,
  write: (text: string) => void | Promise<void>,
): Promise<Result<{ readonly count: number }, E>> {
  const encoder = new TextEncoder();
  let [count, crc] = [0, 0];
  await write(headLine(backupFormat));
  for await (const batch of batches) {
    if (!batch.ok) return batch;
    const texts = batch.value.filter(({ key }) => !isDemo(key)).map(recordText);
    if (texts.length === 0) continue;
    crc = texts.reduce((sum, text) => crc32(encoder.encode(text), sum), crc);
    await write((count > 0 ? lineBreak : '') + texts.join(lineBreak));
    count += texts.length;
  }
  await write(`\n],"seals":[],"count":${count},"crc32":"${crcText(crc)}"}\n`);
  return ok({ count });
}
