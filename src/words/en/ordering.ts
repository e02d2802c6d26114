import type { FactDoubt, FactFrom } from '../../core/part-facts.ts';
import type { FactName, PartKind } from '../../core/part-kinds.ts';

/** Parts to order: the list, what a parts desk must know, and where it comes from. */
export const ordering = {
  title: 'Parts to order',
  line: 'From the verdict and the job plan: what is needed, by when, and what a parts desk asks.',
  nothing: 'Nothing that was found asks for a part, and nothing planned needs one.',
  failed: 'The job plan could not be worked out, so there is no list. Try again.',
  demo: 'This is the demo. Its machines are invented, so no table of it leaves the phone.',
  now: 'For now',
  by: (when: string): string => `By ${when}`,
  later: 'Asked for, but the plan leaves it for later',
  unplanned: (why: string): string => `Without a visit. ${why}`,

  machine: 'The machine',
  model: 'Maker and model',
  pinAsk: 'Whole PIN or serial number, every character as on the plate',
  pinMissing: 'The PIN is missing. A parts desk looks the machine up by it: read it off the plate.',
  pinSave: 'Save the PIN',
  pinSaved: 'PIN saved on this phone',

  toLook: (count: number): string =>
    count === 1
      ? 'One thing to go and look at now. Read it off the old part before it goes to scrap.'
      : `${count} things to go and look at now. Read them off the old parts before they go to scrap.`,
  allKnown: 'Everything a parts desk asks for is known.',
  lookNow: (count: number): string => (count === 1 ? 'Look at 1 thing' : `Look at ${count} things`),
  known: (known: number, all: number): string => `${known} of ${all} facts known`,

  side: (part: string, side: string): string => `${part}, ${side}`,
  sideNumbers: (part: string, side: string, numbers: string): string => `${part}, ${side} ${numbers}`,
  howMany: (count: string): string => `How many: ${count}`,
  count: 'How many',
  toCount: 'to be counted',
  more: 'Part number and how many',
  countHint: (counted: string): string => `Leave it empty for what is worked out: ${counted}`,
  countedOpen: 'not known',
  because: (job: string, why: string): string => `To ${job}: ${why}`,
  found: (call: string, item: string, state: string): string => `${call}, ${item}: ${state}`,
  wears: (item: string, left: string): string => `${item} wears out in ${left}`,
  goesWith: 'Goes with it, not worn itself.',
  wornSprocket:
    'The sprocket on this side is worn: a new track on it wears faster. Ask whether to order both.',

  partNumber: 'Part number, if you have one',
  match: 'Must match the old part',
  matchLine: 'Same make and kind as the one that comes off',
  out: 'Leave it out',
  putIn: 'Put it in again',
  isOut: 'Left out by you; not on the page and not in the table.',
  facts: 'What the parts desk must know',

  partless: 'Work that takes no part',
  save: 'Save and next',
  howAsk: 'How do you know?',
  spaces: 'Spaces measured over',
  spacesHint: 'between the first and last centre',
  first: 'First',
  second: 'Second',
  bothCounts:
    'Count twice, each time from a mark that you make at another place. One link wrong and it does not fit.',
  stand:
    'Engine off, key out, tag on the controls. Hands out of pinch points. Never under a raised machine that is not blocked. If the track must turn: two people, nobody in reach.',
  noneThere: 'Choose one, or go back.',
  typeText: 'Type what you read, or go back.',
  giveOrTake: (size: string, by: string): string => `${size}, give or take ${by}`,
  overSpaces: (size: string, spaces: number): string =>
    spaces === 1 ? `${size}, over 1 space` : `${size}, over ${spaces} spaces`,
  countedTwice: (first: number, second: number): string =>
    first === second ? `${first}, counted twice` : `${first} and ${second}`,
  alsoIn: (mm: string, other: string): string => `${mm} (${other})`,
  cleared: 'Entry deleted',
  clear: 'Delete this entry',

  page: 'Page to print or send',
  table: 'A table for a spreadsheet',
  tableLine: 'A row for each fact of each part. Numbers as numbers, lengths in millimetres.',
  working: 'Putting the table together …',
  saveTable: 'Save the table',
  shareTable: 'Share the table',
  notMade: 'The table could not be made. Nothing was changed; try it once more.',
  tableName: 'parts to order',
  back: 'Parts to order',
  saved: 'Saved on this phone',
} as const;

