import type { Contract } from '../../src/core/contract.ts';
import type { RentalInput } from '../../src/core/rental-input.ts';
import type { ChargeLine } from '../../src/core/rental-line.ts';
import { chargeList } from '../../src/core/rental.ts';
import { assert } from '../../src/core/result.ts';
import type { PlacedReading } from '../../src/core/states.ts';
import { entered, finding, read } from './made.ts';
import { hireOf, lugs } from './rental-made.ts';

/** Hires whose left track is damaged or not; its lugs went out 20 % worn and came back 25 %. */

export type Readings = readonly PlacedReading[];

export const lugsOut = lugs([20, 20]);
export const lugsBack = lugs([25, 25]);
export const terms: Partial<Contract> = {
  charges: 'damage',
  parts: [{ what: 'renew-track', minor: 300_000, labourMinor: 20_000, lifeHours: 3000, source: entered }],
};

export const hire = (out: Readings, back: Readings, more: Partial<Contract> = {}): RentalInput =>
  hireOf([...out, ...lugsOut], [...back, ...lugsBack], { ...terms, ...more });

export function damageIn(input: RentalInput): ChargeLine {
  const line = chargeList(input).lines.find(({ kind }) => kind === 'damage');
  assert(line, 'no damage');
  return line;
}

export const standing = (input: RentalInput): string => {
  const { standing: of } = damageIn(input);
  return of.kind === 'charged' ? 'charged' : of.why;
};

export const track = (item: string, name: string, count?: number): PlacedReading =>
  read('left.track', item, finding(name, count === undefined ? {} : { count }));

export const cord = (name: string, count?: number) => track('cord', name, count);
