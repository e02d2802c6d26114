import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import type { FastifyInstance } from 'fastify';
import { createHash } from 'node:crypto';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { createServer } from '../../src/server/server.ts';
import { filesUnder } from '../walls/source-tree.ts';

const root = join(import.meta.dirname, '../..');
const dist = join(root, 'dist');

type Entry = { readonly url: string; readonly revision: string | null; readonly integrity: string };

/** Addresses that stand in the built files without ever being fetched: names of vocabularies, help in messages. */
const neverFetched = [
  /^https?:\/\/www\.w3\.org\//,
  /^https:\/\/json-schema\.org\//,
  // Vocabularies of what a PDF says of itself.
  /^http:\/\/purl\.org\/dc\/elements\/1\.1\/$/,
  /^http:\/\/ns\.adobe\.com\/xap\/1\.0\/$/,
  /^https:\/\/bit\.ly\/wb-precache$/,
  /^https:\/\/github\.com\/preactjs\/preact-iso$/,
];

function addressesIn(text: string): string[] {
  return [...text.matchAll(/https?:\/\/[\w.-]+(?:\/[\w./-]*)?/g)]
    .map(([address]) => address)
    .filter((address) => !neverFetched.some((known) => known.test(address)));
}

function precacheList(worker: string): Entry[] {
  const list = /\[\{[^[\]]*"integrity"[^[\]]*\}\]/.exec(worker)?.[0];
  return list === undefined ? [] : (JSON.parse(list) as Entry[]);
}

describe('the built files', () => {
  const texts = filesUnder('dist').filter((path) => /\.(?:html|js|css|json|svg|webmanifest)$/.test(path));

  test.each(texts)('[B4] %s names no foreign address', (path) => {
    expect(addressesIn(readFileSync(join(root, path), 'utf8'))).toEqual([]);
  });

  test('[B4] a foreign address is found', () => {
    expect(addressesIn("fetch('https://cdn.example/a.js')")).toEqual(['https://cdn.example/a.js']);
  });

  test('[B5] index.html has no script or style inside it', () => {
    const page = readFileSync(join(dist, 'index.html'), 'utf8');
    expect(page).not.toMatch(/<script(?![^>]*\ssrc=)|<style|\sstyle=|\son\w+=/);
    expect(page).not.toMatch(/%\w+%/);
  });
});

describe('the precache list', () => {
  const entries = precacheList(readFileSync(join(dist, 'sw.js'), 'utf8'));
  let app: FastifyInstance;

  beforeAll(async () => {
    app = await createServer({ appDir: dist });
  });
  afterAll(() => app.close());

  test('[B6] it holds page, repair script, styles, scripts, manifest and icons', () => {
    const urls = entries.map(({ url }) => url);
    expect(urls).toEqual(
      expect.arrayContaining([
        '/index.html',
        '/boot.js',
        '/manifest.webmanifest',
        '/icon-192.png',
        '/licenses.txt',
        '/schema/walk-file.json',
      ]),
    );
    const built = filesUnder('dist/assets').filter((path) => !/\.(?:br|gz)$/.test(path));
    expect(built.length).toBeGreaterThan(1);
    expect(urls).toEqual(expect.arrayContaining(built.map((path) => path.slice('dist'.length))));
  });

  test('[B6] a name without a hash has a revision', () => {
    const loose = entries.filter(({ url, revision }) => !url.startsWith('/assets/') && !revision);
    expect(loose).toEqual([]);
  });

  test.each(entries)(
    '[B7] $url is there, not redirected, of its type, and byte for byte the one listed',
    async ({ url, integrity }) => {
      const answer = await app.inject({ url });
      expect(answer.statusCode).toBe(200);
      expect(answer.headers['content-type']).toMatch(typeOf(url));
      expect(`sha384-${createHash('sha384').update(answer.rawPayload).digest('base64')}`).toBe(integrity);
    },
  );

  test('[B7] together they stay under 1.7 MB', () => {
    const sizes = entries.map(({ url }) => readFileSync(join(dist, url)).length);
    expect(sizes.reduce((sum, size) => sum + size, 0)).toBeLessThan(1_700_000);
  });
});

test('[HO17] the published schema of our files is the one that the command line prints', () => {
  const published = readFileSync(join(dist, 'schema/walk-file.json'), 'utf8');
  const printed = execFileSync(process.execPath, [join(root, 'build/cli.js'), 'schema'], {
    encoding: 'utf8',
  });
  const schema: unknown = JSON.parse(published);
  expect(schema).toEqual(JSON.parse(printed));
  const { $defs } = schema as { $defs: Record<string, object> };
  expect(Object.keys($defs)).toEqual(expect.arrayContaining(['walk', 'reading', 'photo', 'person']));
});

test('[B8] the command line runs from a checkout', () => {
  const program = join(root, 'build/cli.js');
  expect(existsSync(program)).toBe(true);
  expect(readFileSync(program, 'utf8')).toMatch(/^#!\/usr\/bin\/env node\n/);
});

function typeOf(url: string): RegExp {
  const types: Record<string, RegExp> = {
    html: /^text\/html/,
    js: /javascript/,
    css: /^text\/css/,
    json: /^application\/json/,
    txt: /^text\/plain/,
    svg: /^image\/svg\+xml/,
    ttf: /^font\/ttf/,
    png: /^image\/png/,
    webmanifest: /^application\/manifest\+json/,
  };
  return types[url.split('.').at(-1) ?? ''] ?? /^$/;
}
