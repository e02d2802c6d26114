import type { AskedSign } from '../../core/appraisal-settings.ts';
import type { MeterSays } from '../../core/appraisal-meter.ts';
import type { JobKind } from '../../core/job-kinds.ts';

/** What an undercarriage is worth in a sale: on the screen, and on the page that both sides read. */
export const appraisal = {
  title: 'Appraisal',
  forMachine: (name: string): string => `Undercarriage appraisal: ${name}`,
  running: (name: string, day: string): string => `${name}, undercarriage appraisal, ${day}`,
  working: 'Working out the sums …',
  failed: 'The sums could not be worked out: this phone’s storage did not answer.',
  page: 'Page for both sides',
  notAppraisal: 'This walk was made for another purpose. The sums hold all the same.',
  sealedNow: 'This walk is sealed with the choices it had then. What you change here is not kept.',

  deduct: 'Deduct now',
  spend: (hours: string): string => `Spend in the next ${hours}`,
  value: 'Value left',
  nothing: 'Nothing found to deduct',
  nothingSoFar: 'Nothing found so far',
  atLeast: (money: string): string => `at least ${money}`,
  about: (money: string): string => `about ${money}`,
  ranged: (middle: string, low: string, high: string): string => `about ${middle} (${low} to ${high})`,
  open: 'Open',
  deductMeans: (percent: string): string =>
    `What it costs, parts fitted, until nothing needs repair and every measured part has at least ${percent} of its life left.`,
  deductLess: (count: number): string =>
    count === 1 ? 'One job has no price and is not in it.' : `${count} jobs have no price and are not in it.`,
  deductClose: (count: number, percent: string, money: string): string =>
    count === 1
      ? `One part may just as well have less than ${percent} left: so large is the error of its reading. It would add about ${money}. Read it again before you agree.`
      : `${count} parts may just as well have less than ${percent} left: so large are the errors of their readings. They would add up to about ${money}. Read them again before you agree.`,
  deductUnread: 'No sum without readings and prices.',
  deductUnseen: 'Not everything was seen: see “Not verified”.',
  spendMeans: 'What the plan expects, with what is due now, standing still, and the chance of breakdowns.',
  spendLess: 'Jobs without a price and parts without hours left are not in it.',
  spendUnread: 'No sum without prices, and wear and meter readings.',
  spendBoth: 'Work that is deducted now is in here too: do not add the two.',
  valueMeans:
    'Share of life left of what the measured parts cost fitted. In eight of ten cases the real value lies in the range.',
  valueFrom: (wear: string, price: string): string =>
    `If only the readings could be off: ${wear}. If only the prices: ${price}.`,
  valueNone: 'Nothing was measured that has a price.',
  valueLess: 'Parts that were not measured are not in it.',
  between: (low: string, high: string): string => `${low} to ${high}`,
  estimate: 'All sums are estimates. No tax is in them.',

  worst: (side: string): string => `Worst part, ${side}`,
  worstNone: 'nothing read on this side',

  deductLines: 'What is deducted, and why',
  deductNone: 'No call asks for work, and no measured part has too little left.',
  inShort: 'In short',
  amounts: (currency: string): string => `Amounts in ${currency}`,
  seller: 'Seller',
  buyer: 'Buyer',
  read: 'Read by',
  what: 'What',
  why: 'Why',
  estimated: (amount: string): string => `${amount} (estimate)`,
  parts: 'Parts',
  labour: 'Labour',
  sum: 'In all',
  setUp: 'Call-out, lifting, tracks off, each once',
  notStanding: 'Standing still is not counted here: the machine is for sale.',
  called: (item: string, place: string, call: string): string => `${item}, ${place}: ${call}`,
  shortOf: (item: string, place: string, left: string, wanted: string): string =>
    `${item}, ${place}: ${left} left, less than ${wanted}`,
  shortHours: (item: string, place: string, hours: string): string =>
    `${item}, ${place}: due within ${hours}`,
  row: 'One of the row is worn, so the whole row counts.',
  instead: 'Renewing costs less than mending all that was found.',
  close:
    'It may just as well be on the other side of that percentage: so large is the error of the reading. Read it again before you agree.',
  noPriceYet: 'no price',

  valueLines: 'What the parts are worth as they are',
  leftOf: (left: string, low: string, high: string): string => `${left} left (${low} to ${high})`,
  asItIs: (fresh: string, low: string, high: string): string =>
    `New and fitted ${fresh}; as it is ${low} to ${high}`,
  byWorst: (item: string, place: string): string => `by ${item}, ${place}`,
  dragged: 'The row counts as its worst part.',
  worthless: (percent: string): string => `Under ${percent} left it counts as nothing.`,
  counted: (what: string, count: number): string => (count > 1 ? `${what} (${count})` : what),
  on: (what: string, side: string): string => `${what}, ${side}`,

  valueOpen: 'No value put on',
  valueOpenNone: 'Every part that wears has a value.',
  byEye: 'Judged by eye alone. It counts neither for nor against, unless a call asks for work.',
  unread: (items: string): string => `Not measured: ${items}. Measure it, or agree on it by eye.`,
  noLimit: (items: string): string => `No limit for ${items}. Choose a limit sheet that has one.`,

  stated: 'To bring it to a condition',
  statedPercent: (percent: string): string => `At least ${percent} left of every measured part`,
  statedKind: (kind: string, percent: string): string => `${kind}: ${percent}`,
  statedHours: (hours: string): string => `Nothing measured due within ${hours}`,
  statedSays: (what: string, money: string): string => `${what}: ${money}.`,
  statedNothing: 'it is so already',
  statedSoFar: 'what was measured is so already',
  statedUnknown: (items: string): string => `Not known for: ${items}.`,
  statedNever: (items: string): string => `New ones do not usually last so long: ${items}.`,
  statedIn: 'What is deducted now is part of it.',

  spendLines: 'What the spend is made of',
  spendIn: (hours: string): string => `in ${hours}`,
  spendNow: 'now',
  spendBreaks: (chance: string): string => `${chance} chance that it breaks down first`,
  spendLater: (chance: string): string => `not planned within that; ${chance} chance that it breaks down`,
  spendPlanned: (money: string, more: string): string =>
    `If all goes as planned ${money}; the chance of breakdowns adds ${more}.`,
  spendLessRisk: (money: string): string => `If all goes as planned ${money}.`,
  spendNone: 'Nothing is planned in these hours.',
  spendCuts: (share: string): string =>
    `Not in it: about ${share} of such tracks are lost to cuts and broken cores in these hours, whatever their wear (estimate).`,

  meter: 'Hour meter against wear',
  meterParts: (
    item: string,
    place: string,
    percent: string,
    hours: string,
    low: string,
    high: string,
  ): string =>
    `${item}, ${place}: ${percent} worn after ${hours}; such parts take ${low} to ${high} for that.`,
  meterShare: (one: string): string => `About 1 in ${one} such machines would be as far off.`,
  meterFew: 'Fewer than 1 in 1,000 such machines would be as far off.',
  meterUnknown: 'Nobody knows when these parts were fitted: reckoned as if they were the first.',
  meterChanged: 'A change of meters is on record; hours are counted on.',
  meterTooFast: 'The meter ran faster than the calendar between two walks.',
  meterBack: 'The meter reads less than on an earlier walk.',
  meterNoHours: 'No meter reading. Read the meter.',

  signs: 'Warning signs',
  signsNone: 'None found in what was looked at.',
  notVerified: 'Not verified',
  allVerified: 'Everything this walk asks for was verified.',
  lookFor: 'Look for these',
  lookLine: 'No reading tells them. Say what you saw.',
  yes: 'Seen',
  no: 'Not there',
  notLooked: (what: string): string => `Nobody looked for: ${what}`,

  choices: 'What the sums lean on',
  saleable: 'Too worn to sell below, percent left',
  saleableHint:
    'A part with less counts as nothing and is deducted. A quarter is common practice, no source.',
  sets: 'Rows of like parts',
  setsWorst: 'Count as the worst one',
  setsEach: 'Each by itself',
  hours: 'Hours ahead',
  hoursHint: (most: string): string => `1 h to ${most}, as far as the plan looks.`,
  priceSpread: 'Estimated prices may be off by, percent',
  priceSpreadHint: 'In eight of ten cases. Prices that you entered count as they are. Our estimate.',
  condition: 'Condition to bring it to',
  byPercent: 'So much left',
  byHours: 'Nothing due for',
  percentLeft: 'Percent left of every part',
  percentOf: (kind: string): string => `Percent left, ${kind}`,
  sameAsAll: 'Empty: as every part',
  noDue: 'Hours without anything due',
  outOf: (least: string, most: string): string => `Choose ${least} to ${most}.`,

  saw: 'What was seen',
  basis: 'How it is worked out',
  basisLines: [
    'Deduct now: parts and labour of all work that a call asks for, and of renewing each measured part with too little left; call-out, lifting and taking tracks off once.',
    'Value left: installed price × percent left. A part that is deducted as new has no value left, so nothing counts twice.',
    'Range: wear readings err each by itself, estimated prices err together; it holds eight of ten.',
    'A chain is as good as its worst measure: all of them have to be read.',
    'Buyer and seller read the same page. It takes no side, and it is no offer.',
  ],
} as const;

