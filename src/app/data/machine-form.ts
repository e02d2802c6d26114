import {
  mostHoursAWeek,
  type Machine,
  type MachineKind,
  type Shape,
  type Side,
  type TrackKind,
} from '../../core/machine.ts';
import { kgPerLb, round6 } from '../../core/quantity.ts';
import { err, ok, type Result } from '../../core/result.ts';
import { parseHours, parseMass, type Typed } from '../../core/typed.ts';
import { usualShape } from './usual-shape.ts';

export type SideField = 'Make' | 'Size' | 'Fitted' | 'Sheet';

/** Everything on the form as text, so that what is half typed can be kept as it is. */
export type MachineField =
  | 'name'
  | 'kind'
  | 'maker'
  | 'model'
  | 'pin'
  | 'mass'
  | 'meter'
  | 'travelHours'
  | 'hoursPerWeek'
  | 'prices'
  | 'rates'
  | 'track'
  | 'drive'
  | 'idlers'
  | 'bottomRollers'
  | 'carrierRollers'
  | 'slidePlate'
  | 'suspension'
  | 'flanges'
  | 'tensioner'
  | 'sheet'
  | 'rules'
  | 'note'
  | `${Side}${SideField}`;

export type MachineTexts = Readonly<Record<MachineField, string>>;

/** What a person has changed; the rest follows the record, also when it changes meanwhile. */
export type MachineDraft = Readonly<Partial<Record<MachineField, string>>> & { readonly id?: string };

/** The sheet is not chosen by hand: take the starting sheet that fits kind, track and mass. */
export const fitting = 'fitting';

const blank: MachineTexts = {
  name: '',
  kind: '',
  maker: '',
  model: '',
  pin: '',
  mass: '',
  meter: '',
  travelHours: '',
  hoursPerWeek: '',
  prices: '',
  rates: '',
  track: '',
  drive: '',
  idlers: '',
  bottomRollers: '',
  carrierRollers: '',
  slidePlate: '',
  suspension: '',
  flanges: '',
  tensioner: '',
  sheet: fitting,
  rules: '',
  note: '',
  leftMake: '',
  leftSize: '',
  leftFitted: '',
  leftSheet: '',
  rightMake: '',
  rightSize: '',
  rightFitted: '',
  rightSheet: '',
};

const shapeTexts = (shape: Shape) => ({
  track: shape.track,
  drive: shape.drive,
  idlers: String(shape.idlers),
  bottomRollers: String(shape.bottomRollers),
  carrierRollers: String(shape.carrierRollers),
  slidePlate: shape.slidePlate ? 'yes' : 'no',
  suspension: shape.suspension,
  flanges: shape.flanges,
  tensioner: shape.tensioner,
});

const numberText = (value: number | undefined): string => (value === undefined ? '' : String(round6(value)));

function massText(machine: Machine, unit: 'kg' | 'lb'): string {
  const { massKg, massTyped, massUnit } = machine;
  if (typeof massTyped === 'string' && massUnit === unit) return massTyped;
  return numberText(massKg === undefined || unit === 'kg' ? massKg : Math.round(massKg / kgPerLb));
}

function textsOfMachine(machine: Machine, unit: 'kg' | 'lb'): MachineTexts {
  const { left, right } = machine;
  return {
    name: machine.name,
    kind: machine.kind,
    maker: machine.maker ?? '',
    model: machine.model ?? '',
    pin: machine.pin ?? '',
    mass: massText(machine, unit),
    meter: numberText(machine.meterHours),
    travelHours: numberText(machine.travelHours),
    hoursPerWeek: numberText(machine.hoursPerWeek),
    prices: machine.prices ?? '',
    rates: machine.rates ?? '',
    ...shapeTexts(machine.shape),
    sheet: machine.sheet ?? '',
    rules: machine.rules ?? '',
    note: machine.note ?? '',
    leftMake: left?.make ?? '',
    leftSize: left?.size ?? '',
    leftFitted: numberText(left?.fittedAtHours),
    leftSheet: left?.sheet ?? '',
    rightMake: right?.make ?? '',
    rightSize: right?.size ?? '',
    rightFitted: numberText(right?.fittedAtHours),
    rightSheet: right?.sheet ?? '',
  };
}

/** What the form shows: the record, or what is usual for the kind and track chosen, and the person's changes. */
export function machineTexts(
  machine: Machine | undefined,
  draft: MachineDraft,
  unit: 'kg' | 'lb',
): MachineTexts {
  if (machine) return { ...textsOfMachine(machine, unit), ...draft };
  const { kind, track } = draft;
  const usual = kind && track ? shapeTexts(usualShape(kind as MachineKind, track as TrackKind)) : {};
  return { ...blank, ...usual, ...draft };
}

/** The undercarriage as the form has it; undefined until kind and track are chosen. */
export const shapeOf = (texts: MachineTexts, before?: Shape): Shape | undefined =>
  texts.kind === '' || texts.track === ''
    ? undefined
    : ({
        ...before,
        track: texts.track,
        drive: texts.drive,
        idlers: Number(texts.idlers),
        bottomRollers: Number(texts.bottomRollers),
        carrierRollers: Number(texts.carrierRollers),
        slidePlate: texts.slidePlate === 'yes',
        suspension: texts.suspension,
        flanges: texts.flanges,
        tensioner: texts.tensioner,
      } as Shape);

