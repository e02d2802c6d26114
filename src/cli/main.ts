import { readFileSync } from 'node:fs';
import { argv, exit, stderr, stdout } from 'node:process';
import { err, ok, type Result } from '../core/result.ts';
import { jsonSchema } from '../files/json-schema.ts';
import { cli } from '../words/en/cli.ts';
import { checkFile } from './check.ts';
import { demoFile } from './demo.ts';
import { readInput } from './input.ts';
import { optionsFile } from './options.ts';
import { rentalFile } from './rental.ts';
import { appraiseFile, planFile, scoreFile } from './score.ts';

/** What a command prints, or the one sentence of why it cannot. */
type Printed = Result<string, string>;

const exitCodes = { done: 0, bug: 1, badInput: 2, changed: 3 } as const;

/** JSON whose text cannot steer a terminal: JSON itself lets C1 controls and line separators stand. */
const asJson = (value: unknown): string =>
  JSON.stringify(value, null, 2).replace(
    /[\u007f-\u009f\u2028\u2029]/g,
    (char) => `\\u${char.charCodeAt(0).toString(16).padStart(4, '0')}`,
  ) + '\n';

const notMade = (name: string, error: string): Printed => err(name === '-' ? error : cli.inFile(name, error));

/** What a command makes of a file. */
async function madeOf(
  name: string,
  make: (bytes: Uint8Array) => Result<unknown, string> | Promise<Result<unknown, string>>,
): Promise<Printed> {
  const input = await readInput(name);
  const result = input.ok ? await make(input.value) : input;
  return result.ok ? ok(asJson(result.value)) : notMade(name, result.error);
}

/** Checks the seals of a file; what is not as it was sealed is told by the exit code too. */
async function checkPrinted(name: string): Promise<Printed> {
  const checked = await checkFile(name);
  if (!checked.ok) return notMade(name, checked.error);
  if (!checked.value.intact) process.exitCode = exitCodes.changed;
  return ok(`${checked.value.text}\n`);
}

function version(): string {
  const file = readFileSync(new URL('../package.json', import.meta.url), 'utf8');
  return (JSON.parse(file) as { version: string }).version;
}

async function printed(command: string, [file]: readonly string[]): Promise<Printed> {
  switch (command) {
    case 'demo':
      return ok(await demoFile());
    case 'score':
      return file === undefined ? err(cli.noFile(command)) : madeOf(file, scoreFile);
    case 'plan':
      return file === undefined ? err(cli.noFile(command)) : madeOf(file, planFile);
    case 'options':
      return file === undefined ? err(cli.noFile(command)) : madeOf(file, optionsFile);
    case 'rental':
      return file === undefined ? err(cli.noFile(command)) : madeOf(file, rentalFile);
    case 'appraise':
      return file === undefined ? err(cli.noFile(command)) : madeOf(file, appraiseFile);
    case 'check':
      return file === undefined ? err(cli.noFile(command)) : checkPrinted(file);
    case 'schema':
      return ok(asJson(jsonSchema()));
    case '--version':
      return ok(`${cli.version(version())}\n`);
    case '--help':
    case '-h':
    case 'help':
      return ok(cli.help);
    default:
      return err(cli.unknownCommand(command));
  }
}

async function run([command, ...rest]: readonly string[]): Promise<Printed> {
  if (command === undefined) return err(cli.noCommand);
  const extra = rest[['score', 'plan', 'options', 'rental', 'appraise', 'check'].includes(command) ? 1 : 0];
  const result = await printed(command, rest);
  return extra !== undefined && result.ok ? err(cli.extra(command, extra)) : result;
}

/** Whoever reads what we print may have had enough (`sagline demo | head -1`), which is no error; a full disk is. */
function notWritten(error: NodeJS.ErrnoException): never {
  if (error.code === 'EPIPE') exit(exitCodes.done);
  stderr.write(`${cli.error(cli.notWritten)}\n`);
  exit(exitCodes.bug);
}

stdout.on('error', notWritten);
stderr.on('error', () => exit(exitCodes.badInput));

try {
  const result = await run(argv.slice(2));
  if (result.ok) stdout.write(result.value);
  else stderr.write(`${cli.error(result.error)}\n`);
  if (!result.ok) process.exitCode = exitCodes.badInput;
} catch (error) {
  stderr.write(`${cli.error(cli.bug(String(error)))}\n`);
  process.exitCode = exitCodes.bug;
}