/** Parts as a price names them. */
export const partWords: Readonly<Partial<Record<JobKind, string>>> = {
  'renew-track': 'track',
  'renew-chain': 'chain',
  'renew-shoes': 'shoes',
  'renew-pads': 'pads',
  'renew-sprocket': 'sprocket',
  'renew-idler': 'idler',
  'renew-bottom-roller': 'bottom rollers',
  'renew-carrier-roller': 'carrier rollers',
  'renew-slide-plate': 'slide plate',
};

export const meterSaysWords: Readonly<Record<MeterSays, string>> = {
  plausible: 'The wear fits the hours.',
  low: 'The meter seems low: so much wear is rarely seen in so few hours. Ask for service papers; hard use or used parts would explain it too.',
  high: 'The meter seems high: so little wear is rarely seen after so many hours. Check when the parts were fitted, and the limit sheet.',
  renewed:
    'Less wear than the hours would make: the parts have probably been renewed. Ask when, and for the bill.',
  open: 'Open: there is no wear and no meter reading to compare.',
};

export const askedSignWords: Readonly<Record<AskedSign, string>> = {
  'fresh-paint': 'fresh paint on worn parts',
  'built-up-teeth': 'sprocket teeth built up by welding',
  'removed-link': 'a link taken out to get the track tight again',
  'unknown-tracks': 'new tracks of no known make',
  'fresh-oil': 'fresh oil in a final drive that nobody can explain',
};

export const signWords = {
  meter: {
    low: 'The meter seems low for the wear',
    high: 'The meter seems high for the wear',
    changed: 'The meter was changed',
    back: 'The meter reads less than before',
    'too-fast': 'The meter ran faster than the calendar',
  },
  'shoes-on-old-chain': (side: string, newer: string, older: string): string =>
    `New shoes on an old chain, ${side}: ${newer} left against ${older}`,
  'tracks-on-worn-sprocket': (side: string, newer: string): string =>
    `New track on a worn sprocket, ${side}: ${newer} left; the sprocket wears it fast`,
  'adjuster-pumped': (side: string, travel: string): string =>
    `Adjuster pumped out, ${side}: sag is right and adjuster travel is “${travel}”; the chain or track has grown`,
  'ages-differ': (left: string, right: string): string =>
    `The tracks differ in age: ${left} years on the left, ${right} on the right`,
  'sides-differ': (item: string, left: string, right: string): string =>
    `${item} differs between the sides: ${left} left on the left, ${right} on the right`,
} as const;