/** Every kind of part, as it is ordered. */
export const partNames: Readonly<Record<PartKind, string>> = {
  'rubber-track': 'rubber track',
  chain: 'track chain',
  'chain-link': 'links of the chain',
  'master-joint': 'master pin or link',
  'joint-seals': 'set of seals for the chain joints',
  shoe: 'shoes',
  shoes: 'all shoes',
  'shoe-bolts': 'bolts and nuts of the shoes',
  pad: 'pads',
  pads: 'all pads',
  'pad-bolts': 'bolts of the pads',
  sprocket: 'sprocket',
  'sprocket-bolts': 'bolts of the sprocket',
  idler: 'idler',
  'idler-guides': 'guides of the idler',
  'bottom-roller': 'bottom roller',
  'roller-bolts': 'bolts of the bottom rollers',
  'carrier-roller': 'carrier roller',
  'slide-plate': 'slide plate',
  'adjuster-seals': 'set of seals for the adjuster',
  'grease-valve': 'grease valve of the adjuster',
  'recoil-spring': 'recoil spring',
  'motor-seals': 'set of oil seals for the travel motor',
  'motor-bolts': 'bolts of the travel motor',
  'suspension-arm': 'arms of the suspension',
  guard: 'guards',
  other: 'part that was found',
};

interface FactWords {
  readonly name: string;
  /** Where to look and how. */
  readonly ask: string;
  readonly choices?: Readonly<Record<string, string>>;
}

