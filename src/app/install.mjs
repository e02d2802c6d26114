// Plain JavaScript without packages: this runs before any is installed.
import { execSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The folder of the checkout. */
export const root = join(dirname(fileURLToPath(import.meta.url)), '../..');

/** Installs the packages of the lock file where they are missing or others; answers whether it did. */
export function installIfMissing() {
  refuseOldNode();
  if (isInstalled()) return false;
  console.log('Installing packages …');
  execSync('npm ci --include=dev --no-audit --no-fund', {
    cwd: root,
    stdio: ['ignore', 'inherit', 'inherit'],
  });
  return true;
}

function refuseOldNode() {
  const [major = 0, minor = 0] = process.versions.node.split('.').map(Number);
  if ((major === 20 && minor >= 19) || (major === 22 && minor >= 12) || major > 22) return;
  console.error(`Sagline needs Node 20.19 or later, or 22.12 or later; this is ${process.versions.node}.`);
  process.exit(1);
}

function isInstalled() {
  const wanted = packagesIn('package-lock.json');
  const found = packagesIn('node_modules/.package-lock.json');
  return Object.entries(wanted).every(([path, { version, optional, link }]) => {
    return path === '' || optional || link || found[path]?.version === version;
  });
}

/**
 * @param {string} lock
 * @returns {Record<string, { version?: string, optional?: boolean, link?: boolean }>}
 */
function packagesIn(lock) {
  const path = join(root, lock);
  return existsSync(path) ? JSON.parse(readFileSync(path, 'utf8')).packages : {};
}
