import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { existsSync } from 'node:fs';
import { createServer, type AddressInfo } from 'node:net';

const browser = '/usr/lib/x86_64-linux-gnu/webkit2gtk-4.1/MiniBrowser';

/** Whether WebKitGTK can be driven on this machine (Debian: webkit2gtk-driver and xvfb). */
export const hasWebKit =
  existsSync(browser) &&
  ['xvfb-run', 'WebKitWebDriver'].every((program) => spawnSync('which', [program]).status === 0);

/** A page in WebKitGTK, in a private session as automation has it. */
export interface WebKitPage {
  goto(url: string): Promise<unknown>;
  /** Runs an expression in the page and awaits its value. */
  run(expression: string): Promise<unknown>;
  /** Gives a file to a file input. */
  choose(selector: string, path: string): Promise<unknown>;
  close(): Promise<void>;
}

/** Starts the engine of iPhones as far as a desk machine has it, by the W3C WebDriver protocol. */
export async function startWebKit(): Promise<WebKitPage> {
  const port = await freePort();
  const driver = spawn('xvfb-run', ['-a', 'WebKitWebDriver', `--port=${port}`], {
    stdio: 'ignore',
    detached: true,
  });
  const base = `http://127.0.0.1:${port}`;
  await untilReady(`${base}/status`);
  const options = {
    alwaysMatch: { 'webkitgtk:browserOptions': { binary: browser, args: ['--automation'] } },
  };
  const { sessionId } = (await call(`${base}/session`, { capabilities: options })) as { sessionId: string };
  const session = `${base}/session/${sessionId}`;
  await call(`${session}/timeouts`, { script: 120_000, pageLoad: 30_000 });
  return {
    goto: (url) => call(`${session}/url`, { url }),
    run: async (expression) => {
      const script = `const done = arguments[0]; (async () => (${expression}))().then((value) => done({ value }), (error) => done({ error: String(error) }));`;
      const answer = (await call(`${session}/execute/async`, { script, args: [] })) as {
        value?: unknown;
        error?: string;
      };
      if (answer.error !== undefined) throw new Error(answer.error);
      return answer.value;
    },
    choose: async (selector, path) => {
      const found = await call(`${session}/element`, { using: 'css selector', value: selector });
      const [id] = Object.values(found as Record<string, string>);
      return call(`${session}/element/${id}/value`, { text: path });
    },
    close: async () => {
      await fetch(session, { method: 'DELETE' }).catch(() => undefined);
      // xvfb-run and what it started are one group.
      if (driver.pid !== undefined) process.kill(-driver.pid, 'SIGTERM');
    },
  };
}

async function call(url: string, body: object): Promise<unknown> {
  const headers = { 'content-type': 'application/json' };
  const answer = await fetch(url, { method: 'POST', headers, body: JSON.stringify(body) });
  const { value } = (await answer.json()) as { value: unknown };
  if (!answer.ok) throw new Error(`${url}: ${JSON.stringify(value)}`);
  return value;
}

async function untilReady(url: string): Promise<void> {
  for (let tries = 0; ; tries += 1) {
    const ready = await fetch(url).then(
      ({ ok }) => ok,
      () => false,
    );
    if (ready) return;
    if (tries > 100) throw new Error('WebKitWebDriver does not answer');
    await new Promise((go) => setTimeout(go, 100));
  }
}

async function freePort(): Promise<number> {
  const server = createServer().listen(0, '127.0.0.1');
  await once(server, 'listening');
  const { port } = server.address() as AddressInfo;
  server.close();
  await once(server, 'close');
  return port;
}
