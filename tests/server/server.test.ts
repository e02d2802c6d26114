import type { FastifyInstance } from 'fastify';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { securityHeaders } from '../../src/server/security-headers.ts';
import { createServer } from '../../src/server/server.ts';

const page = '<!doctype html><p>the page</p>';
let appDir: string;
let app: FastifyInstance;

beforeAll(async () => {
  appDir = mkdtempSync(join(tmpdir(), 'sagline-server-'));
  mkdirSync(join(appDir, 'assets'));
  mkdirSync(join(appDir, '.vite'));
  writeFileSync(join(appDir, 'index.html'), page);
  writeFileSync(join(appDir, 'sw.js'), '// worker');
  writeFileSync(join(appDir, 'robots.txt'), 'User-agent: *');
  writeFileSync(join(appDir, 'assets/app-12345678.js'), '// plain');
  writeFileSync(join(appDir, 'assets/app-12345678.js.br'), 'brotli bytes');
  writeFileSync(join(appDir, '.vite/manifest.json'), '{}');
  writeFileSync(join(appDir, '../sagline-outside.txt'), 'outside');
  app = await createServer({ appDir });
});

afterAll(async () => {
  await app.close();
  rmSync(appDir, { recursive: true });
  rmSync(join(tmpdir(), 'sagline-outside.txt'));
});

const get = (url: string, headers: Record<string, string> = {}) => app.inject({ url, headers });

describe('screens', () => {
  test.each([
    '/',
    '/?from=home',
    '/machine/0190f1f0-aaaa-7bbb-8ccc-0123456789ab',
    '/machine/demo/1?tab=walks',
    '/walk/0190f1f0/stop/3',
    '/sheets',
    '/sheets/1',
    '/rules/1/edit',
    '/settings',
    '/about?x=1',
    '/demo',
    '/inbox?lost',
    '/check',
    '/hauling',
  ])('[SV1] %s is answered with the page', async (url) => {
    const answer = await get(url);
    expect([answer.statusCode, answer.body]).toEqual([200, page]);
    expect(answer.headers['content-type']).toBe('text/html; charset=utf-8');
    expect(answer.headers['cache-control']).toBe('no-cache, no-transform');
  });

  test.each([
    '/assets/nope.js',
    '/assets/app-00000000.js?x=/settings',
    '/nope',
    '/settings.json',
    '/settingsx',
    '/walk',
    '/walk/report.pdf',
    '/api/walk/1',
    '/files/1',
    '/auth/callback?next=/settings',
    '/.well-known/x',
    '/.vite/manifest.json',
    '/../sagline-outside.txt',
    '/%2e%2e/sagline-outside.txt',
    '/..%2fsagline-outside.txt',
    '/assets/',
  ])('[SV2] %s is a 404 in plain text', async (url) => {
    const answer = await get(url);
    expect([answer.statusCode, answer.headers['content-type']]).toEqual([404, 'text/plain; charset=utf-8']);
    expect(answer.body).not.toContain('<');
    expect(answer.body).not.toContain('outside');
  });

  test('[HA1] files shared before the worker is there lead to the page that says so', async () => {
    const answer = await app.inject({
      url: '/inbox',
      method: 'POST',
      headers: { 'content-type': 'multipart/form-data; boundary=x' },
      payload: 'x'.repeat(1_000_000),
    });
    expect([answer.statusCode, answer.headers.location]).toEqual([303, '/inbox?lost']);
  });

  test.each(['POST', 'PUT', 'DELETE'] as const)('[SV2] %s to a screen is a 404', async (method) => {
    expect((await app.inject({ url: '/settings', method })).statusCode).toBe(404);
  });
});

describe('files', () => {
  test('[SV3] hashed names may be kept for ever', async () => {
    const answer = await get('/assets/app-12345678.js');
    expect(answer.statusCode).toBe(200);
    expect(answer.headers['cache-control']).toBe('public, max-age=31536000, immutable, no-transform');
  });

  test.each(['/sw.js', '/index.html', '/robots.txt'])(
    '[SV3] %s is asked for anew every time',
    async (url) => {
      const answer = await get(url);
      expect([answer.statusCode, answer.headers['cache-control']]).toEqual([200, 'no-cache, no-transform']);
    },
  );

  test('[SV4] a browser that reads brotli is sent the file packed beforehand', async () => {
    const packed = await get('/assets/app-12345678.js', { 'accept-encoding': 'gzip, br' });
    expect([packed.headers['content-encoding'], packed.body]).toEqual(['br', 'brotli bytes']);
    expect(packed.headers['content-type']).toContain('javascript');
    expect(packed.headers['cache-control']).toContain('immutable');
    expect(packed.headers['vary']).toBe('accept-encoding');
    expect((await get('/assets/app-12345678.js')).body).toBe('// plain');
  });

  test('[SV5] /healthz answers while the server lives', async () => {
    const answer = await get('/healthz');
    expect([answer.statusCode, answer.body, answer.headers['cache-control']]).toEqual([
      200,
      'ok\n',
      'no-store',
    ]);
  });
});

describe('headers', () => {
  test.each(['/', '/sw.js', '/assets/app-12345678.js', '/assets/nope.js', '/healthz', '/%zz'])(
    '[SV6] %s carries every security header',
    async (url) => {
      const { headers } = await get(url);
      expect(headers).toMatchObject(securityHeaders(false));
      expect(headers['x-content-type-options']).toBe('nosniff');
      expect(headers['referrer-policy']).toBe('no-referrer');
      expect(headers['cross-origin-opener-policy']).toBe('same-origin');
    },
  );

  test('[SV6] the policy allows our own origin alone, and no text as code', () => {
    const policy = securityHeaders(false)['content-security-policy'];
    expect(policy?.split('; ')).toEqual(
      expect.arrayContaining([
        "default-src 'self'",
        "base-uri 'none'",
        "form-action 'self'",
        "frame-ancestors 'none'",
        "object-src 'none'",
        "require-trusted-types-for 'script'",
      ]),
    );
    // Pictures alone may come out of memory; no script, style or worker may.
    expect(policy?.split('; ')).toContain("img-src 'self' blob:");
    expect(policy?.replace("img-src 'self' blob:", '')).not.toMatch(/unsafe|https?:|\*|data:|blob:/);
    expect(policy).toMatch(/trusted-types sagline-worker sagline-photo-worker$/);
  });

  test('[SV7] HTTPS is demanded for the future only over HTTPS', () => {
    expect(securityHeaders(true)['strict-transport-security']).toBe('max-age=31536000');
    expect(securityHeaders(false)).not.toHaveProperty('strict-transport-security');
  });
});

describe('faults', () => {
  test('[SV8] an address that cannot be read is the sender’s fault and is not echoed', async () => {
    const answer = await get('/%zz<script>');
    expect(answer.statusCode).toBe(400);
    expect(answer.body).not.toContain('script');
  });

  test('[SV8] a body over the limit is refused', async () => {
    const answer = await app.inject({
      url: '/settings',
      method: 'POST',
      payload: 'x'.repeat(20_000),
      headers: { 'content-type': 'text/plain' },
    });
    expect([answer.statusCode, answer.headers['content-type']]).toEqual([413, 'text/plain; charset=utf-8']);
  });
});
