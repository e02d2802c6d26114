import type { JobKind } from '../../core/job-kinds.ts';
import type { NeighbourEffect, NotFeasible } from '../../core/mend.ts';

/** What lies ahead: hours left, the job plan, and mending or renewing. */
export const ahead = {
  now: (what: string, money: string): string => `Now: ${what}, about ${money}.`,
  by: (when: string, what: string, money: string): string => `By ${when}: ${what}, about ${money}.`,
  thenBy: (when: string, what: string, money: string): string => `Then by ${when}: ${what}, about ${money}.`,
  nothing: (hours: string): string => `Nothing that was measured has to be renewed within ${hours}.`,
  nothingFirst: (hours: string, part: string, left: string): string =>
    `Nothing that was measured has to be renewed within ${hours}; the first to wear out is ${part}, ${left}.`,
  someOpen: (count: number): string =>
    count === 1
      ? 'One measured part is not in this: its hours left are open, see below.'
      : `${count} measured parts are not in this: their hours left are open, see below.`,
  noFigures: 'Hours left are open: nothing measured on this walk has a figure yet.',
  costsOpen: (why: string): string => `What it costs is open: ${why}`,
  allEstimate: 'Money and hours are estimates; what they come from stands beside each.',
  atMeter: (meter: string): string => `${meter} on the meter`,
  byThen: (when: string): string => `By ${when}`,
  inHours: (hours: string): string => `in about ${hours}`,
  onDate: (date: string): string => `around ${date}`,

  hours: 'Hours left',
  about: (middle: string): string => `about ${middle}`,
  between: (low: string, high: string): string => `${low} to ${high}`,
  beyond: (hours: string): string => `beyond ${hours}`,
  openAbove: (low: string, hours: string): string =>
    `${low} at least; the upper end is open, beyond ${hours}`,
  worn: 'worn out now',
  wornPercent: (percent: string): string => `${percent} worn in the mean`,
  eightOfTen: 'Eight of ten such parts wear out within the range; the mark is the middle. An estimate.',
  clockEngine: 'Counted in engine hours.',
  clockTravel: (share: string): string =>
    `Counted by travel hours, shown as engine hours: this machine travels ${share} of them.`,
  learnt: 'Paces learnt from this fleet’s own histories where it has ten of a kind.',
  moreParts: (count: number): string => (count === 1 ? '1 more part' : `${count} more parts`),
  openParts: (names: readonly string[]): string =>
    `${names.slice(0, 4).join('; ')}${names.length > 4 ? ' …' : ''}:`,
  fromBook: 'Paces from books until this fleet has ten histories of a kind.',
  ladderLabel: (part: string, text: string): string => `${part}: ${text}`,
  damage: (share: string, hours: string): string =>
    `All this holds if nothing cuts it: cuts and broken cores end about ${share} of such tracks within ${hours}, an estimate by ground.`,
  damageLearnt: (share: string, hours: string): string =>
    `All this holds if nothing cuts it: by the breakages of this fleet about ${share} of such tracks are ended within ${hours}.`,
  age: (years: string): string =>
    `Rubber is given up at about ${years} years whatever its wear: an estimate.`,
  ageLeft: (years: string): string => `By age about ${years} years are left.`,
  history: 'Wear history',

  basis: 'Where this comes from',
  basisReadings: 'Readings: the mean of the places read, while a call goes by the worst of them',
  basisRow: (date: string, hours: string, size: string, percent: string): string =>
    `${date}, ${hours}: ${size}, ${percent}`,
  basisSheet: (fresh: string, limit: string): string => `New ${fresh}, limit ${limit}`,
  basisWorn: 'Percent worn = 100 × (new − read) / (new − limit); ± is twice the standard uncertainty.',
  basisRate: (low: string, high: string): string => `Life of such parts: ${low} to ${high}`,
  basisPace: (percent: string): string => `Its own pace so far: ${percent} in 100 h`,
  basisModel:
    'Wear goes on at its pace with some scatter; the hours left are those until it first reaches 100 %, over all paces that the readings and the life figure allow.',
  basisLine: (hours: string): string =>
    `For comparison: a straight line through its own readings alone reaches 100 % in ${hours}.`,
  basisLineBand: (hours: string, low: string, high: string): string =>
    `For comparison: a straight line through its own readings alone reaches 100 % in ${hours}; 95 of 100 further readings would do so between ${low} and ${high}.`,
  basisScatter: 'Scatter of wear',
  basisReading: 'Error of placing the tool',
  fittedUnknown: 'When it was fitted is not known, so the first reading says nothing of the pace.',

  plan: 'Job plan',
  visitNow: 'At this visit',
  visitAt: (meter: string, hours: string): string => `At ${meter} on the meter, in ${hours}`,
  outlay: (money: string): string => `about ${money} in all`,
  setUp: (money: string): string =>
    `of it ${money} for call-out, lifting and taking tracks off, once for all`,
  parts: 'Parts',
  labour: (hours: string): string => `Labour, ${hours}`,
  downtime: 'Standing still',
  asked: (call: string): string => `asked for by the call: ${call}`,
  due: (text: string): string => `wears out in ${text}`,
  later: 'Left for later',
  laterLine: (hours: string): string => `Costs less when left beyond ${hours}.`,
  noJobs: 'No job within the horizon.',
  saves: (money: string, hours: string, other: string): string =>
    `Saves about ${money} over ${hours} against doing ${other}.`,
  savesNothing: (other: string): string => `Costs the same as doing ${other}.`,
  reckoned:
    'Reckoned for each plan: parts, labour and standing still at each visit; what is set up, once a visit; the chance that a part fails before its visit, times what that costs; less what new parts have left at the end.',
  everythingNow: 'everything now',
  eachWhenDue: 'each when it is due',
  kept: 'The plan of the last walk is kept: changing it would save 1 % or less.',
  notExact: (money: string): string =>
    `More jobs than can be searched through; no plan costs less than ${money}.`,
  openJobs: 'Not in the plan',
  heldOff: 'You left it out.',
  noVisit: 'No visit lies where you hold it.',
  noPrice: (job: string): string => `The price list has no line for it: ${job}. Add one.`,
  noPrices: 'No price list fits this machine. Choose one on the machine.',
  noRates: 'No rates fit this machine. Choose some on the machine.',
  twoCurrencies: (a: string, b: string): string => `Prices are in ${a}, rates in ${b}; sums are never mixed.`,
  notHere: 'The prices that this machine names are not on this phone. Import them or choose others.',
  newerPrices: 'The prices were saved by a newer version. Update the app.',
  pricesFrom: (prices: string, rates: string): string => `Prices: ${prices}. Rates: ${rates}.`,
  changePrices: 'Prices',
  changeRates: 'Rates',
  hold: 'Fix',
  holdHere: 'Keep at this visit',
  holdNow: 'Do it now',
  holdOut: 'Leave it out',
  holdFree: 'Let the plan choose',
  isHeld: 'fixed by you',

  mend: 'Mend or renew',
  perHour: (money: string): string => `${money} for each hour gained`,
  gains: (hours: string, money: string): string => `gains about ${hours} for about ${money}`,
  closed: 'Not open',
  wrong: 'If the call is wrong',
  wrongLate: (what: string, chance: string, money: string): string =>
    `To leave ${what}: in about ${chance} of cases it fails before the next visit, which costs about ${money} more.`,
  wrongEarly: (what: string, money: string): string =>
    `To ${what} now: the life thrown away is worth about ${money}.`,
  wrongLittle: 'No call of the plan costs much if it turns out wrong before the next visit.',
  worth: (item: string, place: string, money: string): string =>
    `The reading most worth taking again: ${item}, ${place}. Expected to save about ${money}.`,
  worthNothing: 'No reading taken again would change the plan enough to matter.',
  joined: (list: readonly string[]): string =>
    list.length < 2 ? list.join('') : `${list.slice(0, -1).join(', ')} and ${list.at(-1) ?? ''}`,
  both: (what: string): string => `${what}, both sides`,
  onSide: (what: string, side: string): string => `${what}, ${side}`,
  counted: (what: string, count: number): string => (count > 1 ? `${what} (${count})` : what),
} as const;

