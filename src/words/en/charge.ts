import type { hourBases } from '../../core/contract.ts';
import type { ChargeOpen, LeftFrom, NotCharged } from '../../core/rental-line.ts';

const daysText = (days: number): string => (days === 1 ? '1 day' : `${days} days`);

/** The charge list of a rental return, in words that a renter across the counter reads. */
export const charge = {
  title: 'Charge list',
  toPay: (sum: string): string => `To pay: ${sum}`,
  nothing: 'Nothing to pay for the undercarriage',
  nothingYet: 'No sum yet: some lines are still open',
  withTax: (net: string, percent: string, tax: string): string => `${net} plus ${percent} tax (${tax}).`,
  noTax: 'No tax is added: the contract names none.',
  toSettleCount: (count: number): string =>
    count === 1 ? '1 line is still to be settled.' : `${count} lines are still to be settled.`,
  openCount: (count: number): string =>
    count === 1
      ? '1 line is open because something is missing.'
      : `${count} lines are open because something is missing.`,
  noHandOut:
    'There is no hand-out walk of this machine on this phone. What is broken now can be listed, but not that it happened during this hire: nothing is charged for it unless both sides agree. Wear cannot be charged at all.',
  noHandOutOnRecord:
    'No hand-out walk is on record: nothing shows that what is broken now happened during this hire, and wear cannot be charged. Nothing is charged unless both sides agree.',
  noHandOutInFile:
    'There is no hand-out walk of this machine in the file: nothing shows that what is broken now happened during this hire, and wear cannot be charged. Nothing is charged unless both sides agree.',
  noContract:
    'There is no contract on this phone. Enter what was agreed: without it damage is listed, and nothing has a price.',
  contractGone:
    'The contract that this walk names is not on this phone. Bring it over first: no other contract stands in for it.',
  needsContract: 'To charge this, enter the contract first: an amount needs its currency.',
  anew: (sum: string): string =>
    `Worked out anew: something it leans on was changed after it was signed. What was signed is ${sum} to pay.`,
  noContractOnRecord: 'No contract is on record: damage is listed, and nothing has a price.',
  enterContract: 'Enter the contract',
  contract: 'The contract',
  damageOnly: 'By this contract damage is charged, and wear is not.',
  damageAndWear: 'By this contract damage is charged, and wear beyond what the hours allow.',
  hours: (hours: string, basis: string): string => `Hours of this hire: ${hours} (${basis}).`,
  tooShort: (part: string, usual: string, within: string): string =>
    `${part}: in so short a hire usual wear is about ${usual} of its life, and the readings can be off by ${within}. Wear can only be charged when it is far more than usual.`,
  otherSheet:
    'The limit sheet was changed since the machine went out. Both walks are reckoned by the sheet of the return: see whether it suits both sides.',
  otherGround: (ground: string): string =>
    `The machine worked on ground that the contract does not permit: ${ground}.`,

  charged: 'What is charged',
  toSettle: 'To be settled between you',
  missing: 'Open: something is missing',
  notCharged: 'What is not charged, and why',
  nothingCharged: 'Nothing is charged.',
  ownerSide: 'Considered on the owner’s side',
  ownerSideLine:
    'Faults of the machine itself can wear and break a track. These were found, and the lines that they may have caused are not charged until somebody settles them.',
  ownerNone: 'No fault of the machine was found that could have caused wear or damage.',
  foundAt: { 'hand-out': 'found at hand-out', return: 'found at return' },

  damageOf: (place: string): string => `${place}: damage`,
  unclearOf: (place: string): string => `${place}: wear or damage`,
  wearOf: (place: string): string => `${place}: wear`,
  atHandOut: 'At hand-out',
  atReturn: 'At return',
  sound: 'looked at, no damage',
  wasThere: 'the same damage was there',
  worse: (was: string): string => `not sound then: ${was}`,
  notLooked: 'not looked at, or not all round',
  noWalk: 'no hand-out walk',
  crack: 'crack that shows the cord',
  crackBefore: 'a crack',
  readings: (sizes: string, percent: string): string => `${sizes} – ${percent} worn`,
  used: 'Used during the hire',
  within: (percent: string, off: string): string => `${percent} of its life, ± ${off}`,
  allowed: 'Allowed for the hours',
  beyond: 'Beyond that',
  whyDamage: 'Why this is damage and not wear',
  left: 'Life left before the damage',
  leftFrom: {
    readings: 'by the readings at return',
    hours: 'by its hours and standard life, an estimate',
    repair: 'a repair, which takes no life away',
  } satisfies Record<LeftFrom, string>,
  cutOff: (percent: string): string => `worth nothing from ${percent} left`,
  price: 'Price of a new one',
  repairPrice: 'Price of the repair',
  each: (count: number, price: string): string => `${count} × ${price}`,
  priceFrom: 'The price is from',
  life: 'Standard life',
  toDo: 'To put it right',
  reckoned: 'Reckoned as',
  percentOf: (percent: string): string => `${percent} % of the price`,
  reckonedExcess: (percent: string): string => `${percent}: what was used beyond the allowance`,
  reckonedCapped: (percent: string): string => `${percent}: no more than the part was worth at hand-out`,
  reckonedLeft: (percent: string, left: string, cutOff: string): string =>
    `${percent}: (${left} % life left − ${cutOff} % that counts as nothing) ÷ (100 % − ${cutOff} %)`,
  amount: 'Amount',
  part: (amount: string): string => `part ${amount}`,
  labour: (amount: string): string => `labour ${amount}`,
  causedBy: 'May have been caused by',
  agreed: (why: string): string => (why === '' ? 'Entered as agreed.' : `Agreed: ${why}`),
  droppedBy: (why: string): string =>
    why === '' ? 'Entered as agreed: not charged.' : `Not charged: ${why}`,

  pairOut: 'At hand-out',
  pairBack: 'At return',
  noPair: 'There is no photo of this place.',
  noPairOut: 'There is no photo from the hand-out.',
  noPairBack: 'There is no photo from the return.',
  takeNow: 'Take one before the renter leaves.',
  altOut: (what: string): string => `${what}, at hand-out`,
  altBack: (what: string): string => `${what}, at return`,

  settleAsk: 'What do you agree on?',
  chargeIt: 'It is charged',
  leaveIt: 'It is not charged',
  settleWhy: 'Why (both will read it)',
  settleAmount: (currency: string): string => `Amount agreed, ${currency}`,
  needsAmount: 'This line has no amount of its own: enter what you agree on.',
  undoSettle: 'Open it again',
  settled: 'Settled.',

  haulage: 'Haulage',
  haulageFrom: (amount: string, source: string): string => (source === '' ? amount : `${amount} (${source})`),
  net: 'Sum',
  tax: (percent: string): string => `Tax, ${percent}`,
  gross: 'To pay',
  rounded: 'Each amount is worked out exactly, and the sum is rounded once.',

  sign: 'Sign',
  page: 'Page and PDF',
  back: 'Charge list',

  pageTitle: (machine: string): string => `Charge list, ${machine}`,
  running: (machine: string, day: string): string => `Charge list, ${machine}${day === '' ? '' : `, ${day}`}`,
  invented: 'This machine and everything about it is invented.',
  parties: 'Who and what',
  owner: 'Owner',
  renter: 'Renter',
  number: 'Contract number',
  clause: 'Clause',
  from: 'Hire began on',
  to: 'Hire ended on',
  machine: 'Machine',
  pin: 'PIN',
  meterOut: 'Hour meter at hand-out',
  meterBack: 'Hour meter at return',
  walks: 'Both walks',
  walkOut: 'Hand-out walk',
  walkBack: 'Return walk',
  sealed: (when: string, print: string): string => `${when}, sealed, fingerprint ${print}`,
  unsealed: (when: string): string => `${when}, not sealed`,
  walkedBy: (who: string): string => `by ${who}`,
  sums: 'Sums',
  dates: 'Dates',
  plateAndMeter: 'Plate and hour meter',
  replyBy: 'Objections are heard until',
  replyDays: (days: number): string => `${daysText(days)} after it is signed`,
  keptUntil: 'Parts taken off are kept until',
  keptDays: (days: number): string => `${daysText(days)} after they are taken off`,
  signatures: 'Signatures',
  nobody: 'Nobody has signed yet.',
  objectHow: 'Whoever does not agree signs with an objection. It is kept with the list in their own words.',
  aid: 'This list is worked out from readings, their uncertainty and the contract. The contract and local law decide. Amounts from estimated prices are estimates.',
  heads: { line: 'Line', used: 'Used', off: '±', allowed: 'Allowed', why: 'Why', amount: 'Amount' },
} as const;

