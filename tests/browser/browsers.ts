import { chromium, firefox, type BrowserContext, type LaunchOptions } from '@playwright/test';
import { execFileSync } from 'node:child_process';
import { setTimeout as sleep } from 'node:timers/promises';
import { findEngines } from '../engines.mjs';

type EngineName = 'chromium' | 'firefox';

type BrowserUse = {
  browserName: EngineName;
  channel?: string;
  launchOptions: LaunchOptions;
};

const chromiumFlags = [
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** How Playwright starts an engine of this machine; stock Firefox is driven through its own channel. */
export function browserOptions(browserName: EngineName, executablePath: string): BrowserUse {
  if (browserName === 'firefox')
    return { browserName, channel: 'moz-firefox', launchOptions: { executablePath } };
  // Chromium's sandbox refuses to run as root, as in most containers.
  const args = process.getuid?.() === 0 ? ['--no-sandbox', ...chromiumFlags] : chromiumFlags;
  return { browserName, launchOptions: { executablePath, args } };
}

/** The same, for tests in which only the worker's cache may answer; Chromium's own is emptied by the test itself. */
export function withoutHttpCache(browserName: string): LaunchOptions {
  const name = browserName === 'firefox' ? 'firefox' : 'chromium';
  const { launchOptions } = browserOptions(name, engineOf(name).path);
  const firefoxUserPrefs = { 'browser.cache.disk.enable': false, 'browser.cache.memory.enable': false };
  return name === 'firefox' ? { ...launchOptions, firefoxUserPrefs } : launchOptions;
}

function engineOf(name: EngineName): { path: string } {
  const engine = findEngines(process.env)[name];
  if (engine === undefined) throw new Error(`${name} is not on this machine`);
  return engine;
}

/** A browser whose data stays in `profile` after it has gone, however it went. */
export function openProfile(browserName: EngineName, profile: string): Promise<BrowserContext> {
  const { launchOptions, channel } = browserOptions(browserName, engineOf(browserName).path);
  const options = {
    ...launchOptions,
    viewport: { width: 360, height: 740 },
    ...(channel === undefined ? {} : { channel }),
  };
  return (browserName === 'chromium' ? chromium : firefox).launchPersistentContext(profile, options);
}

/** Kills every process of the browser that holds `profile`, as a crash or an empty battery would, and waits for the last. */
export async function killProfile(profile: string): Promise<void> {
  const killed = new Set<number>();
  for (let round = 0; round < 100; round += 1) {
    const alive = processesOf(profile, killed);
    if (alive.length === 0 && killed.size > 0) return;
    for (const pid of alive) {
      killed.add(pid);
      try {
        process.kill(pid, 'SIGKILL');
      } catch {
        // It went by itself since it was listed.
      }
    }
    await sleep(50);
  }
  throw new Error('the browser does not die');
}

/** Processes that name the profile on their command line, and all that descend from one of these or of the killed. */
function processesOf(profile: string, killed: ReadonlySet<number>): number[] {
  const table = execFileSync('ps', ['-A', '-o', 'pid=,ppid=,stat=,args='], {
    encoding: 'utf8',
    maxBuffer: 64_000_000,
  });
  const rows = table.split('\n').flatMap((line) => {
    const match = /^\s*(\d+)\s+(\d+)\s+(\S+)\s+(.*)$/.exec(line);
    if (match === null || match[3]?.startsWith('Z')) return [];
    return [{ pid: Number(match[1]), parent: Number(match[2]), args: match[4] ?? '' }];
  });
  const found = new Set(
    rows.filter(({ args, pid }) => args.includes(profile) && pid !== process.pid).map(({ pid }) => pid),
  );
  for (let before = -1; before !== found.size;) {
    before = found.size;
    for (const { pid, parent } of rows) if (found.has(parent) || killed.has(parent)) found.add(pid);
  }
  return [...found];
}
