// `npm test`: everything that must hold, in one line. A suite that fails does not stop the next.
import { installIfMissing } from '../src/app/install.mjs';
import { engineNames, findEngines, missingEngines } from './engines.mjs';
import { gate, playwright, runAll, vitest } from './suites.mjs';

const engines = findEngines(process.env);
const missing = missingEngines(engines, process.env);
if (missing !== undefined) {
  console.error(missing);
  process.exit(1);
}
installIfMissing();
for (const name of engineNames) console.log(`${name}: ${engines[name]?.version ?? 'not found, not run'}`);

await runAll([
  gate('format', ['prettier', '--check', '.']),
  gate('types', ['tsc', '-b']),
  vitest('walls', ['walls']),
  gate('lint', ['oxlint', '--config', 'tests/oxlint.json', '--type-aware', '--deny-warnings']),
  gate('unused', ['knip', '--config', 'tests/knip.json', '--no-config-hints']),
  vitest('unit', ['unit', 'dom']),
  vitest('checks', ['checks']),
  gate('build', ['node', 'src/app/build.mjs']),
  { ...gate('budgets', ['node', 'tests/size.mjs'], { show: true }), needs: 'build' },
  { ...vitest('built', ['built']), needs: 'build' },
  { ...playwright('browser', ['browser/']), needs: 'build' },
  { ...vitest('score bench', ['bench']), needs: 'build' },
  { ...playwright('phone bench', ['bench/', '--workers=1']), needs: 'build' },
]);