/** Whose hours count. */
export const basisWords: Readonly<Record<(typeof hourBases)[number], string>> = {
  billed: 'hours billed',
  meter: 'by the hour meter',
  included: 'hours that the hire includes',
};

/** Why the hours are not known. */
export const hoursOpenWords = {
  'not-entered': 'The hours of the hire are not in the contract.',
  'no-meter': 'The hour meter was not read on both walks.',
  'meter-went-back': 'The hour meter shows less at return than at hand-out.',
} as const;

/** Why a line is not charged. */
export const notChargedWords: Readonly<Record<NotCharged, string>> = {
  'was-there': 'It was there when the machine went out.',
  waived: 'The contract leaves this out.',
  'wear-not-agreed': 'The contract does not charge wear.',
  'within-allowance': 'It is no more than the hours allow.',
  'within-uncertainty': 'It is more than the hours allow, but by less than the readings can tell.',
  'nothing-left': 'The part had no value left.',
  settled: 'Both sides settled it.',
};

/** Why a line is open, and what settles it. */
export const chargeOpenWords: Readonly<Record<ChargeOpen, string>> = {
  'no-hand-out': 'Without a hand-out walk nobody can show that it was sound before.',
  'not-looked-at': 'It was not looked at, or not all round, when the machine went out.',
  'got-worse': 'It was not sound when the machine went out, and is worse now.',
  'owner-side': 'A fault of the machine may have caused it.',
  'no-price': 'The contract has no price for it.',
  'no-life': 'The contract has no standard life for it.',
  'no-hours': 'The hours of the hire are not known.',
  'value-left': 'How much of its life was left is not known.',
  'wear-or-damage': 'This may be wear or damage: settle it between you.',
  'not-measured-before': 'It was not measured at the same places when the machine went out.',
  'not-measured-now': 'It was not measured at the same places at return.',
  'no-sheet': 'The new and limit sizes are not known.',
  clash: 'Two people noted different things there, and nobody has said which is right.',
  'measured-better':
    'It measures better at return than at hand-out, by more than the readings can be off. Was it renewed meanwhile, or measured at another place?',
  'vague-sheet': 'The new and limit sizes are too uncertain to charge by.',
};
