import type { HaulRuleName, HaulStep, Vehicles } from '../../core/hauling-rules.ts';
import type { Hold, TieField } from '../../core/hauling-ties.ts';
import type { HaulField, HaulRating, SumLine } from '../../core/hauling.ts';

/** Can this machine go on this trailer or truck: masses, ratings, licence, ties. */
export const hauling = {
  title: 'Hauling the machine',
  lead: 'Fill in what you know. What is left empty stays open and is never taken as nothing. Each answer changes as you type.',
  region: 'Whose law?',
  on: 'What does the machine ride on?',
  comesTo: 'What it comes to',
  load: 'The load',
  vehicles: 'Truck and trailer',
  truck: 'The truck',
  law: 'Licence and rules',
  ties: 'Ties',
  beforeRoad: 'Before it rolls',
  fromMachine: 'From the machine’s record. Change it here if it differs.',
  operator: 'This mass counts a driver of 75 kg',
  operatorLine: 'Operating masses usually do. The driver does not ride on the machine, so it comes off.',
  noCombination: 'The truck’s plate shows no rating for truck and trailer together',
  blocked: 'Something on the deck stops it from moving forward',
  blockedLine: 'A headboard, stops or chocks made for it',
  clear: 'Empty the form',
  cleared: 'The form is empty',
  ratings: 'Against the plates',
  lawOpen: 'Still open.',
  localLaw: 'Local law decides.',
  notPermission: 'This is arithmetic, not permission. Local law decides.',
  readOn: (day: string): string => `The laws as we found them on ${day}. Laws change.`,
  since: (day: string): string => `In force since ${day}.`,
  atLeast: (value: string): string => `${value} at least`,
  nothingYet: 'nothing entered yet',
  stillOpen: (fields: string): string => `Still open: ${fields}.`,
  onDeck: 'Load on the deck',
  onRoad: 'All together on the road',
  over: (by: string): string => `Over by ${by}.`,
  overAtLeast: (by: string): string => `Over by ${by} at least.`,
  within: (by: string): string => `Within the rating, ${by} to spare.`,
  noRating:
    'The plate shows no such rating, so there is nothing to compare with. Look in the maker’s papers.',
  against: (load: string, rating: string): string => `${load} against ${rating}.`,
  isOver: (by: string, what: string): string => `Over its rating by ${by}: ${what}`,
  noneOver: 'No rating is exceeded, as far as it is entered.',
  noRatingYet: 'No rating can be compared yet.',
  allWithin: 'Within every rating that the plates show.',
  overStop: 'Do not haul it like this: another trailer, another truck, or less on the deck.',
  lineKnown: (of: string, known: string): string => `${of}: ${known}`,
  under: {
    yes: (limit: string): string => `below ${limit}`,
    no: (limit: string): string => `reaches ${limit}`,
    open: (limit: string): string => `may reach ${limit}`,
  },
  to: {
    yes: (limit: string): string => `not above ${limit}`,
    no: (limit: string): string => `above ${limit}`,
    open: (limit: string): string => `may be above ${limit}`,
  },
  both: (value: string, other: string): string => `${value} (${other})`,
  tieCount: 'Number of ties, by mass',
  tieLength: 'Number of ties, by length',
  tieSum: 'Working load limits together',
  tieEnough: (have: string, need: string): string =>
    `By this rule enough: you have ${have}, at least ${need} are needed.`,
  tieShort: (have: string, need: string): string => `Too few: you have ${have}, at least ${need} are needed.`,
  sumEnough: (have: string, need: string): string =>
    `By this rule enough: you have ${have}, at least ${need} is needed.`,
  sumShort: (have: string, need: string): string =>
    `Too little: you have ${have}, at least ${need} is needed.`,
  advised: (count: string): string => `${count} are advised all the same: two ties do not hold it sideways.`,
  weak: (limit: string): string =>
    `A tie here has less than ${limit}. The model rule wants each tie of a heavy machine to have that much.`,
  half: (count: string, wll: string, sum: string): string =>
    `Deck to machine: ${count} × ${wll} × ½ = ${sum}`,
  whole: (count: string, wll: string, sum: string): string =>
    `Over to the other side: ${count} × ${wll} = ${sum}`,
  halfMass: (mass: string, need: string): string => `Needed: half of ${mass} = ${need}`,
  eachTie: 'Each tie',
  direction: (by: string, to: string): string => `${by}, ${to}`,
  holds: 'Pulls that ties and blocks must hold',
  holdLine: (share: string, mass: string, pull: string): string => `${share} × ${mass} = ${pull}`,
  holdsAbroad:
    'How many ties that takes depends on their angles, the deck and the ties’ own capacity (LC, STF). That is not worked out here. Vehicles up to 3,500 kg can brake harder than this standard reckons with.',
} as const;

