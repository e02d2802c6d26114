// Finds the browsers of this machine. Plain JavaScript: `npm test` asks before anything else runs.
import { execFileSync } from 'node:child_process';
import { accessSync, constants } from 'node:fs';
import { delimiter, join } from 'node:path';

/** @typedef {'chromium' | 'firefox'} EngineName */
/** @typedef {{ path: string, version: string }} Engine */

/** @type {Record<EngineName, { variable: string, names: string[], places: string[] }>} */
const wanted = {
  chromium: {
    variable: 'CHROMIUM_PATH',
    names: ['chromium', 'chromium-browser', 'google-chrome-stable', 'google-chrome'],
    places: ['/Applications/Google Chrome.app/Contents/MacOS/Google Chrome'],
  },
  firefox: {
    variable: 'FIREFOX_PATH',
    names: ['firefox-esr', 'firefox'],
    places: ['/Applications/Firefox.app/Contents/MacOS/firefox'],
  },
};

/** @type {EngineName[]} */
export const engineNames = ['chromium', 'firefox'];

/**
 * The engines found; a path given by CHROMIUM_PATH or FIREFOX_PATH goes first, and alone.
 * @param {Record<string, string | undefined>} env
 * @returns {Partial<Record<EngineName, Engine>>}
 */
export function findEngines(env) {
  /** @type {Partial<Record<EngineName, Engine>>} */
  const found = {};
  for (const name of engineNames) {
    const { variable, names, places } = wanted[name];
    const given = env[variable];
    const folders = (env['PATH'] ?? '').split(delimiter);
    const candidates = given
      ? [given]
      : [...names.flatMap((file) => folders.map((folder) => join(folder, file))), ...places];
    const path = candidates.find(isProgram);
    const version = path === undefined ? undefined : versionOf(path);
    if (path !== undefined && version !== undefined) found[name] = { path, version };
  }
  return found;
}

/**
 * One sentence saying what is missing, or undefined when the tests can run. REQUIRE_ENGINES=chromium,firefox wants
 * each of those it names; without it any one will do.
 * @param {Partial<Record<EngineName, Engine>>} found
 * @param {Record<string, string | undefined>} env
 */
export function missingEngines(found, env) {
  const required = (env['REQUIRE_ENGINES'] ?? '').split(',').filter((name) => name !== '');
  const absent = required.filter((name) => !(name in found));
  if (absent.length > 0)
    return `Please install ${absent.join(' and ')} (Debian: apt-get install chromium firefox-esr): the tests were told to use it.`;
  if (Object.keys(found).length > 0) return undefined;
  return 'Please install Chromium or Firefox (Debian: apt-get install chromium firefox-esr), or name one in CHROMIUM_PATH or FIREFOX_PATH: the tests need a browser.';
}

/** @param {string} path */
function isProgram(path) {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

/** @param {string} path */
function versionOf(path) {
  try {
    return execFileSync(path, ['--version'], {
      encoding: 'utf8',
      stdio: ['ignore', 'pipe', 'ignore'],
      timeout: 30_000,
    }).trim();
  } catch {
    return undefined;
  }
}
