import { createHash } from 'node:crypto';
import { readdir, readFile } from 'node:fs/promises';
import { join, relative, sep } from 'node:path';
import { root } from './install.mjs';

/** Eight hex digits that change with anything the build is made from, and with nothing else. */
export async function buildId() {
  const hash = createHash('sha256');
  const paths = (await Promise.all(['src', 'service-worker', 'public'].map(filesUnder))).flat();
  for (const path of [join(root, 'package-lock.json'), ...paths.sort()]) {
    hash
      .update(relative(root, path).split(sep).join('/'))
      .update('\0')
      .update(await readFile(path));
  }
  return hash.digest('hex').slice(0, 8);
}

/** @param {string} folder */
async function filesUnder(folder) {
  const entries = await readdir(join(root, folder), { recursive: true, withFileTypes: true });
  return entries.filter((entry) => entry.isFile()).map((entry) => join(entry.parentPath, entry.name));
}
