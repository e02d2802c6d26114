import { defineConfig, type PlaywrightTestProject } from '@playwright/test';
import { findEngines } from '../engines.mjs';
import { browserOptions } from './browsers.ts';

const engines = findEngines(process.env);

/** LONG=1 runs what takes hours of a thumb or many kills (tests named *.long.spec.ts) instead of the daily ones. */
const long = process.env['LONG'] === '1';

const projects: PlaywrightTestProject[] = (['chromium', 'firefox'] as const).flatMap((name) => {
  const engine = engines[name];
  return engine === undefined ? [] : [{ name, use: browserOptions(name, engine.path) }];
});

export default defineConfig({
  testDir: '..',
  testMatch: long ? 'browser/*.long.spec.ts' : '{browser,bench}/!(*.long).spec.ts',
  outputDir: '../../build/tests/browser',
  workers: 2,
  fullyParallel: true,
  forbidOnly: true,
  retries: 0,
  timeout: long ? 600_000 : 60_000,
  reporter: 'list',
  use: { viewport: { width: 360, height: 740 }, serviceWorkers: 'allow', trace: 'retain-on-failure' },
  projects,
});
