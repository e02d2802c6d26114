/** Length units a person can choose. `in/32` counts 32nds as a tread gauge does, `in/16` is a tape. */
export const lengthUnits = ['mm', 'in', 'in/32', 'in/16'] as const;
export type LengthUnit = (typeof lengthUnits)[number];

// 1 in = 25.4 mm exactly (NIST SP 811).
const mmPer: Record<LengthUnit, number> = { mm: 1, in: 25.4, 'in/32': 25.4 / 32, 'in/16': 25.4 / 16 };

export const toMm = (value: number, unit: LengthUnit): number => value * mmPer[unit];
export const fromMm = (valueMm: number, unit: LengthUnit): number => valueMm / mmPer[unit];

/** kg per lb, exact (NIST SP 811). */
export const kgPerLb = 0.45359237;

/** Newtons per kilogram-force, exact (NIST SP 811). */
export const standardGravity = 9.80665;

/** The grid on which values are compared, so that engines and units agree on which side of a limit one is. */
export const round6 = (value: number): number => Math.round(value * 1e6) / 1e6;

export type Comparison = '<' | '<=' | '=' | '>=' | '>';

/** Compares two values of one unit on the 1e-6 grid. */
export function compare(left: number, op: Comparison, right: number): boolean {
  const difference = round6(left - right);
  if (op === '<') return difference < 0;
  if (op === '<=') return difference <= 0;
  if (op === '=') return difference === 0;
  if (op === '>=') return difference >= 0;
  return difference > 0;
}
