import { join, resolve, sep } from 'node:path';
import fastifyStatic from '@fastify/static';
import fastify, { type FastifyError, type FastifyInstance, type FastifyReply } from 'fastify';
import { isAppRoute } from '../protocol/app-routes.ts';
import { inboxPath } from '../protocol/inbox.ts';
import { shellWords } from '../words/shell.ts';
import { securityHeaders } from './security-headers.ts';

/** What a server needs: the folder of the built app, and certificate and key where it speaks TLS itself. */
export type ServerParts = {
  readonly appDir: string;
  readonly tls?: { readonly cert: Buffer; readonly key: Buffer };
};

/** The HTTP server, not yet listening. */
export async function createServer({ appDir, tls }: ServerParts): Promise<FastifyInstance> {
  const headers = securityHeaders(tls !== undefined);
  const options = {
    bodyLimit: 16 * 1024,
    requestTimeout: 30_000,
    forceCloseConnections: true,
    // An address that cannot be read comes past all hooks, and would be echoed.
    frameworkErrors: (_error: FastifyError, _request: unknown, reply: FastifyReply) =>
      void plain(reply.headers(headers), 400, shellWords.badRequest),
  };
  const app: FastifyInstance =
    tls === undefined ? fastify(options) : fastify({ ...options, https: tls } as typeof options);
  const root = resolve(appDir);
  const hashedFiles = join(root, 'assets', sep);
  app.addHook('onSend', async (_request, reply) => void reply.headers(headers));
  // Shared files are the worker's; where there is none yet, nothing of them is read, and the page says so.
  const openFirst = async (_request: unknown, reply: FastifyReply): Promise<FastifyReply> =>
    reply.redirect(`${inboxPath}?lost`, 303);
  app.post(inboxPath, { onRequest: openFirst }, openFirst);
  app.get('/healthz', async (_request, reply) => plain(reply, 200, 'ok'));
  await app.register(fastifyStatic, {
    root,
    dotfiles: 'ignore',
    preCompressed: true,
    cacheControl: false,
    setHeaders: (response, path) => {
      // Only hashed names may be kept for ever. A proxy that rewrites bytes would break the worker's integrity check.
      const hashed = path.startsWith(hashedFiles);
      response.setHeader(
        'cache-control',
        hashed ? 'public, max-age=31536000, immutable, no-transform' : 'no-cache, no-transform',
      );
      response.setHeader('vary', 'accept-encoding');
    },
  });
  answerTheRest(app);
  return app;
}

/** A missing file is a 404 in plain text: HTML in place of a chunk leaves a white screen. */
function answerTheRest(app: FastifyInstance): void {
  app.setNotFoundHandler(async (request, reply) => {
    const asksForPage = request.method === 'GET' || request.method === 'HEAD';
    if (asksForPage && isAppRoute(request.url)) return reply.sendFile('index.html');
    return plain(reply, 404, shellWords.notFound);
  });
  app.setErrorHandler(async (error: FastifyError, request, reply) => {
    const status = error.statusCode ?? 500;
    if (status < 500) return plain(reply, status, shellWords.badRequest);
    console.error(request.method, request.routeOptions.url, error);
    return plain(reply, 500, shellWords.serverFault);
  });
}

function plain(reply: FastifyReply, status: number, text: string): FastifyReply {
  return reply
    .code(status)
    .type('text/plain; charset=utf-8')
    .header('cache-control', 'no-store')
    .send(`${text}\n`);
}
