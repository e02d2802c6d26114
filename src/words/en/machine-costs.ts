import type { WorkReason } from '../../core/walk.ts';

/** What the forms of machine and work say of prices, hours a week, and why a part came off. */
export const machineCosts = {
  machineTitle: 'What its jobs cost',
  machinePrices: 'Price list',
  machineRates: 'Rates',
  fitting: 'The starting ones of its class (estimates)',
  hoursPerWeek: 'Engine hours in a usual week',
  hoursPerWeekHint: 'With it hours left become a date. Else the walks tell, from three weeks apart on.',
  why: 'Why the old part came off',
  oldMeter: 'Last reading of the old hour meter',
  oldMeterHint: 'Without it the hours before and after cannot be joined.',
} as const;

export const workReasonWords: Readonly<Record<WorkReason, { readonly label: string }>> = {
  worn: { label: 'worn out' },
  damaged: { label: 'damaged before that' },
  other: { label: 'another reason' },
};
