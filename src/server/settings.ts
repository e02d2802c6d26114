import { join } from 'node:path';
import { err, ok, type Result } from '../core/result.ts';
import { shellWords } from '../words/shell.ts';

/** How the server is to run, as its environment says. */
export type Settings = {
  readonly host: string;
  /** 0 lets the system choose a free port. */
  readonly port: number;
  readonly dataDir: string;
  readonly appDir: string;
  readonly tls: { readonly certPath: string; readonly keyPath: string } | undefined;
};

/** Reads the settings from `env`; `root` is the folder of the checkout; the error is a sentence. */
export function readSettings(
  env: Readonly<Record<string, string | undefined>>,
  root: string,
): Result<Settings, string> {
  const portText = env['PORT'] || '8080';
  const port = Number(portText);
  if (!/^\d{1,5}$/.test(portText) || port > 65535) return err(shellWords.badPort(portText));
  const certPath = env['TLS_CERT'] || undefined;
  const keyPath = env['TLS_KEY'] || undefined;
  if ((certPath === undefined) !== (keyPath === undefined)) return err(shellWords.halfTls);
  return ok({
    port,
    host: env['HOST'] || '127.0.0.1',
    dataDir: env['DATA_DIR'] || join(root, 'data'),
    appDir: env['APP_DIR'] || join(root, 'dist'),
    tls: certPath !== undefined && keyPath !== undefined ? { certPath, keyPath } : undefined,
  });
}