/** Mass in kilograms as typed so far. */
export function massOf(texts: MachineTexts, unit: 'kg' | 'lb'): number | undefined {
  const read = parseMass(texts.mass, unit);
  return read.ok && read.value.kg > 0 ? read.value.kg : undefined;
}

/** A number that may be left out: nothing typed is undefined, something unreadable is not ok. */
const optional = <T>(text: string, read: Typed<T>): Result<T | undefined, undefined> => {
  if (text.trim() === '') return ok(undefined);
  return read.ok ? ok(read.value) : err(undefined);
};

const textOr = (text: string): string | undefined => (text.trim() === '' ? undefined : text.trim());

/** Puts `undefined` fields away, which records never hold. */
const filled = <T extends object>(value: T): T =>
  Object.fromEntries(Object.entries(value).filter(([, each]) => each !== undefined)) as T;

function sideOf(machine: Machine | undefined, texts: MachineTexts, side: Side): Machine['left'] {
  const fitted = parseHours(texts[`${side}Fitted`]);
  const value = filled({
    ...machine?.[side],
    make: textOr(texts[`${side}Make`]),
    size: textOr(texts[`${side}Size`]),
    fittedAtHours: fitted.ok ? fitted.value : undefined,
    sheet: textOr(texts[`${side}Sheet`]),
  });
  return Object.keys(value).length === 0 ? undefined : value;
}

/** Why the form is no machine yet: the fields to look at again, in the order of the form. */
export type MachineFaults = readonly MachineField[];

function faultsOf(texts: MachineTexts, unit: 'kg' | 'lb'): MachineFaults {
  const readable: readonly (readonly [MachineField, boolean])[] = [
    ['name', texts.name.trim() !== ''],
    ['kind', texts.kind !== ''],
    ['track', texts.track !== ''],
    ['mass', optional(texts.mass, parseMass(texts.mass, unit)).ok],
    ['hoursPerWeek', optional(texts.hoursPerWeek, parseWeek(texts.hoursPerWeek)).ok],
    ...(['meter', 'travelHours', 'leftFitted', 'rightFitted'] as const).map(
      (field) => [field, optional(texts[field], parseHours(texts[field])).ok] as const,
    ),
  ];
  return readable.flatMap(([field, fine]) => (fine ? [] : [field]));
}

const hoursOf = (text: string): number | undefined => {
  const read = parseHours(text);
  return read.ok ? read.value : undefined;
};

/** What was typed, with its unit; a mass that was not touched stays as it is, whatever unit it is shown in. */
function massFields(before: Machine | undefined, texts: MachineTexts, unit: 'kg' | 'lb') {
  if (before && texts.mass === massText(before, unit)) return {};
  const massKg = massOf(texts, unit);
  const isGiven = massKg !== undefined;
  return { massKg, massTyped: isGiven ? texts.mass.trim() : undefined, massUnit: isGiven ? unit : undefined };
}

/** The same for hours of a meter. */
function hoursFields(
  before: Machine | undefined,
  texts: MachineTexts,
  field: 'meter' | 'travelHours',
  name: 'meterHours' | 'travelHours',
) {
  const text = texts[field];
  if (before && text === numberText(before[name])) return {};
  const hours = hoursOf(text);
  return { [name]: hours, [`${name}Typed`]: hours === undefined ? undefined : text.trim() };
}

/** Hours of a week, of which there are no more than its days have. */
export function parseWeek(text: string): Typed<number> {
  const read = parseHours(text);
  return read.ok && read.value > mostHoursAWeek ? err({ kind: 'too-large' }) : read;
}

const weekOf = (text: string): number | undefined => {
  const read = parseWeek(text);
  return read.ok ? read.value : undefined;
};

/** The machine that the form describes, on top of what the record holds besides. */
export function machineOf(
  before: Machine | undefined,
  texts: MachineTexts,
  unit: 'kg' | 'lb',
  fittingSheet: string | undefined,
): Result<Machine, MachineFaults> {
  const faults = faultsOf(texts, unit);
  const shape = shapeOf(texts, before?.shape);
  if (faults.length > 0 || !shape) return err(faults);
  const sheet = texts.sheet === fitting ? fittingSheet : textOr(texts.sheet);
  const value = filled({
    ...before,
    v: 1 as const,
    name: texts.name.trim(),
    kind: texts.kind as MachineKind,
    maker: textOr(texts.maker),
    model: textOr(texts.model),
    pin: textOr(texts.pin),
    ...massFields(before, texts, unit),
    ...hoursFields(before, texts, 'meter', 'meterHours'),
    ...hoursFields(before, texts, 'travelHours', 'travelHours'),
    shape,
    left: sideOf(before, texts, 'left'),
    right: sideOf(before, texts, 'right'),
    sheet,
    rules: textOr(texts.rules),
    hoursPerWeek: weekOf(texts.hoursPerWeek),
    prices: textOr(texts.prices),
    rates: textOr(texts.rates),
    note: textOr(texts.note),
  });
  return ok(value as Machine);
}
