import { defineConfig } from 'vitest/config';
import { dataFiles } from '../src/app/data-files.ts';

/** Suites of `npm test` that are counted apart from the rooms' own tests. */
const apart = {
  walls: 'tests/walls.test.ts',
  checks: 'tests/checks/**',
  built: 'tests/built/**',
  bench: 'tests/bench/**',
};

// Database tests need the node environment: under a DOM shim a stored Blob comes back broken.
const inNode = (name: string, include: string[], exclude: string[] = []) => ({
  test: { name, environment: 'node' as const, include, exclude },
});

export default defineConfig({
  test: {
    projects: [
      inNode('unit', ['tests/**/*.test.ts'], ['tests/browser/**', 'tests/app/**', ...Object.values(apart)]),
      inNode('walls', [apart.walls]),
      inNode('checks', [`${apart.checks}/*.test.ts`]),
      // What was built, and how fast it is: after the build.
      inNode('built', [`${apart.built}/*.test.ts`]),
      inNode('bench', [`${apart.bench}/*.test.ts`]),
      // With the style sheets, since drawings are data that names their classes.
      {
        test: { name: 'dom', environment: 'happy-dom', css: true, include: ['tests/app/**/*.test.{ts,tsx}'] },
        plugins: [dataFiles],
        oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
      },
    ],
  },
});
