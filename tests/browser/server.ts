import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** The built server in a process of its own, so that a test can take the network away by ending it. */
export type Origin = {
  readonly url: string;
  /** Ends the server; nothing answers until `start`. */
  stop(): Promise<void>;
  /** Serves again at the same address, from another built app if one is given. */
  start(appDir?: string): Promise<void>;
};

const program = join(import.meta.dirname, '../../build/server.js');

/** Starts the built server on a free port, with an empty data folder that goes with `close`. */
export async function startOrigin(): Promise<Origin & { close(): Promise<void> }> {
  const dataDir = await mkdtemp(join(tmpdir(), 'sagline-data-'));
  let running = await serve(0, dataDir);
  const { url } = running;
  const stop = async (): Promise<void> => {
    if (running.child.exitCode !== null || running.child.signalCode !== null) return;
    running.child.kill('SIGTERM');
    await once(running.child, 'exit');
  };
  const start = async (appDir?: string): Promise<void> => {
    await stop();
    running = await serve(Number(new URL(url).port), dataDir, appDir);
  };
  const close = async (): Promise<void> => {
    await stop();
    await rm(dataDir, { recursive: true });
  };
  return { url, stop, start, close };
}

async function serve(
  port: number,
  dataDir: string,
  appDir?: string,
): Promise<{ url: string; child: ChildProcess }> {
  const child = spawn(process.execPath, [program], {
    env: { ...process.env, HOST: '127.0.0.1', PORT: String(port), DATA_DIR: dataDir, APP_DIR: appDir },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const url = await new Promise<string>((resolve, reject) => {
    let said = '';
    child.stdout.on('data', (chunk: Buffer) => {
      said += chunk.toString();
      const address = /http:\/\/\S+/.exec(said)?.[0];
      if (address !== undefined) resolve(address);
    });
    child.once('exit', (code) => reject(new Error(`the server ended with ${code}: ${said}`)));
  });
  return { url, child };
}