export const regionWords = {
  us: { label: 'United States', line: 'Federal rules. States add their own.' },
  gb: { label: 'Great Britain', line: 'By the masses on the plates.' },
  eu: { label: 'European Union', line: 'By the masses on the plates. Countries add their own.' },
} as const;

export const haulOnWords = {
  trailer: { label: 'a trailer', line: 'Pulled by a truck, van or car.' },
  truck: { label: 'the truck itself', line: 'Tilt bed, low deck, no trailer.' },
} as const;

interface FieldWords {
  readonly label: string;
  /** In the middle of a sentence. */
  readonly name: string;
  readonly hint?: string;
}

export const haulFieldWords: Readonly<Record<HaulField, FieldWords>> = {
  machine: {
    label: 'Operating mass of the machine',
    name: 'the machine',
    hint: 'Full tank, usual bucket; on its plate or in its manual.',
  },
  attachments: {
    label: 'Buckets and tools that ride along',
    name: 'buckets and tools',
    hint: 'Those that the operating mass does not count. 0 if there are none.',
  },
  fuel: {
    label: 'Fuel and cans on the deck',
    name: 'fuel on the deck',
    hint: 'Besides the machine’s own tank. 0 if there is none.',
  },
  chains: {
    label: 'Chains, binders, blocks',
    name: 'chains and blocks',
    hint: '0 if the empty trailer or the truck counts them.',
  },
  trailer: { label: 'Empty trailer', name: 'the empty trailer' },
  truck: {
    label: 'Truck as it drives off, without the load',
    name: 'the truck',
    hint: 'With driver, fuel and tools. A weighbridge tells.',
  },
  nose: {
    label: 'What the trailer’s nose puts on the truck',
    name: 'the trailer’s nose',
    hint: 'A tenth of the loaded trailer or more is common. Weigh it.',
  },
  'trailer-payload': {
    label: 'Payload of the trailer',
    name: 'the trailer’s payload',
    hint: 'If its plate gives one. Else gross rating less empty trailer.',
  },
  'trailer-gross': {
    label: 'Gross rating of the trailer',
    name: 'the trailer’s gross rating',
    hint: 'GVWR or maximum mass (MAM) on its plate.',
  },
  'truck-tow': {
    label: 'What the truck may tow',
    name: 'what the truck may tow',
    hint: 'Its papers, and the hitch: the lower of both.',
  },
  'truck-payload': {
    label: 'Payload of the truck',
    name: 'the truck’s payload',
    hint: 'If its plate gives one. Else gross rating less the truck as it drives off.',
  },
  'truck-gross': {
    label: 'Gross rating of the truck',
    name: 'the truck’s gross rating',
    hint: 'GVWR or maximum mass (MAM) on its plate.',
  },
  combination: {
    label: 'Rating of truck and trailer together',
    name: 'the rating of both together',
    hint: 'GCWR or gross train mass on the truck’s plate.',
  },
};

export const sumLineWords: Readonly<Record<SumLine['field'], string>> = {
  machine: 'Machine',
  operator: 'less the driver',
  attachments: 'Buckets and tools',
  fuel: 'Fuel on the deck',
  chains: 'Chains and blocks',
  trailer: 'Empty trailer',
  truck: 'Truck',
  nose: 'Trailer’s nose',
  'trailer-payload': 'Trailer’s payload',
  'trailer-gross': 'Trailer’s gross rating',
  'truck-tow': 'May tow',
  'truck-payload': 'Truck’s payload',
  'truck-gross': 'Truck’s gross rating',
  combination: 'Rating of both together',
};

/** What a rating is held against. */
export const ratingWords: Readonly<Record<HaulRating, string>> = {
  'trailer-payload': 'Load on the trailer’s deck',
  'trailer-gross': 'Trailer with its load',
  'truck-tow': 'What the truck tows',
  'truck-payload': 'Load on the truck',
  'truck-gross': 'Truck on its own wheels',
  combination: 'Truck and trailer together',
};