/** What guides, joints and masters look like is from memory. */
export const factWords: Readonly<Record<FactName, FactWords>> = {
  moulding: {
    name: 'size as moulded or stamped',
    ask: 'Copy all of it, with every letter and mark after the numbers: the suffix says what fits.',
  },
  width: { name: 'width', ask: 'Edge to edge, square to the way it runs; not over the lugs inside.' },
  pitch: {
    name: 'pitch',
    ask: 'Centre of one lug, core or pin to the centre of another several spaces on. Count the spaces, not the lugs.',
  },
  'pitch-new': { name: 'pitch when new', ask: 'A worn chain measures longer. From the manual or the stamp.' },
  links: { name: 'number of links', ask: 'Once round the loop: every core, drive lug or link.' },
  guide: {
    name: 'guides',
    ask: 'Look at the inner face where the rollers run: where do the guide lugs stand?',
    choices: {
      inner: 'inner guide: the roller runs between the lugs',
      outer: 'outer guide: the roller flanges run outside the lugs',
      offset: 'lugs set off to one side',
      none: 'one row of drive lugs in the middle, no others',
    },
  },
  'across-guides': {
    name: 'across the guide lugs',
    ask: 'Over both rows of lugs, from outside to outside, at their foot.',
  },
  'rollers-on': {
    name: 'what the rollers run on',
    ask: 'Look where the inner face is polished.',
    choices: { core: 'on the steel cores', rubber: 'on the rubber' },
  },
  cored: {
    name: 'cores',
    ask: 'Are there steel cores that the sprocket takes hold of?',
    choices: { cored: 'steel cores', coreless: 'no cores: rubber drive lugs' },
  },
  tread: {
    name: 'tread',
    ask: 'What do the lugs look like?',
    choices: {
      blocks: 'blocks, staggered',
      'c-lugs': 'C-shaped lugs',
      'zig-zag': 'zig-zag bars',
      'straight-bars': 'straight bars',
      'multi-bars': 'many low bars',
      turf: 'turf: flat and fine',
      smooth: 'smooth',
      other: 'another',
    },
  },
  joint: {
    name: 'joints',
    ask: 'How are pins and bushings kept from running dry?',
    choices: {
      sealed: 'sealed and oiled: a plug in each pin',
      greased: 'sealed and greased: no plug',
      dry: 'dry: no seals',
    },
  },
  bushing: { name: 'bushing diameter', ask: 'With a caliper, where it is least worn.' },
  'bushing-new': { name: 'bushing diameter when new', ask: 'From the manual: a worn one measures less.' },
  master: {
    name: 'how the chain is closed',
    ask: 'Find the joint that looks different from the others.',
    choices: { pin: 'a master pin', 'split-link': 'a split master link, bolted', none: 'no master: pressed' },
  },
  handed: {
    name: 'left and right',
    ask: 'Are the links of this side mirrored to those of the other?',
    choices: { handed: 'handed: one for each side', either: 'the same on both sides' },
  },
  'shoe-width': { name: 'shoe width', ask: 'Across the machine, from end to end.' },
  'shoe-holes': { name: 'bolt holes in a shoe', ask: 'Count those of one shoe.' },
  'shoe-bolt': { name: 'bolt of the shoes', ask: 'Thread, length, head: for example M16 x 1.5 x 50.' },
  grousers: {
    name: 'grousers on a shoe',
    ask: 'How many bars stand up from one shoe?',
    choices: { one: 'one', two: 'two', three: 'three', flat: 'none: flat' },
  },
  'pad-fixing': {
    name: 'how the pads are held',
    ask: 'Look from behind the shoe.',
    choices: { bolted: 'bolted', clipped: 'clipped over the ends', bonded: 'bonded to the shoe' },
  },
  'pad-bolt': { name: 'bolt of the pads', ask: 'Thread, length and spacing.' },
  teeth: { name: 'teeth', ask: 'Mark one and count once round. Do not turn the track for it alone.' },
  'one-piece': {
    name: 'ring or segments',
    ask: 'Is it in one piece?',
    choices: { 'one-piece': 'one ring', segments: 'segments' },
  },
  bolts: { name: 'bolts', ask: 'Count those that hold one of it.' },
  circle: { name: 'bolt circle', ask: 'Diameter through the centres of the bolts.' },
  'bolt-size': { name: 'bolt size', ask: 'Thread, length, head: for example M14 x 1.5 x 40.' },
  diameter: { name: 'diameter', ask: 'Where the chain or track runs on it. A worn one measures less.' },
  flange: {
    name: 'flanges',
    ask: 'Look at one roller end on.',
    choices: {
      single: 'single: outside only',
      double: 'double: inside and outside',
      none: 'none, or one in the middle',
    },
  },
  bore: {
    name: 'cylinder bore',
    ask: 'Only on a cylinder that is already off: its inner diameter, or the outer one of its piston. Never open an adjuster to read this; otherwise ask by the PIN.',
  },
  mark: { name: 'numbers on the old part', ask: 'Everything that is cast, stamped or printed on it.' },
};

export const howWords = {
  measured: 'measured',
  read: 'read',
  assumed: 'assumed',
  missing: 'missing',
} as const;

export const howLines = {
  measured: 'with a tool, or counted',
  read: 'off the part, its plate or its papers',
  assumed: 'nobody has looked',
} as const;

export const fromWords: Readonly<Record<FactFrom, string>> = {
  entered: '',
  walk: 'on this walk',
  machine: 'off the machine’s record',
  moulding: 'off the moulded size',
  sheet: 'from the limit sheet',
  'other-side': 'from the other side',
};

export const doubtWords: Readonly<Record<FactDoubt, string>> = {
  'counted-once': 'Counted once. Count again from another start.',
  'counts-differ': 'The two counts differ. Count again.',
  'not-as-moulded': 'This is not what the moulded size says. Look at both again.',
  'before-fitted': 'This was entered before the part now on the machine was fitted. Look again.',
};

/** Headings of the table, each with its unit. */
export const orderHeads = {
  when: 'Needed',
  inHours: 'Needed in (h)',
  atMeter: 'Needed at meter (h)',
  day: 'Needed on',
  part: 'Part',
  positions: 'Positions from the idler',
  count: 'How many',
  partNumber: 'Part number',
  match: 'Must match the old part',
  why: 'Why',
  fact: 'Fact',
  value: 'Value',
  valueMm: 'Value (mm)',
  within: 'Uncertainty, k = 2 (± mm)',
  spaces: 'Spaces measured over',
  again: 'Second count',
  how: 'How it is known',
  from: 'From',
  question: 'Question',
} as const;
