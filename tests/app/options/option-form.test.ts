import { describe, expect, test } from 'vitest';
import { optionSchema, type Option } from '../../../src/core/option.ts';
import { optionOf } from '../../../src/app/options/option-form.ts';
import { optionTexts, stepsShown, type OptionTexts } from '../../../src/app/options/option-texts.ts';

const mm = { length: 'mm', mass: 'kg' } as const;
const inches = { length: 'in', mass: 'lb' } as const;
const machine = 'machine/yard-3';

const least: Option = { v: 1, name: 'rubber', track: 'rubber-cored' };

const whole: Option = {
  v: 1,
  name: 'steel, offer of March',
  machine,
  fitted: true,
  track: 'steel',
  origin: 'aftermarket',
  make: 'made up',
  price: { minor: 120_050, currency: 'EUR', source: { mark: 'published', text: 'a list' } },
  fittingHours: 2.5,
  life: { hours: 2600, lowHours: 1500, highHours: 4000, source: { mark: 'weak', text: 'an article' } },
  warranty: {
    months: 18,
    steps: [
      { toHours: 375, percent: 100 },
      { toHours: 750, percent: 75 },
    ],
  },
  massKg: { value: 431.5, how: 'read' },
  fit: {
    widthMm: { value: 300, how: 'measured' },
    pitchMm: { value: 52.5, how: 'read' },
    links: { value: 84, how: 'read' },
    guide: { value: 'centre', how: 'assumed' },
    offsetMm: { value: -12, how: 'measured' },
    moulding: { value: '300 x 52.5 x 84 K', how: 'read' },
  },
  note: 'two weeks',
};

const textsOf = (option: Option, units: typeof mm | typeof inches = mm): OptionTexts =>
  optionTexts(option, units, { currency: 'USD', bound: '' });

const made = (texts: OptionTexts, before?: Option) => {
  const result = optionOf(texts, before, machine);
  return result.ok ? result.value : result.error;
};

describe('the form of an option', () => {
  test.each([
    ['the least', least, mm],
    ['a whole one', whole, mm],
    ['a whole one, shown in inches and pounds', whole, inches],
    [
      'one with fields of a later build',
      { ...whole, later: { a: 1 }, fit: { ...whole.fit, later: { value: 1, how: 'read' } } },
      mm,
    ],
  ])('[OS1] read back untouched it is the option, with every source: %s', (_name, option, units) => {
    expect(made(textsOf(option as Option, units), option as Option)).toEqual(option);
  });

  test('[OS2] a new one is what was typed, entered by a person, and one that a file may hold', () => {
    const texts = {
      ...optionTexts(undefined, mm, { currency: 'EUR', bound: 'yes' }),
      name: ' block tread ',
      track: 'rubber-cored',
      price: '950,50',
      priceSource: 'a dealer',
      life: '1300',
      moulding: '300 x 52.5 x 84',
      mouldingHow: 'read',
      widthMm: '300',
    };
    const option = made(texts);
    expect(option).toEqual({
      v: 1,
      name: 'block tread',
      machine,
      track: 'rubber-cored',
      price: { minor: 95_050, currency: 'EUR', source: { mark: 'entered', text: 'a dealer' } },
      life: { hours: 1300, source: { mark: 'entered', text: '' } },
      fit: {
        widthMm: { value: 300, how: 'assumed' },
        moulding: { value: '300 x 52.5 x 84', how: 'read' },
      },
    });
    expect(optionSchema.safeParse(option).success).toBe(true);
  });

  test('[OS3] what was changed is entered by a person; what was not keeps its source', () => {
    const dearer = made({ ...textsOf(whole), price: '1300' }, whole) as Option;
    expect(dearer.price).toEqual({
      minor: 130_000,
      currency: 'EUR',
      source: { mark: 'entered', text: 'a list' },
    });
    expect(dearer.life).toEqual(whole.life);
    const longer = made({ ...textsOf(whole), lifeHigh: '' }, whole) as Option;
    expect(longer.life).toEqual({
      hours: 2600,
      lowHours: 1500,
      source: { mark: 'entered', text: 'an article' },
    });
    expect(longer.price).toEqual(whole.price);
  });

  test.each([
    ['no name', { name: ' ' }, ['name']],
    ['no kind', { track: '' }, ['track']],
    ['an amount in words', { price: 'a lot' }, ['price']],
    ['a price without a currency', { currency: 'euro' }, ['currency']],
    ['more labour than anybody has', { fittingHours: '1001' }, ['fittingHours']],
    ['a life of nothing', { life: '0' }, ['life']],
    ['a range without a life', { life: '' }, ['life']],
    ['a range that does not hold the life', { lifeLow: '2700', lifeHigh: '2500' }, ['lifeLow', 'lifeHigh']],
    ['half a step of the warranty', { percent0: '' }, ['percent0']],
    ['more than all paid back', { percent0: '101' }, ['percent0']],
    ['a width in words', { widthMm: 'wide' }, ['widthMm']],
    ['half a link', { links: '84.5' }, ['links']],
    ['a mass below nothing', { mass: '-4' }, ['mass']],
  ])('[OS4] %s is named, and nothing is made of the rest', (_name, change, faults) => {
    expect(made({ ...textsOf(whole), ...change }, whole)).toEqual(faults);
  });

  test.each([
    ['make', 'x'.repeat(121)],
    ['note', 'x'.repeat(4001)],
    ['priceSource', 'x'.repeat(401)],
    ['lifeSource', 'x'.repeat(401)],
    ['tread', 'x'.repeat(201)],
    ['moulding', 'x'.repeat(201)],
    ['life', '100001'],
    ['lifeHigh', '100001'],
    ['months', '601'],
    ['toHours0', '100001'],
    ['toHours1', '375'],
    ['links', '401'],
    ['sprocketTeeth', '401'],
    ['widthMm', '10001'],
    ['offsetMm', '-1001'],
    ['mass', '100001'],
  ])('[OS7] more than a file may hold is refused at its field: %s', (field, text) => {
    const before: Option = { ...whole, life: { hours: 2600, source: { mark: 'entered', text: '' } } };
    expect(made({ ...textsOf(before), [field]: text }, before)).toEqual([field]);
  });

  test('[OS5] steps of a warranty stand by their hours, and there is always room for one more', () => {
    expect(stepsShown(textsOf(whole))).toBe(3);
    expect(stepsShown(textsOf(least))).toBe(1);
    const more = { ...textsOf(whole), toHours2: '100', percent2: '90' };
    expect((made(more, whole) as Option).warranty?.steps.map(({ toHours }) => toHours)).toEqual([
      100, 375, 750,
    ]);
  });

  test('[OS6] one that is for any machine is not on one', () => {
    const free = made({ ...textsOf(whole), bound: '' }, whole) as Option;
    expect(free).not.toHaveProperty('machine');
    expect(free).not.toHaveProperty('fitted');
  });
});
