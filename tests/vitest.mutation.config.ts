import { defineConfig } from 'vitest/config';

/** The rooms whose tests judge the mutants: those that run without a build and without a browser. */
const judging = ['core', 'storage', 'files', 'reference', 'words', 'checks'];

export default defineConfig({
  test: {
    environment: 'node',
    // Laws over whole walks run for nearly every mutant of the core: a tenth of the cases is enough to notice.
    env: { LAW_PORTION: '0.1' },
    include: judging.map((room) => `tests/${room}/**/*.test.ts`),
    // Inputs of 25 MB, or a fault at every call of a whole story, for every mutant would take days, and say no more
    // than the small ones.
    exclude: ['tests/files/large.test.ts', 'tests/storage/faults.test.ts'],
  },
});
