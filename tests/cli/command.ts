import { build } from 'esbuild';
import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const root = new URL('../../', import.meta.url);
// Beside what `npm run build` makes, so that neither stands in the other's way.
const outfile = fileURLToPath(new URL(`build/cli-${process.pid}.js`, root));

/** Bundles the command line as the build does. */
export const bundleCommand = (): Promise<unknown> =>
  build({
    entryPoints: [fileURLToPath(new URL('src/cli/main.ts', root))],
    outfile,
    bundle: true,
    platform: 'node',
    format: 'esm',
    target: 'node20',
    logLevel: 'error',
  });

export const bundlePath = outfile;

export interface Ended {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/** Runs `sagline` with these arguments and this standard input, and waits for its end. */
export function sagline(args: readonly string[], input: string | Uint8Array = ''): Promise<Ended> {
  const child = spawn(process.execPath, [outfile, ...args]);
  const [out, err]: [Buffer[], Buffer[]] = [[], []];
  child.stdout.on('data', (chunk: Buffer) => out.push(chunk));
  child.stderr.on('data', (chunk: Buffer) => err.push(chunk));
  // A command that has read enough closes its end.
  child.stdin.on('error', () => undefined);
  child.stdin.end(input);
  return new Promise((resolve) => {
    child.on('close', (code) => {
      resolve({ code, out: Buffer.concat(out).toString(), err: Buffer.concat(err).toString() });
    });
  });
}
