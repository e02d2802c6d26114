import { describe, expect, test } from 'vitest';
import { leftOf } from '../../src/core/appraisal-parts.ts';
import { settingsOf } from '../../src/core/appraisal-settings.ts';
import { valueLeft } from '../../src/core/appraisal-value.ts';
import { workTo } from '../../src/core/appraisal-work.ts';
import { costsOf, foundOf } from '../core/appraisal-made.ts';
import { entryOf, machineOf, mm, read, sheetOf } from '../core/made.ts';

const settings = settingsOf({});
const spots = (place: string, item: string, size: number, count: number) =>
  Array.from({ length: count }, (_, n) => read(place, item, mm(size), { n: n + 1 }));

describe('[N10] value left by published sizes', () => {
  // CV-08 and CV-09: size page 56320 (link 105.5 → 96.5; bushing 60.70 → 51.6);
  // CV-11: Komatsu D39, four links 692.0 mm, pitch 171.5 → 174.5.
  const sheet = sheetOf([
    entryOf('link-height', 105.5, 96.5),
    entryOf('bushing-od', 60.7, 51.6),
    entryOf('pitch', 171.5, 174.5),
  ]);
  const side = (bushing: number) => [
    ...spots('left.track', 'link-height', 103.7, 2),
    ...spots('left.track', 'bushing-od', bushing, 2),
    read('left.track', 'pitch', { kind: 'pitch', totalMm: 692, typed: '692', unit: 'mm', links: 4 }),
  ];
  const costs = costsOf({ 'renew-chain': [800_000, 0] });
  const found = (bushing: number) =>
    foundOf({ machine: machineOf('steel', {}, 'dozer'), sheet, readings: side(bushing) }, costs);
  const worth = (bushing: number) =>
    valueLeft(
      found(bushing),
      settings,
      workTo(found(bushing), settings, () => false),
    ).lines[0];

  test('[CV-11] a chain with its pitch half gone is worth half its price, whatever its links (CV-08: 20 % worn) and bushings (CV-09: 36.26 %) still have', () => {
    const line = worth(57.4);
    expect(line?.worst.state.item.id).toBe('pitch');
    expect(line?.left.middle).toBeCloseTo(50, 6);
    expect(line?.minor.middle).toBe(400_000);
  });

  test('[CV-09] a bushing at 52.3 mm, 92.31 % worn, leaves it under a quarter and so worth nothing', () => {
    const line = worth(52.3);
    expect(line && leftOf(line.worst)).toBeCloseTo(100 - (100 * (60.7 - 52.3)) / (60.7 - 51.6), 6);
    expect(line?.minor.middle).toBe(0);
  });
});

describe('[N10] deduction by a published sum', () => {
  // CV-62: two tracks at 1,400 and 300 of labour; here with nothing to set up, since the sum names none.
  const base = costsOf({ 'renew-track': [140_000, 2.5] });
  const none = { minor: 0, source: { mark: 'entered' as const, text: '' } };
  const rates = base.rates && {
    ...base.rates,
    callOut: none,
    liftSide: none,
    trackOffSide: none,
  };

  test('[CV-62] two rubber tracks at their limit (CV-05: 5 mm left to 5) are deducted at 2 × 1,400 + 300 = 3,100', () => {
    const found = foundOf(
      {
        sheet: sheetOf([entryOf('lug-depth', 25, 5)]),
        readings: ['left', 'right'].flatMap((at) => spots(`${at}.track`, 'lug-depth', 5, 3)),
      },
      { ...base, rates },
    );
    const { minor, isWhole } = workTo(found, settings, (each) => (leftOf(each) ?? 100) < settings.saleable);
    expect([minor, isWhole]).toEqual([310_000, true]);
  });
});
