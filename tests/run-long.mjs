// `npm run test:long`: what takes longer than a change may wait. With a pattern (`npm run test:long -- 'src/core/w*'`)
// it is the mutation tests of those files alone.
import { installIfMissing } from '../src/app/install.mjs';
import { findEngines, missingEngines } from './engines.mjs';
import { gate, playwright, runAll } from './suites.mjs';

const missing = missingEngines(findEngines(process.env), process.env);
if (missing !== undefined) {
  console.error(missing);
  process.exit(1);
}
installIfMissing();

const [pattern] = process.argv.slice(2);
const limitMs = 6 * 3_600_000;
const only = pattern === undefined ? [] : ['--mutate', pattern];
const mutation = gate('mutation', ['stryker', 'run', 'tests/stryker.config.mjs', ...only], {
  show: true,
  limitMs,
});
const long = [
  mutation,
  gate('build', ['node', 'src/app/build.mjs']),
  { ...playwright('browser-long', [], { env: { LONG: '1' }, limitMs }), needs: 'build' },
];

await runAll(pattern === undefined ? long : [mutation]);
