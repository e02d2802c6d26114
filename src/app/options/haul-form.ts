import type { Ties, TieGroup } from '../../core/hauling-ties.ts';
import { haulMasses, haulRatings, type Haul, type HaulField } from '../../core/hauling.ts';
import { fromMm, kgPerLb, round6, type LengthUnit } from '../../core/quantity.ts';
import { parseCount, parseLength, parseMass } from '../../core/typed.ts';
import { operatorMass, type Region } from '../../reference/hauling.ts';

/** A text with the unit in which it was typed, so that another choice of units changes no value. */
interface Typed<U> {
  readonly text: string;
  readonly unit: U;
}
export type TypedMass = Typed<'kg' | 'lb'>;
export type TypedLength = Typed<LengthUnit>;

type Masses<F extends string> = Readonly<Partial<Record<F, TypedMass>>>;

/** Truck, trailer and ties, which carry one machine after another. */
export interface RigForm {
  readonly region?: Region;
  readonly on?: Haul['on'];
  readonly noCombination?: boolean;
  readonly masses: Masses<HaulField>;
  readonly direct?: string;
  readonly over?: string;
  readonly wll: Masses<'direct' | 'over'>;
}

/** The machine and what rides along with it. */
export interface LoadForm {
  readonly noOperator?: boolean;
  readonly masses: Masses<HaulField>;
  readonly length?: TypedLength;
  readonly blocked?: boolean;
}

export const emptyRig: RigForm = { masses: {}, wll: {} };
export const emptyLoad: LoadForm = { masses: {} };

/** Fields that change with each machine. */
const ofLoad: readonly HaulField[] = ['machine', 'attachments', 'fuel', 'chains', 'nose'];
export const isOfLoad = (field: HaulField): boolean => ofLoad.includes(field);

/** Kilograms of what was typed; undefined while it is no number. */
export function kgOf(typed: TypedMass | undefined): number | undefined {
  const read = typed && parseMass(typed.text, typed.unit);
  return read?.ok === true ? read.value.kg : undefined;
}

const tenth = (value: number): string => String(round6(Math.round(value * 10) / 10));

/** A mass as it would be typed in a unit, to a tenth. */
export const massText = (kg: number, unit: 'kg' | 'lb'): string => tenth(unit === 'kg' ? kg : kg / kgPerLb);

/** What the field shows: the text itself, or its value in the unit that is chosen now. */
export function shownMass(typed: TypedMass | undefined, unit: 'kg' | 'lb'): string {
  if (typed === undefined || typed.unit === unit) return typed?.text ?? '';
  const kg = kgOf(typed);
  return kg === undefined ? typed.text : massText(kg, unit);
}

/** Millimetres of a length that was typed. */
export function mmOf(typed: TypedLength | undefined): number | undefined {
  const read = typed && parseLength(typed.text, typed.unit);
  return read?.ok === true && read.value.mm > 0 ? read.value.mm : undefined;
}

/** The same for a length. */
export function shownLength(typed: TypedLength | undefined, unit: LengthUnit): string {
  if (typed === undefined || typed.unit === unit) return typed?.text ?? '';
  const mm = mmOf(typed);
  return mm === undefined ? typed.text : tenth(fromMm(mm, unit));
}

/** The haul as typed so far; the machine's record speaks until something is typed over it. */
export function haulOf(rig: RigForm, load: LoadForm, machineKg: number | undefined): Haul {
  const given = (field: HaulField): number | undefined => {
    const typed = (isOfLoad(field) ? load : rig).masses[field];
    return field === 'machine' && typed === undefined ? machineKg : kgOf(typed);
  };
  const entered = [...haulMasses, ...haulRatings].flatMap((field): [HaulField, number][] => {
    const kg = given(field);
    return kg === undefined ? [] : [[field, kg]];
  });
  return {
    on: rig.on ?? 'trailer',
    operatorKg: load.noOperator === true ? 0 : operatorMass.kg,
    noCombination: rig.noCombination === true,
    kg: Object.fromEntries(entered),
  };
}

/** The ties as typed so far. */
export function tiesOf(rig: RigForm, load: LoadForm): Ties {
  const group = (count: string | undefined, wll: TypedMass | undefined): TieGroup => {
    const read = parseCount(count ?? '');
    return { count: read.ok ? read.value : undefined, wllKg: kgOf(wll) };
  };
  return {
    direct: group(rig.direct, rig.wll.direct),
    over: group(rig.over, rig.wll.over),
    lengthMm: mmOf(load.length),
    blocked: load.blocked === true,
  };
}
