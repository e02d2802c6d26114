import { once } from 'node:events';
import { createServer, type RequestListener } from 'node:http';
import type { AddressInfo } from 'node:net';

/** A small origin of a test's own. */
export interface LocalOrigin {
  readonly url: string;
  close(): Promise<void>;
}

/** Serves on a free port until it is closed. */
export async function serveLocally(answer: RequestListener): Promise<LocalOrigin> {
  const server = createServer(answer);
  server.listen(0, '127.0.0.1');
  await once(server, 'listening');
  const close = async (): Promise<void> => {
    server.closeAllConnections();
    server.close();
    await once(server, 'close');
  };
  return { url: `http://localhost:${(server.address() as AddressInfo).port}/`, close };
}
