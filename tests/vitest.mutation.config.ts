import { defineConfig } from 'vitest/config';

/** The rooms whose tests judge the mutants: those that run without a build and without a browser. */
const judging = ['core', 'storage', 'files', 'reference', 'words', 'checks'];

export default defineConfig({
  test: {
    environment: 'node',
    include: judging.map((room) => `tests/${room}/**/*.test.ts`),
    // Inputs of 25 MB for every mutant would take days, and say no more than small ones.
    exclude: ['tests/files/large.test.ts'],
  },
});