export const vehicleWords: Readonly<Record<Vehicles, string>> = {
  truck: 'Truck',
  trailer: 'Trailer',
  combination: 'Truck and trailer together',
};

export const ruleWords: Readonly<Record<HaulRuleName, { readonly title: string; readonly note: string }>> = {
  'us-licence': {
    title: 'Driving licence',
    note: 'In trade; some farm and private hauling is exempt. The greater of plate and scale counts. A truck and trailer of 26,001 lb together need a CDL for combinations only when the trailer is above 10,000 lb: both must be met.',
  },
  'us-safety-rules': {
    title: 'Commercial motor vehicle',
    note: 'In trade between states. The greater of plate and scale counts. States often set the same or a lower mass.',
  },
  'gb-licence': {
    title: 'Driving licence',
    note: 'The masses on the plates count. The truck’s own train mass may allow less. Licences from before 1997 may allow 8,250 kg together: read yours.',
  },
  'gb-tachograph': {
    title: 'Tachograph and operator’s licence',
    note: 'When hauling for pay or for a business. There are exemptions.',
  },
  'eu-licence': {
    title: 'Driving licence',
    note: 'The masses on the plates count. The truck’s papers may allow less.',
  },
  'eu-tachograph': {
    title: 'Tachograph',
    note: 'When carrying goods. There are exemptions, for example for tools that the driver works with.',
  },
  'eu-abroad': {
    title: 'Tachograph across a border',
    note: 'When carrying goods for hire from one country to another.',
  },
};

export const stepWords: Readonly<Record<HaulStep, string>> = {
  'no-cdl': 'No commercial licence (CDL) needed by federal law; a state may ask for more',
  'cdl-b': 'A commercial licence (CDL), class B',
  'cdl-a': 'A commercial licence (CDL), class A',
  b: 'Category B is enough',
  b96: 'Category B with code 96, or BE',
  be: 'Category BE',
  c1: 'Category C1',
  c1e: 'Category C1E',
  c: 'Category C',
  ce: 'Category CE',
  'no-safety-rules': 'Below the mass of a commercial motor vehicle',
  'safety-rules': 'A commercial motor vehicle: the federal safety rules count',
  'no-tachograph': 'Below the mass from which this is required',
  tachograph: 'Required from this mass on, unless exempt',
};

export const stepOpen = (step: string): string => `At least: ${step}. The rest is still open.`;

export const tieFieldWords: Readonly<Record<TieField, FieldWords>> = {
  'direct-count': { label: 'Ties from the deck to the machine', name: 'ties from deck to machine' },
  'direct-wll': {
    label: 'Working load limit of each',
    name: 'their working load limit',
    hint: 'Of its weakest piece: chain, binder, hook or anchor. What cannot be read counts as 0.',
  },
  'over-count': {
    label: 'Ties over the machine, down on the other side',
    name: 'ties over the machine',
    hint: '0 if there are none.',
  },
  'over-wll': {
    label: 'Working load limit of each of these',
    name: 'the working load limit of those over it',
  },
  length: {
    label: 'Length of the machine on the deck',
    name: 'the length on the deck',
    hint: 'With boom or blade, as it stands there.',
  },
  machine: { label: '', name: 'the mass of machine and tools' },
};

export const holdByWords: Readonly<Record<Hold['by'], string>> = {
  'working-load': 'By working load limits',
  breaking: 'By breaking strength',
  standard: 'On the road',
};

export const holdToWords: Readonly<Record<Hold['to'], string>> = {
  front: 'forward',
  rear: 'rearward',
  side: 'to each side',
  up: 'down on the deck, against bouncing',
};

/** In the order in which they are done. */
export const haulCautions: readonly string[] = [
  'Load on level, firm ground, straight and slow, seat belt on. Nobody beside the ramps or behind the machine.',
  'Boom, bucket and blade down on the deck. Swing locked, joints blocked, brake on, engine off, key out.',
  'Tools that ride along are a load of their own: tie them down by themselves.',
  'Tie to the machine’s marked points and the deck’s rated points, crossed or spread, so that it is held forward, rearward, sideways and down. Not over edges, hoses or rods.',
  'Chock or block both tracks. Clear mud and stones off: they fall on the road.',
  'Measure the highest point and the width before you drive off.',
  'Stop after the first miles and tighten the ties again: by United States rules within 50 miles, then every 150 miles or 3 hours, and whenever the driver’s duty changes.',
  'Axle loads, bridges, width, height and permits are not worked out here.',
];
