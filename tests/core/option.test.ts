import { describe, expect, test } from 'vitest';
import { machineSchema } from '../../src/core/machine.ts';
import { optionSchema } from '../../src/core/option.ts';
import { machineOf } from './made.ts';
import { optionOf, priced } from './options-made.ts';

const isOption = (value: unknown): boolean => optionSchema.safeParse(value).success;
const full = optionOf('rubber-cored', {
  ...priced(120_000),
  machine: 'machine/digger',
  origin: 'aftermarket',
  make: 'made up',
  fittingHours: 2.5,
  life: { hours: 1300, lowHours: 900, highHours: 1900, source: { mark: 'entered', text: 'the seller' } },
  warranty: {
    months: 18,
    steps: [
      { toHours: 375, percent: 100 },
      { toHours: 1500, percent: 25 },
    ],
  },
  massKg: { value: 210, how: 'measured' },
  fit: {
    widthMm: { value: 300, how: 'read' },
    pitchMm: { value: 52.5, how: 'measured' },
    links: { value: 84, how: 'read' },
    guide: { value: 'centre', how: 'assumed' },
    rollersOn: { value: 'core', how: 'read' },
    sprocketTeeth: { value: 21, how: 'read' },
    offsetMm: { value: -12, how: 'measured' },
    moulding: { value: '300x52.5Wx84 K', how: 'read' },
  },
});

describe('[N11] the record of an option', () => {
  test('[OP94] a name and a kind of track are enough, and all else may be there', () => {
    expect(isOption(optionOf('steel'))).toBe(true);
    expect(isOption(full)).toBe(true);
  });

  test('[OP95] a field of a later build stays', () => {
    const later = { ...full, colour: 'black', fit: { ...full.fit, hollow: { value: true, how: 'read' } } };
    expect(optionSchema.parse(later)).toEqual(later);
  });

  test.each<[string, object]>([
    ['an unknown kind of track', { track: 'wood' }],
    ['a price that is no whole number of minor units', { price: { minor: 1.5, currency: 'EUR' } }],
    ['a price below nothing', { price: { minor: -1, currency: 'EUR' } }],
    ['a price without a currency', { price: { minor: 1 } }],
    ['a life of no hours', { life: { hours: 0 } }],
    ['a size that nobody says where it is from', { fit: { widthMm: { value: 300 } } }],
    ['a size of nothing', { fit: { widthMm: { value: 0, how: 'read' } } }],
    ['half a link', { fit: { links: { value: 83.5, how: 'read' } } }],
    [
      'a warranty whose steps go back',
      {
        warranty: {
          steps: [
            { toHours: 500, percent: 100 },
            { toHours: 400, percent: 50 },
          ],
        },
      },
    ],
    ['a warranty of more than the price', { warranty: { steps: [{ toHours: 500, percent: 101 }] } }],
  ])('[OP96] %s is refused', (_, fields) => {
    expect(isOption({ ...full, ...fields })).toBe(false);
  });

  test.each<[string, object, boolean]>([
    ['grounds in shares', { ground: { rock: 20, mixed: 80 }, turning: 'much', hoursAYear: 700 }, true],
    ['own figures', { own: { steelLife: 3, ratePercent: 0 } }, true],
    ['a field of a later build', { weather: 'wet' }, true],
    ['a ground that there is not', { ground: { swamp: 20 } }, false],
    ['a share below nothing', { ground: { rock: -1 } }, false],
    ['more hours than a year has', { hoursAYear: 9000 }, false],
    ['an own figure below nothing', { own: { steelLife: -1 } }, false],
  ])('[OP97] the use of a machine with %s: %o, %s', (_, use, isFine) => {
    expect(machineSchema.safeParse({ ...machineOf('steel'), use }).success).toBe(isFine);
  });
});
