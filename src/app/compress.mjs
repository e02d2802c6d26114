import { readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { brotliCompress, gzip } from 'node:zlib';

/**
 * Lays a .br and a .gz beside every text file, for the server to send as they are.
 * @param {string} dist
 */
export async function compress(dist) {
  const entries = await readdir(dist, { recursive: true, withFileTypes: true });
  const texts = entries.filter(
    (entry) => entry.isFile() && /\.(?:html|js|css|json|svg|ttf|txt|webmanifest)$/.test(entry.name),
  );
  await Promise.all(
    texts.map(async (entry) => {
      const path = join(entry.parentPath, entry.name);
      const bytes = await readFile(path);
      await writeFile(`${path}.br`, await promisify(brotliCompress)(bytes));
      await writeFile(`${path}.gz`, await promisify(gzip)(bytes, { level: 9 }));
    }),
  );
}
