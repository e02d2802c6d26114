import { figureNames, type FigureName } from '../../core/option-tables.ts';
import { machineKinds, type MachineKind } from '../../core/machine.ts';
import { kgPerLb, round6, type LengthUnit } from '../../core/quantity.ts';
import { parseCount, parseHours, parseLength, parseMass, type Typed } from '../../core/typed.ts';
import { err } from '../../core/result.ts';
import { grounds, turnings, type Use } from '../../core/use.ts';
import type { Preferences } from '../../words/format.ts';
import { formatter } from '../data/format.ts';

/** What the question is asked for, as it is set on the screen; a share stands under `ground-…`, a figure under `own-…`. */
export type ControlTexts = Readonly<Record<string, string>>;

/** What a person has changed; the rest follows the records. */
export type ControlDraft = ControlTexts;

export type Units = Pick<Preferences, 'length' | 'mass'>;

type Ground = (typeof grounds)[number];

const mostHoursAYear = 8784;

const yesNo = (value: boolean | undefined): string => (value === undefined ? '' : value ? 'yes' : 'no');
const saidOf = (text: string | undefined): boolean | undefined =>
  text === 'yes' ? true : text === 'no' ? false : undefined;

const numberText = (value: number | undefined): string => (value === undefined ? '' : String(round6(value)));

/** A mass as it is typed in a unit; whole pounds. */
export const massText = (kg: number | undefined, unit: Units['mass']): string =>
  kg === undefined || unit === 'kg' ? numberText(kg) : String(Math.round(kg / kgPerLb));

/** A use as texts. */
export function controlTexts(use: Use, units: Units): ControlTexts {
  const shares = Object.entries(use.ground ?? {}).map(([name, share]) => [
    `ground-${name}`,
    numberText(share),
  ]);
  const own = Object.entries(use.own ?? {}).map(([name, value]) => [`own-${name}`, numberText(value)]);
  return {
    massUnit: units.mass,
    lengthUnit: units.length,
    turning: use.turning ?? '',
    hours: numberText(use.hoursAYear),
    sharp: yesNo(use.sharp),
    noMarks: yesNo(use.noMarks),
    steel: yesNo(use.takesSteel),
    trailer: massText(use.mostMassKg, units.mass),
    ...Object.fromEntries([...shares, ...own]),
  };
}

/** Hours a year, of which there are no more than a year has. */
export function parseYear(text: string): Typed<number> {
  const read = parseHours(text);
  return read.ok && read.value > mostHoursAYear ? err({ kind: 'too-large' }) : read;
}

const readOr = <T>(text: string | undefined, parse: (text: string) => Typed<T>): T | undefined => {
  const read = parse(text ?? '');
  return read.ok ? read.value : undefined;
};

const above = (value: number | undefined): number | undefined =>
  value !== undefined && value > 0 ? value : undefined;

export const massUnitOf = (texts: ControlTexts): Units['mass'] => (texts['massUnit'] === 'lb' ? 'lb' : 'kg');

export const lengthUnitOf = (texts: ControlTexts): LengthUnit => (texts['lengthUnit'] ?? 'mm') as LengthUnit;

/** The draft after a change: it keeps the units that its numbers were typed in, whatever is preferred later. */
export const changedDraft = (texts: ControlTexts, draft: ControlDraft, part: ControlTexts): ControlDraft => ({
  massUnit: massUnitOf(texts),
  lengthUnit: lengthUnitOf(texts),
  ...draft,
  ...part,
});

/** The units of what was typed already, else those that are preferred. */
export const unitsOf = (draft: ControlDraft, { length, mass }: Units): Units => {
  const kept = { massUnit: mass, lengthUnit: length, ...draft };
  return { length: lengthUnitOf(kept), mass: massUnitOf(kept) };
};

/** A mass as typed, in kg. */
export const massIn = (texts: ControlTexts, field: string): number | undefined =>
  above(readOr(texts[field], (text) => parseMass(text, massUnitOf(texts)))?.kg);

/** A length as typed, in mm. */
export const lengthIn = (texts: ControlTexts, field: string): number | undefined =>
  above(readOr(texts[field], (text) => parseLength(text, lengthUnitOf(texts)))?.mm);

/** Parts of each ground that was given one. */
export const partsOf = (texts: ControlTexts): readonly (readonly [Ground, number])[] =>
  grounds.flatMap((ground) => {
    const parts = readOr(texts[`ground-${ground}`], parseCount) ?? 0;
    return parts > 0 ? [[ground, parts] as const] : [];
  });

/** One ground in the place of all others. */
export const onlyGround = (ground: Ground): ControlTexts =>
  Object.fromEntries(grounds.map((each) => [`ground-${each}`, each === ground ? '10' : '']));

function ownOf(texts: ControlTexts): Use['own'] {
  const own = figureNames.flatMap((name: FigureName) => {
    const value = readOr(texts[`own-${name}`], parseHours);
    return value === undefined ? [] : [[name, value] as const];
  });
  return own.length === 0 ? undefined : Object.fromEntries(own);
}

/** What is wanted, as far as it can be read; on top of what the record holds besides. */
export function wantedOf(texts: ControlTexts, before: Use): Use {
  const ground = partsOf(texts);
  const turning = turnings.find((each) => each === texts['turning']);
  const hours = above(readOr(texts['hours'], parseYear));
  const use = {
    ...before,
    ground: ground.length === 0 ? undefined : Object.fromEntries(ground),
    turning,
    hoursAYear: hours === undefined ? undefined : Math.max(1, hours),
    sharp: saidOf(texts['sharp']),
    noMarks: saidOf(texts['noMarks']),
    takesSteel: saidOf(texts['steel']),
    mostMassKg: massIn(texts, 'trailer'),
    own: ownOf(texts),
  };
  return Object.fromEntries(Object.entries(use).filter(([, value]) => value !== undefined)) as Use;
}

/** The kind of machine of a question that is asked alone; undefined until it is said. */
export const kindOf = (texts: ControlTexts): MachineKind | undefined =>
  machineKinds.find((each) => each === texts['kind']);

/** A length as it is typed in the person's unit. */
export const lengthText = (mm: number | undefined, units: Units): string =>
  mm === undefined ? '' : formatter.value.field(mm, units.length);
