import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  compareBytewise,
  counterOf,
  counterSchema,
  deviceIdOf,
  deviceIdSchema,
  deviceOf,
  furthestAhead,
  highestCounter,
  makeStamp,
  observeStamps,
  parseStamp,
} from '../../src/core/stamp.ts';

const devices = fc.uint8Array({ minLength: 8, maxLength: 8 }).map(deviceIdOf);
const counters = fc.integer({ min: 1, max: highestCounter });
const device = deviceIdOf(new Uint8Array([0, 1, 2, 0xfd, 0xfe, 0xff, 16, 15]));

describe('stamps', () => {
  test('[M1] a stamp is 12 hex digits of the counter, a hyphen and the device', () => {
    expect(device).toBe('000102fdfeff100f');
    expect(makeStamp(1, device)).toBe('000000000001-000102fdfeff100f');
    expect(makeStamp(highestCounter, device)).toBe('ffffffffffff-000102fdfeff100f');
    expect(highestCounter).toBe(281_474_976_710_655);
  });

  test('[M1] a stamp gives back its counter and its device', () => {
    fc.assert(
      fc.property(counters, devices, (counter, of) => {
        const stamp = makeStamp(counter, of);
        expect([counterOf(stamp), deviceOf(stamp)]).toEqual([counter, of]);
        expect(parseStamp(stamp)).toBe(stamp);
      }),
    );
  });

  test('[M2] bytewise order is the order of counters, then of devices', () => {
    fc.assert(
      fc.property(counters, counters, devices, devices, (a, b, first, second) => {
        const order = compareBytewise(makeStamp(a, first), makeStamp(b, second));
        const wanted = a === b ? (first === second ? 0 : first < second ? -1 : 1) : a < b ? -1 : 1;
        expect(order).toBe(wanted);
        const bytes = Buffer.compare(Buffer.from(makeStamp(a, first)), Buffer.from(makeStamp(b, second)));
        expect(order).toBe(bytes);
      }),
    );
  });

  test('[M1] counters that no stamp can hold are a bug', () => {
    for (const counter of [0, -1, 1.5, Number.NaN, highestCounter + 1]) {
      expect(() => makeStamp(counter, device)).toThrow('a stamp counts from 1');
    }
    for (const length of [0, 7, 9]) {
      expect(() => deviceIdOf(new Uint8Array(length))).toThrow('a device id takes 8 random bytes');
    }
  });

  test('[M1] what is no stamp is refused', () => {
    const texts = [
      '',
      'x',
      '00000000001-000102fdfeff100f',
      '0000000000001-000102fdfeff100f',
      '00000000000A-000102fdfeff100f',
      '000000000001_000102fdfeff100f',
      '000000000001-000102fdfeff100',
      '000000000001-000102fdfeff100f0',
      ' 000000000001-000102fdfeff100f',
      '000000000001-000102fdfeff100f\n',
    ];
    expect(texts.map(parseStamp)).toEqual(texts.map(() => undefined));
    expect(deviceIdSchema.safeParse('000102fdfeff100').success).toBe(false);
    expect(deviceIdSchema.safeParse('g00102fdfeff100f').success).toBe(false);
    expect(deviceIdSchema.safeParse('0000102fdfeff100f').success).toBe(false);
    expect([0, highestCounter].every((counter) => counterSchema.safeParse(counter).success)).toBe(true);
    expect([-1, 0.5, highestCounter + 1].some((counter) => counterSchema.safeParse(counter).success)).toBe(
      false,
    );
  });

  test('[M3] a counter rises to the highest seen and never falls', () => {
    fc.assert(
      fc.property(counters, fc.array(fc.integer({ min: -1000, max: furthestAhead })), (counter, steps) => {
        const seen = steps.map((step) => Math.min(highestCounter, Math.max(1, counter + step)));
        const stamps = seen.map((one) => makeStamp(one, device));
        expect(observeStamps(counter, stamps)).toEqual({ ok: true, value: Math.max(counter, ...seen) });
      }),
    );
    expect(observeStamps(7, [])).toEqual({ ok: true, value: 7 });
  });

  test('[M3] a stamp more than a million ahead is refused by name', () => {
    const just = makeStamp(5 + 1_000_000, device);
    const over = makeStamp(5 + 1_000_001, device);
    expect(observeStamps(5, [just])).toEqual({ ok: true, value: 1_000_005 });
    expect(observeStamps(5, [just, over])).toEqual({ ok: false, error: over });
    expect(observeStamps(5, [over], 1_000_001)).toEqual({ ok: true, value: 1_000_006 });
  });
});
