import { accessSync, constants, existsSync, mkdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { shellWords } from '../words/shell.ts';
import { createServer, type ServerParts } from './server.ts';
import { readSettings, type Settings } from './settings.ts';

/** Requests under way get this long when the server is told to stop. */
const graceMs = 5000;

const settings = readSettings(process.env, join(dirname(fileURLToPath(import.meta.url)), '..'));
if (settings.ok) await serve(settings.value);
else refuse(settings.error);

async function serve(wanted: Settings): Promise<void> {
  if (!existsSync(join(wanted.appDir, 'index.html'))) refuse(shellWords.notBuilt(wanted.appDir));
  makeDataDir(wanted.dataDir);
  const app = await createServer({ appDir: wanted.appDir, ...readTls(wanted) });
  for (const signal of ['SIGINT', 'SIGTERM'] as const) {
    process.once(signal, () => {
      setTimeout(() => process.exit(1), graceMs).unref();
      void app.close().then(() => process.exit(0));
    });
  }
  try {
    console.log(shellWords.serving(await app.listen({ host: wanted.host, port: wanted.port })));
  } catch {
    refuse(shellWords.cannotListen(`${wanted.host}:${wanted.port}`));
  }
}

function readTls({ tls }: Settings): Pick<ServerParts, 'tls'> {
  return tls === undefined
    ? {}
    : { tls: { cert: readOrRefuse(tls.certPath), key: readOrRefuse(tls.keyPath) } };
}

function readOrRefuse(path: string): Buffer {
  try {
    return readFileSync(path);
  } catch {
    return refuse(shellWords.unreadable(path));
  }
}

function makeDataDir(path: string): void {
  try {
    mkdirSync(path, { recursive: true });
    accessSync(path, constants.W_OK);
  } catch {
    refuse(shellWords.unwritable(path));
  }
}

function refuse(sentence: string): never {
  console.error(sentence);
  process.exit(2);
}
