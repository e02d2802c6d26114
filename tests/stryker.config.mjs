// Mutation testing: would the tests notice if the code were wrong? Run by `npm run test:long`.
export default {
  testRunner: 'vitest',
  plugins: ['@stryker-mutator/vitest-runner'],
  vitest: { configFile: 'tests/vitest.mutation.config.ts' },
  // Stryker 9 would load TypeScript's old interface, which TypeScript 7 no longer has: no such file, no load.
  tsconfigFile: 'none.json',
  mutate: ['src/core/**/*.ts', 'src/storage/**/*.ts', 'src/files/**/*.ts'],
  coverageAnalysis: 'perTest',
  // Tables and schemas made while a file loads would need every test once for each mutant.
  ignoreStatic: true,
  concurrency: 2,
  thresholds: { high: 95, low: 85, break: 85 },
  reporters: ['clear-text', 'json'],
  clearTextReporter: { allowColor: false, logTests: false, reportTests: false },
  jsonReporter: { fileName: 'build/tests/mutation.json' },
  tempDirName: 'build/stryker',
  ignorePatterns: ['build', 'dist', 'data', 'public', '.ci'],
};
