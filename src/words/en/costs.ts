import type { RateName } from '../../core/costs.ts';
import type { WorkReason } from '../../core/walk.ts';

/** Price lists and rates. */
export const costs = {
  title: 'Prices and rates',
  line: 'What parts and work cost, by which the job plan reckons',
  prices: 'Price lists',
  rates: 'Rates',
  soft: 'estimates',
  readingTitle: 'Prices',
  editTitle: 'Edit the prices',
  ratesEditTitle: 'Edit the rates',
  copy: 'Copy and edit',
  copyFirst: 'What comes with the app stays as it is. Copy it, then change the copy.',
  exportFile: 'Export as a file',
  importFile: 'Import prices or rates',
  remove: 'Remove this list',
  removed: 'Removed',
  save: 'Save',
  saved: 'Saved on this phone',
  name: 'Name',
  nameMissing: 'Give it a name, so that you find it again.',
  currencyName: 'Currency',
  currency: 'Currency, three letters',
  currencyHint: 'As ISO 4217 has it: EUR, USD, GBP. Amounts of two currencies are never added.',
  currencyWrong: 'Three capital letters, as in EUR.',
  parts: 'Parts',
  labour: 'Labour, h',
  each: { side: 'for one side', part: 'for one part', 'both-sides': 'for both sides' },
  lines: (count: number): string => (count === 1 ? '1 kind of job' : `${count} kinds of job`),
  line1: (money: string, hours: string, each: string): string => `${money} and ${hours} of labour, ${each}`,
  entered: 'entered on this phone',
  forMachine: 'Use it on a machine: open the machine, edit it, and choose it there.',
  own: 'Own prices for this machine',
  ownMade: 'Copied for this machine. Put in what you pay.',
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

export const rateWords: Readonly<Record<RateName, string>> = {
  labourPerHour: 'Labour, an hour',
  callOut: 'Call-out, a visit',
  liftSide: 'Lifting and blocking one side',
  trackOffSide: 'Taking the track of one side off and putting it on',
  downtimePerHour: 'Machine standing still, an hour',
  breakdown: 'A stop that nobody planned: recovery, express parts',
};

export const workReasonWords: Readonly<Record<WorkReason, { readonly label: string }>> = {
  worn: { label: 'worn out' },
  damaged: { label: 'damaged before that' },
  other: { label: 'another reason' },
};
