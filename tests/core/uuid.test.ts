import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { idSchema } from '../../src/core/keys.ts';
import { uuidV7 } from '../../src/core/uuid.ts';

const tenBytes = fc.uint8Array({ minLength: 10, maxLength: 10 });
const moments = fc.integer({ min: 0, max: 2 ** 48 - 1 });

describe('uuid', () => {
  test('[M4] the example of RFC 9562, appendix A.6, comes out', () => {
    // 017F22E2-79B0-7CC3-98C4-DC0C0C07398F: rand_a CC3, rand_b 18C4DC0C0C07398F in its low 62 bits.
    const random = Uint8Array.of(0x0c, 0xc3, 0x18, 0xc4, 0xdc, 0x0c, 0x0c, 0x07, 0x39, 0x8f);
    expect(uuidV7(0x017f22e279b0, random)).toBe('017f22e2-79b0-7cc3-98c4-dc0c0c07398f');
  });

  test('[M4] version and variant bits stand whatever the random bytes are', () => {
    fc.assert(
      fc.property(moments, tenBytes, (nowMs, random) => {
        const id = uuidV7(nowMs, random);
        expect(id).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
        expect(idSchema.safeParse(id).success).toBe(true);
        expect(Number.parseInt(id.slice(0, 8) + id.slice(9, 13), 16)).toBe(nowMs);
      }),
    );
  });

  test('[M4] a later millisecond sorts later', () => {
    fc.assert(
      fc.property(moments, moments, tenBytes, tenBytes, (a, b, first, second) => {
        fc.pre(a < b);
        expect(uuidV7(a, first) < uuidV7(b, second)).toBe(true);
      }),
    );
  });

  test('[M4] every random bit but the six fixed ones is kept', () => {
    const ones = uuidV7(0, new Uint8Array(10).fill(0xff));
    expect(ones).toBe('00000000-0000-7fff-bfff-ffffffffffff');
    expect(uuidV7(0, new Uint8Array(10))).toBe('00000000-0000-7000-8000-000000000000');
    const whole = new Uint8Array(30).fill(0xff, 10, 20);
    expect(uuidV7(0, whole.subarray(10, 20))).toBe(ones);
  });

  test('[M4] a time that is none or too few bytes are a bug', () => {
    for (const nowMs of [-1, 0.5, Number.NaN, 2 ** 48]) {
      expect(() => uuidV7(nowMs, new Uint8Array(10))).toThrow('time is whole milliseconds since 1970');
    }
    for (const length of [9, 11]) {
      expect(() => uuidV7(0, new Uint8Array(length))).toThrow('a UUIDv7 takes 10 random bytes');
    }
  });
});
