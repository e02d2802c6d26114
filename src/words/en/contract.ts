import type { Contract } from '../../core/contract.ts';

/** What owner and renter agreed about the undercarriage, entered before or during a hire. */
export const contract = {
  title: 'Contract',
  line: 'What owner and renter agreed about the undercarriage. The charge list is worked out from it; entering it charges nothing.',
  which: 'Which contract?',
  another: 'another contract',
  unnamed: 'without a number',
  number: 'Contract number',
  owner: 'Owner (who hires the machine out)',
  renter: 'Renter',
  from: 'Hire begins on',
  to: 'Hire ends on',
  who: 'Who and when',
  pays: 'What does the renter pay for, besides the hire?',
  wear: 'Wear',
  hours: 'By which hours is wear allowed for?',
  hoursBilled: 'Hours billed',
  hoursIncluded: 'Hours included in the hire',
  allowance: 'Wear allowed on top of usual wear, percent of life',
  allowanceHint: 'Empty: none. Usual wear is hours of the hire ÷ standard life of the part.',
  clause: 'What the contract says on wear and damage',
  clauseHint: 'The number of the clause, or its words',
  prices: 'Prices',
  pricesLine:
    'A part without a price is listed and not charged. Open one to enter its price, and where that is from.',
  fill: 'Fill in from the machine’s price list',
  filled: 'Empty prices filled in; what comes from an estimate says so',
  cannotFill: 'The machine has no price list and rates of one currency.',
  otherCurrency: (here: string, list: string): string =>
    here === ''
      ? `These amounts have no currency, the list is in ${list}. Enter theirs, or clear them first.`
      : `These amounts are in ${here}, the list is in ${list}. Clear them first, or change the list.`,
  currency: 'Currency, three letters',
  currencyWrong: 'Three capital letters, as in EUR.',
  each: (what: string): string => `${what}, for each one`,
  minor: 'Price of the part',
  labourMinor: 'Labour to fit it',
  life: 'Standard life, hours',
  lifeHint: 'How long such a part lasts in usual work, as agreed. Needed to charge wear.',
  source: 'Where is the price from?',
  sourceHint: 'Quote, price list with its date, invoice',
  waived: 'Not charged, whatever is found',
  noPrice: 'no price',
  partLine: (price: string, labour: string, currency: string): string =>
    [...(price === '' ? [] : [`${price} ${currency}`]), ...(labour === '' ? [] : [`labour ${labour}`])].join(
      ', ',
    ),
  labour: 'How much of the labour does the renter pay?',
  cutOff: 'Life left at which a part counts as worth nothing, percent',
  cutOffHint: 'Empty: worth something to the last.',
  haulage: 'Bringing the machine in or the parts out',
  haulageHint: 'Charged once, and only where anything else is.',
  tax: 'Tax, percent',
  rules: 'Rules of the hire',
  grounds: 'On what ground may it work?',
  groundsHint: 'None chosen: on any.',
  replyDays: 'Days in which the renter may object',
  keptDays: 'Days the old parts are kept',
  handOut: 'Hand-out walk of this hire',
  handOutLast: 'the last one before the return',
  note: 'Note',
  save: 'Save the contract',
  saved: 'Contract saved on this phone',
  savedSealed: 'Contract saved. The walk you came from is sealed: what was signed stays.',
} as const;

export const chargesWords: Readonly<Record<Contract['charges'], { label: string; line: string }>> = {
  damage: { label: 'damage only', line: 'What broke during the hire. Wear is the owner’s.' },
  'damage-and-wear': {
    label: 'damage, and wear beyond the usual',
    line: 'Only where the contract says so: wear beyond what the hours allow.',
  },
};

export const hoursWords: Readonly<Record<Contract['hours'], { label: string; line: string }>> = {
  meter: { label: 'by the hour meter', line: 'Return minus hand-out, both with a photo.' },
  billed: { label: 'hours billed', line: 'What the invoice counts.' },
  included: { label: 'hours included', line: 'What the hire includes, run or not.' },
};

export const labourWords: Readonly<Record<NonNullable<Contract['labour']>, { label: string; line: string }>> =
  {
    share: { label: 'the same share as of the part', line: 'As the part itself is charged.' },
    whole: { label: 'all of it', line: 'However old the part was.' },
    none: { label: 'none', line: 'Fitting is the owner’s.' },
  };
