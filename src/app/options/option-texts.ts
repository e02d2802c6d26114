import { mostLabourHours } from '../../core/costs.ts';
import type { How, Option } from '../../core/option.ts';
import { kgPerLb, lengthUnits, round6, type LengthUnit } from '../../core/quantity.ts';
import { err, ok } from '../../core/result.ts';
import { parseCount, parseHours, parseLength, parseMass, type Typed } from '../../core/typed.ts';
import type { Preferences } from '../../words/format.ts';
import { formatter } from '../data/format.ts';

/** An option as typed: each field of it, `…How` for how it is known, `toHours0`, `percent0` … for its warranty. */
export type OptionTexts = Readonly<Record<string, string>>;

/** Names of the fields that cannot be saved. */
export type OptionFaults = readonly string[];

export const lengthFields = [
  'widthMm',
  'pitchMm',
  'hornWidthMm',
  'hornHeightMm',
  'boltCircleMm',
  'boreMm',
  'offsetMm',
] as const;
export const countFields = ['links', 'sprocketTeeth', 'sprocketBolts'] as const;
const chosenFields = ['guide', 'rollersOn'] as const;
const writtenFields = ['tread', 'moulding'] as const;
export type LengthField = (typeof lengthFields)[number];
export type CountField = (typeof countFields)[number];
export type FitField =
  LengthField | CountField | (typeof chosenFields)[number] | (typeof writtenFields)[number];
export const fitFields: readonly FitField[] = [
  ...lengthFields,
  ...countFields,
  ...chosenFields,
  ...writtenFields,
];

/** The most steps of a warranty, as a record may have. */
const mostSteps = 20;

type Known = { readonly value: string | number; readonly how: How } | undefined;

export const knownOf = (fit: Option['fit'], field: FitField): Known => fit?.[field];

const numberText = (value: number | undefined): string => (value === undefined ? '' : String(round6(value)));

export const massShown = (kg: number, unit: Preferences['mass']): string =>
  numberText(unit === 'kg' ? kg : Math.round(kg / kgPerLb));

/** A value that has to match, as it is typed. */
export function shown(field: FitField, known: Known, unit: LengthUnit): string {
  if (known === undefined) return '';
  const isLength = lengthFields.some((each) => each === field);
  return isLength ? formatter.value.field(Number(known.value), unit) : String(known.value);
}

const stepTexts = ({ warranty }: Option) =>
  (warranty?.steps ?? []).flatMap(({ toHours, percent }, at) => [
    [`toHours${at}`, numberText(toHours)],
    [`percent${at}`, numberText(percent)],
  ]);

/** The texts of an option; of a new one those that are taken for granted. */
export function optionTexts(
  option: Option | undefined,
  units: Pick<Preferences, 'length' | 'mass'>,
  usual: OptionTexts,
): OptionTexts {
  const kept = { unit: units.length, massUnit: units.mass };
  if (!option) return { ...kept, ...usual };
  const { price, life, massKg, fit } = option;
  const matching = fitFields.flatMap((field) => {
    const known = knownOf(fit, field);
    return [
      [field, shown(field, known, units.length)],
      [`${field}How`, known?.how ?? ''],
    ];
  });
  return {
    ...kept,
    ...usual,
    name: option.name,
    track: option.track,
    origin: option.origin ?? '',
    make: option.make ?? '',
    price: price ? formatter.value.moneyField(price.minor, price.currency) : '',
    priceSource: price?.source?.text ?? '',
    currency: price?.currency ?? usual['currency'] ?? '',
    fittingHours: numberText(option.fittingHours),
    life: numberText(life?.hours),
    lifeLow: numberText(life?.lowHours),
    lifeHigh: numberText(life?.highHours),
    lifeSource: life?.source?.text ?? '',
    months: numberText(option.warranty?.months),
    mass: massKg ? massShown(massKg.value, units.mass) : '',
    massHow: massKg?.how ?? '',
    note: option.note ?? '',
    bound: option.machine === undefined ? '' : 'yes',
    fitted: option.fitted === true ? 'yes' : '',
    ...Object.fromEntries([...matching, ...stepTexts(option)]),
  };
}

/** How many steps of a warranty are shown: those that hold something, and one more. */
export function stepsShown(texts: OptionTexts): number {
  const isUsed = (at: number): boolean =>
    `${texts[`toHours${at}`] ?? ''}${texts[`percent${at}`] ?? ''}` !== '';
  const used = Array.from({ length: mostSteps }, (_, at) => at).filter(isUsed);
  return Math.min(mostSteps, (used.at(-1) ?? -1) + 2);
}

export const unitOf = (texts: OptionTexts): LengthUnit =>
  lengthUnits.find((each) => each === texts['unit']) ?? 'mm';

export const massUnitOf = (texts: OptionTexts): 'kg' | 'lb' => (texts['massUnit'] === 'lb' ? 'lb' : 'kg');

const itself = (value: number): number => value;

/** No more than a record may hold, so that what was saved can be handed over. */
const upTo = <T>(read: Typed<T>, most: number, size: (value: T) => number): Typed<T> =>
  read.ok && size(read.value) > most ? err({ kind: 'too-large' }) : read;

const mm = (size: { readonly mm: number }): number => Math.abs(size.mm);

/** A length of a track or a sprocket. */
export const parseSize = (text: string, unit: LengthUnit): ReturnType<typeof parseLength> =>
  upTo(parseLength(text, unit), 10_000, mm);

/** An offset may lie on either side, so that what is below nothing is a size of its own. */
export function parseOffset(text: string, unit: LengthUnit): ReturnType<typeof parseLength> {
  const read = parseLength(text, unit);
  return upTo(!read.ok && read.error.kind === 'negative' ? ok(read.error.reading) : read, 1000, mm);
}

/** Links, teeth or bolts of one side. */
export const parsePieces = (text: string): Typed<number> => upTo(parseCount(text), 400, itself);

/** The mass of the tracks of one side. */
export const parseSideMass = (text: string, unit: Preferences['mass']): ReturnType<typeof parseMass> =>
  upTo(parseMass(text, unit), 100_000, ({ kg }) => kg);

/** Hours that tracks last, or that a warranty goes to. */
export const parseLife = (text: string): Typed<number> => upTo(parseHours(text), 100_000, itself);

/** Months of a warranty: no more than fifty years. */
export const parseMonths = (text: string): Typed<number> => upTo(parseCount(text), 600, itself);

/** Hours of labour for one side. */
export const parseFitting = (text: string): Typed<number> => upTo(parseHours(text), mostLabourHours, itself);

/** A share in percent. */
export const parsePercent = (text: string): Typed<number> => upTo(parseHours(text), 100, itself);