/** Each kind of job as something that is done. */
export const jobWords: Readonly<Record<JobKind, string>> = {
  'renew-track': 'renew the track',
  'renew-chain': 'renew the chain',
  'turn-bushings': 'turn pins and bushings',
  'change-link': 'change the link',
  'renew-shoes': 'renew the shoes',
  regrouser: 'build up the grousers',
  'renew-pads': 'renew the pads',
  'renew-sprocket': 'renew the sprocket',
  'renew-idler': 'renew the idler',
  'renew-bottom-roller': 'renew bottom rollers',
  'renew-carrier-roller': 'renew carrier rollers',
  'renew-slide-plate': 'renew the slide plate',
  'mend-adjuster': 'mend the adjuster',
  'renew-spring': 'renew the recoil spring',
  'swap-sides': 'swap the sides',
  'mend-motor': 'mend the drive motor',
  'mend-frame': 'mend the track frame',
  'mend-suspension': 'mend the suspension',
  'tighten-bolts': 'renew and tighten bolts',
  'adjust-sag': 'adjust the sag',
  'mend-other': 'repair what was found',
};

export const notFeasibleWords: Readonly<Record<NotFeasible, string>> = {
  'turned-before': 'pins and bushings were turned once already',
  'turned-unknown': 'whether they were turned before was not looked at',
  'joints-dry': 'joints are dry',
  'bushing-cracked': 'a bushing is cracked',
  'links-short': 'the links would not outlast turned bushings',
  'several-links': 'several links are cracked: the chain goes',
  'no-price': 'the price list has no line for it',
  'buys-nothing': 'it buys no hours over leaving the part',
};

export const effectWords: Readonly<Record<NeighbourEffect, string>> = {
  'worn-sprocket-eats-track':
    'The sprocket is worn and would wear the new one faster; reckoned with a shorter life. Renew both together.',
  'tread-runs-backwards':
    'Each side then wears at the other’s pace; a tread with a direction runs backwards.',
  'one-roller-carries-all': 'Beside rollers worn much lower a new one carries all the load.',
  'links-limit-turning': 'The links wear out before turned bushings would.',
  'press-needed': 'Needs a press or a repair link, and breaks a sealed joint.',
  'chain-limits-shoes': 'The chain wears out before the shoes would.',
};
