import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import { canonicalJson } from '../../src/core/canonical-json.ts';
import type { SealPayload } from '../../src/core/seal-payload.ts';
import { makeDeviceKey, type DeviceKey } from '../../src/seal/device-key.ts';
import { isSignedBy, signJws } from '../../src/seal/jws.ts';
import { makeSeal, readSeal } from '../../src/seal/seals.ts';
import { smaller } from '../../src/seal/signature.ts';
import { good, walkPayload } from './sealed-walk.ts';

let [own, other] = [{} as DeviceKey, {} as DeviceKey];
let payload: SealPayload;
let jws: string;

const alphabet = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_';

beforeAll(async () => {
  [own, other] = [await makeDeviceKey(), await makeDeviceKey()];
  payload = await walkPayload();
  jws = good(await makeSeal(payload, own));
});

describe('a change inside the seal', () => {
  test('[SE12] of any single character is refused: the seal itself was altered', async () => {
    for (let place = 0; place < jws.length; place += 1) {
      const next = alphabet[(alphabet.indexOf(jws[place] ?? '') + 1) % 64] ?? 'A';
      const changed = jws.slice(0, place) + next + jws.slice(place + 1);
      expect(await readSeal(changed), `character ${place}`).toEqual({
        ok: false,
        error: { kind: 'altered' },
      });
    }
  });

  test('[SE12] bits that no byte needs, at the end of a part, are refused', async () => {
    const parts = jws.split('.');
    for (const [at, part] of parts.entries()) {
      for (const last of alphabet) {
        if (part.endsWith(last)) continue;
        const changed = parts.with(at, part.slice(0, -1) + last).join('.');
        expect(await readSeal(changed), changed.slice(-5)).toEqual({ ok: false, error: { kind: 'altered' } });
      }
    }
  });

  // For every r and s, r and n - s is a signature as well; n is the order of P-256 (FIPS 186-4, D.1.2.3).
  test('[SE19] the other signature that anybody can reckon from the first is refused', async () => {
    const n = 0xffffffff00000000ffffffffffffffffbce6faada7179e84f3b9cac2fc632551n;
    for (let time = 0; time < 20; time += 1) {
      const text = await signJws(canonicalJson(payload), own);
      expect(await readSeal(text)).toMatchObject({ ok: true });
      const at = text.lastIndexOf('.');
      const hex = Buffer.from(text.slice(at + 1), 'base64url').toString('hex');
      const s = (n - BigInt(`0x${hex.slice(64)}`)).toString(16).padStart(64, '0');
      const twin = `${text.slice(0, at)}.${Buffer.from(hex.slice(0, 64) + s, 'hex').toString('base64url')}`;
      expect(await isSignedBy(twin, good(await readSeal(text)).jwk)).toBe(true);
      expect(await readSeal(twin)).toEqual({ ok: false, error: { kind: 'altered' } });
    }
  });

  test('[SE12] cut or lengthened anywhere it is refused', async () => {
    await fc.assert(
      fc.asyncProperty(fc.nat(jws.length - 1), fc.stringMatching(/^[\w.=-]{0,3}$/), async (place, text) => {
        if (text === jws[place]) return;
        expect((await readSeal(jws.slice(0, place) + text + jws.slice(place + 1))).ok).toBe(false);
      }),
    );
  });

  test('[SE12] no text makes it throw', async () => {
    await fc.assert(
      fc.asyncProperty(fc.string({ unit: 'binary' }), async (text) => {
        expect((await readSeal(text)).ok).toBe(false);
      }),
    );
  });

  const forged = async (header: object): Promise<string> => {
    const [, body] = jws.split('.');
    const input = `${Buffer.from(canonicalJson(header)).toString('base64url')}.${body}`;
    const made = await crypto.subtle.sign(
      { name: 'ECDSA', hash: 'SHA-256' },
      own.privateKey,
      new TextEncoder().encode(input),
    );
    return `${input}.${Buffer.from(smaller(new Uint8Array(made))).toString('base64url')}`;
  };
  const headerNow = (): Record<string, unknown> =>
    JSON.parse(Buffer.from(jws.split('.')[0] ?? '', 'base64url').toString()) as Record<string, unknown>;

  test.each([
    ['no algorithm', { alg: 'none' }],
    ['a shared secret', { alg: 'HS256' }],
    ['an extension', { crit: ['exp'], exp: 1 }],
    ['a key to be fetched', { jku: 'https://keys.example' }],
    ['another type', { typ: 'JWT' }],
  ])('[SE13] a header with %s is refused, well signed though it is', async (_, more) => {
    expect(await readSeal(await forged({ ...headerNow() }))).toMatchObject({ ok: true });
    expect((await readSeal(await forged({ ...headerNow(), ...more }))).ok).toBe(false);
  });

  test('[SE13] a private key in the header is refused', async () => {
    const header = headerNow();
    const withPrivate = { ...header, jwk: { ...(header['jwk'] as object), d: 'A'.repeat(43) } };
    expect((await readSeal(await forged(withPrivate))).ok).toBe(false);
  });

  test('[SE13] a key that is written in another way is refused', async () => {
    const header = headerNow();
    const jwk = header['jwk'] as Record<string, string>;
    const x = jwk['x'] ?? '';
    const spare = alphabet[alphabet.indexOf(x.at(-1) ?? '') ^ 1] ?? '';
    const twice = { ...header, jwk: { ...jwk, x: x.slice(0, -1) + spare } };
    expect(await readSeal(await forged(twice))).toEqual({ ok: false, error: { kind: 'altered' } });
  });

  test('[SE14] the same payload under another key is an other signer', async () => {
    const [mine, theirs] = [
      good(await readSeal(jws)),
      good(await readSeal(good(await makeSeal(payload, other)))),
    ];
    expect(theirs.payload).toEqual(mine.payload);
    expect(theirs.fingerprint).not.toBe(mine.fingerprint);
    expect(theirs.hash).not.toBe(mine.hash);
  });

  test('[SE15] what is signed but no seal is unreadable, not altered', async () => {
    const texts = ['{}', 'nothing', `${canonicalJson(payload)} `, canonicalJson({ ...payload, version: 2 })];
    for (const text of texts)
      expect(await readSeal(await signJws(text, own))).toEqual({ ok: false, error: { kind: 'unreadable' } });
  });
});
