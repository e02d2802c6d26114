import type { Component } from '../../core/items.ts';
import type { PlaceParts, PlaceSide } from '../../core/keys.ts';
import { entry } from '../entry.ts';

/** What a person reads about one item: its trade name, the question of its step, and its findings. */
export interface ItemWords {
  readonly name: string;
  readonly ask: string;
  readonly findings?: Readonly<Record<string, string>>;
}

const leak = { dry: 'dry', weeping: 'weeping', leaking: 'leaking' };
const bolts = { tight: 'tight', loose: 'loose', missing: 'missing' };
const turn = { turns: 'turns freely', rough: 'turns roughly', seized: 'seized' };

/** By item id, in the order of the walk. */
export const itemWords: Readonly<Record<string, ItemWords>> = {
  drift: {
    name: 'drift',
    ask: 'Drive 20–30 m both ways at both speeds: does it hold a straight line?',
    findings: { straight: 'straight', drifts: 'drifts' },
  },
  jumping: {
    name: 'jumping',
    ask: 'Does the track jump on the sprocket?',
    findings: { none: 'no jumping', jumps: 'jumps' },
  },
  'drive-noise': {
    name: 'noise when driving',
    ask: 'What does the undercarriage sound like while it drives?',
    findings: { normal: 'normal', popping: 'popping', grinding: 'grinding' },
  },
  heat: {
    name: 'hot parts',
    ask: 'After the drive, is one roller or joint much warmer than the others?',
    findings: { even: 'all alike', 'one-hot': 'one hot' },
  },
  'tracks-alike': {
    name: 'tracks alike',
    ask: 'Are both tracks of one make, width and tread?',
    findings: { alike: 'alike', different: 'different' },
  },
  'track-off': {
    name: 'track off',
    ask: 'Is the track on, or which way did it come off?',
    findings: { on: 'on', 'off-inside': 'off, inwards', 'off-outside': 'off, outwards' },
  },
  'sag-before': {
    name: 'sag before it came off',
    ask: 'How was the sag before it came off, as the operator saw it?',
    findings: { right: 'right', slack: 'slack', tight: 'tight' },
  },
  'kinked-cords': {
    name: 'kinked cords',
    ask: 'Is a cord band kinked where the track came off?',
    findings: { none: 'no kink', kinked: 'kinked' },
  },
  sag: { name: 'sag', ask: 'How far does the track sag?' },
  'sag-by-eye': {
    name: 'sag by eye',
    ask: 'How does the sag look?',
    findings: { right: 'looks right', slack: 'slack', 'very-slack': 'very slack', tight: 'tight' },
  },
  'lug-depth': { name: 'lug depth', ask: 'How deep is the lug, from its top to the rubber beside it?' },
  cord: {
    name: 'cord',
    ask: 'Roll the loop: is any steel cord showing or cut?',
    findings: {
      none: 'none showing',
      showing: 'showing, dry',
      cut: 'strands cut',
      'half-cut': 'half band cut',
      'rust-under': 'rust under rubber',
      parted: 'parted',
    },
  },
  crack: {
    name: 'crack or cut',
    ask: 'How long and how deep is the worst crack or cut?',
    findings: { 'cord-visible': 'cord visible' },
  },
  bulge: { name: 'bulge', ask: 'Is there a bulge or blister?', findings: { none: 'none', bulge: 'bulge' } },
  'lug-damage': {
    name: 'lug damage',
    ask: 'Are lugs nicked, chunked or torn out?',
    findings: { sound: 'sound', nicked: 'nicked', chunked: 'chunked', 'torn-out': 'torn out' },
  },
  edges: {
    name: 'edges',
    ask: 'How are the edges of the track?',
    findings: { sound: 'sound', nicked: 'nicked', cut: 'cut', 'cord-showing': 'cord showing' },
  },
  cores: {
    name: 'cores',
    ask: 'Look at the inner face: are all cores there and firm?',
    findings: {
      sound: 'all firm',
      rusty: 'rusty',
      bent: 'bent',
      loose: 'loose',
      missing: 'one gone',
      'neighbours-gone': 'neighbours gone',
    },
  },
  'drive-lugs': {
    name: 'drive lugs',
    ask: 'How are the drive lugs, where the sprocket pushes?',
    findings: {
      sound: 'sound',
      worn: 'worn',
      chipped: 'chipped',
      missing: 'one gone',
      'neighbours-gone': 'neighbours gone',
    },
  },
  'guide-horns': {
    name: 'guide horns',
    ask: 'How are the guide horns that keep the track on the rollers?',
    findings: {
      sound: 'sound',
      worn: 'worn',
      broken: 'one broken',
      'neighbours-gone': 'neighbours gone',
    },
  },
  'roller-path': {
    name: 'roller path',
    ask: 'How is the inner path on which the rollers run?',
    findings: { sound: 'sound', worn: 'worn', 'core-exposed': 'core exposed' },
  },
  swelling: {
    name: 'oil swelling',
    ask: 'Is the rubber soft or swollen from oil or fuel?',
    findings: { none: 'none', soft: 'soft', swollen: 'swollen' },
  },
  'tread-way': {
    name: 'way round of the tread',
    ask: 'Is the tread the right way round?',
    findings: { right: 'right', reversed: 'reversed' },
  },
  'link-height': { name: 'link height', ask: 'How high is the link, from its rail to the shoe?' },
  pitch: { name: 'track pitch', ask: 'How long are several links of a tight chain?' },
  'bushing-od': {
    name: 'bushing diameter',
    ask: 'What is the outside diameter of the bushing where it is thinnest?',
  },
  grouser: { name: 'grouser height', ask: 'How high is the grouser at the centre of the shoe?' },
  'pad-height': { name: 'pad height', ask: 'How thick is the rubber of the pad?' },
  'link-sides': {
    name: 'link rails',
    ask: 'How do the rails of the links look?',
    findings: { sound: 'even', scalloped: 'scalloped', peened: 'edges flared' },
  },
  'pin-bosses': {
    name: 'pin bosses',
    ask: 'Do roller flanges touch the pin bosses?',
    findings: { clear: 'clear', touching: 'touching' },
  },
  'links-cracked': {
    name: 'cracked links',
    ask: 'Is any link cracked?',
    findings: { none: 'none', one: 'one', several: 'several' },
  },
  'bushing-crack': {
    name: 'cracked bushings',
    ask: 'Is any bushing cracked?',
    findings: { sound: 'sound', cracked: 'cracked' },
  },
  'bushing-turned': {
    name: 'bushings turned',
    ask: 'Have pins and bushings been turned before? (Wear on the upper half says yes.)',
    findings: { no: 'never turned', yes: 'turned once' },
  },
  'master-joint': {
    name: 'master joint',
    ask: 'Is the master joint tight?',
    findings: { tight: 'tight', loose: 'loose', open: 'opening' },
  },
  'pin-walk': {
    name: 'pins walking',
    ask: 'Does any pin stand out of its link?',
    findings: { none: 'none', walking: 'walking out' },
  },
  joints: {
    name: 'joints',
    ask: 'Are joints dry: squeaking, red dust, hot?',
    findings: { oiled: 'oiled', dry: 'dry' },
  },
  shoes: {
    name: 'shoes',
    ask: 'Are shoes bent, cracked or missing?',
    findings: { sound: 'sound', bent: 'bent', cracked: 'cracked', missing: 'missing' },
  },
  'shoe-bolts': {
    name: 'shoe bolts',
    ask: 'Are all shoe bolts there and tight?',
    findings: { tight: 'tight', 'one-loose': 'one loose', 'too-few': 'too few hold' },
  },
  'bolt-holes': {
    name: 'bolt holes',
    ask: 'Are the bolt holes of the shoes still round?',
    findings: { round: 'round', ovalled: 'ovalled' },
  },
  pads: {
    name: 'pads',
    ask: 'Are pads torn or missing?',
    findings: { sound: 'sound', torn: 'torn', missing: 'missing' },
  },
  'pad-bolts': { name: 'pad bolts', ask: 'Are the bolts or clips of the pads tight?', findings: bolts },
  'chain-way': {
    name: 'way round of the chain',
    ask: 'Is the chain the right way round?',
    findings: { right: 'right', reversed: 'reversed' },
  },
  snaking: {
    name: 'snaking',
    ask: 'Look along the chain: does it snake?',
    findings: { straight: 'straight', snaking: 'snaking' },
  },
  'idler-rim': {
    name: 'idler rim',
    ask: 'How is the rim of the idler?',
    findings: { sound: 'sound', worn: 'worn', cracked: 'cracked' },
  },
  'idler-play': {
    name: 'idler side play',
    ask: 'Lever the idler sideways: does it move?',
    findings: { tight: 'no play', play: 'some play', 'track-climbs': 'track climbs' },
  },
  'idler-leak': { name: 'idler oil seal', ask: 'Is the idler dry at its oil seal?', findings: leak },
  'idler-mount': {
    name: 'idler mount',
    ask: 'Are the idler yoke and mount sound?',
    findings: { sound: 'sound', cracked: 'cracked' },
  },
  'idler-flange': {
    name: 'idler flange',
    ask: 'How is the centre flange of the idler?',
    findings: { sound: 'sound', worn: 'worn', broken: 'broken' },
  },
  'idler-tread': { name: 'idler depth', ask: 'How far is the tread below the flange, on both sides?' },
  'adjuster-travel': {
    name: 'adjuster travel left',
    ask: 'How much travel has the adjuster left?',
    findings: { plenty: 'plenty', little: 'little', end: 'at its end' },
  },
  'adjuster-leak': {
    name: 'adjuster seal',
    ask: 'Is there grease outside the adjuster? Look, do not touch.',
    findings: { dry: 'dry', weeping: 'weeping', 'valve-damaged': 'valve damaged' },
  },
  'recoil-spring': {
    name: 'recoil spring',
    ask: 'Is the recoil spring whole?',
    findings: { sound: 'whole', broken: 'broken' },
  },
  packing: {
    name: 'packing',
    ask: 'Is mud or stone packed behind the idler yoke or in the sprocket?',
    findings: { clear: 'clear', packed: 'packed' },
  },
  'carrier-turn': { name: 'carrier turning', ask: 'Does the carrier roller turn?', findings: turn },
  'carrier-leak': { name: 'carrier oil seal', ask: 'Is the carrier roller dry at its seal?', findings: leak },
  'carrier-flat': {
    name: 'carrier flat spot',
    ask: 'Is the carrier roller round all the way?',
    findings: { round: 'round', flat: 'flat spot' },
  },
  'slide-wear': {
    name: 'slide plate',
    ask: 'How worn is the slide plate?',
    findings: { sound: 'sound', worn: 'grooved', 'worn-through': 'worn through' },
  },
  'roller-turn': { name: 'roller turning', ask: 'Does the roller turn?', findings: turn },
  'roller-leak': { name: 'roller oil seal', ask: 'Is the roller dry at its oil seal?', findings: leak },
  'roller-flat': {
    name: 'roller flat spot',
    ask: 'Is the roller round all the way?',
    findings: { round: 'round', flat: 'flat spot' },
  },
  'roller-flange': {
    name: 'roller flange',
    ask: 'How are the flanges of the roller?',
    findings: {
      sound: 'sound',
      worn: 'worn',
      broken: 'broken',
      missing: 'missing',
      'track-climbs': 'track climbs',
    },
  },
  'roller-bolts': {
    name: 'roller bolts',
    ask: 'Are the bolts or collars of the roller tight?',
    findings: bolts,
  },
  'roller-wire': {
    name: 'wire at the hub',
    ask: 'Is wire or rope wound round the hub?',
    findings: { clear: 'clear', wrapped: 'wound on' },
  },
  'roller-tread': { name: 'roller diameter', ask: 'What do B and C read at this roller?' },
  'sprocket-teeth': {
    name: 'sprocket teeth',
    ask: 'How are drive face and root of the teeth? The tip does not count.',
    findings: { good: 'good', worn: 'worn', hooked: 'hooked', broken: 'broken' },
  },
  'sprocket-bolts': {
    name: 'sprocket bolts',
    ask: 'Are the sprocket or segment bolts tight?',
    findings: bolts,
  },
  'motor-oil': { name: 'travel motor oil', ask: 'Is the travel motor dry?', findings: leak },
  'motor-bolts': { name: 'travel motor bolts', ask: 'Are the travel motor bolts tight?', findings: bolts },
  'suspension-arms': {
    name: 'torsion arms or bogies',
    ask: 'How are the torsion arms or bogies?',
    findings: { sound: 'sound', worn: 'worn', cracked: 'cracked' },
  },
  'track-frame': {
    name: 'track frame',
    ask: 'Is the track frame straight and whole?',
    findings: { sound: 'sound', bent: 'bent', cracked: 'cracked' },
  },
  guards: {
    name: 'guards',
    ask: 'Are the guards there and sound?',
    findings: { sound: 'sound', bent: 'bent', missing: 'missing' },
  },
  alignment: {
    name: 'alignment',
    ask: 'Do both frames run parallel?',
    findings: { straight: 'parallel', toed: 'not parallel' },
  },
};

/** The trade name of an item; an id that this version does not know is named as such. */
export const itemName = (id: string): string =>
  entry(itemWords, id)?.name ?? `item of a newer version (${id})`;

export const itemQuestion = (id: string): string => entry(itemWords, id)?.ask ?? `What was found? (${id})`;

export const findingLabel = (itemId: string, finding: string): string =>
  entry(entry(itemWords, itemId)?.findings ?? {}, finding) ?? finding;

export const componentNames: Readonly<Record<Component, { readonly one: string; readonly many: string }>> = {
  machine: { one: 'machine', many: 'machines' },
  track: { one: 'track', many: 'tracks' },
  idler: { one: 'idler', many: 'idlers' },
  adjuster: { one: 'adjuster', many: 'adjusters' },
  'carrier-roller': { one: 'carrier roller', many: 'carrier rollers' },
  'slide-plate': { one: 'slide plate', many: 'slide plates' },
  'bottom-roller': { one: 'bottom roller', many: 'bottom rollers' },
  sprocket: { one: 'sprocket', many: 'sprockets' },
  motor: { one: 'travel motor', many: 'travel motors' },
  suspension: { one: 'suspension', many: 'suspensions' },
  frame: { one: 'track frame', many: 'track frames' },
};

export const sideNames: Readonly<Record<PlaceSide, string>> = {
  left: 'left',
  right: 'right',
  whole: 'whole machine',
};

/** The name of a component; one of a newer version keeps its id. */
export const componentName = (component: string): string =>
  entry<{ readonly one: string }>(componentNames, component)?.one ?? component;

/** Where something is, as a mechanic says it: `left bottom roller 3`, `right track`, `machine`. */
export function placeName({ side, component, number }: PlaceParts): string {
  const part = componentName(component);
  const numbered = number === undefined ? part : `${part} ${number}`;
  return side === 'whole' ? numbered : `${sideNames[side]} ${numbered}`;
}

const small = [
  'no',
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
];

const counted = (count: number): string => small[count] ?? String(count);

/** What one tap says of a whole group; `except` are the numbers that have readings of their own. */
export function groupPass(component: Component, count: number, except: readonly number[] = []): string {
  const { one, many } = componentNames[component];
  if (count === 1) return `The ${one} looked at, fine`;
  const all = count === 2 ? `Both ${many}` : `All ${counted(count)} ${many}`;
  return except.length === 0 ? `${all} looked at, fine` : `${all} looked at, fine except ${listOf(except)}`;
}

function listOf(numbers: readonly number[]): string {
  const last = numbers.at(-1) ?? '';
  return numbers.length < 2 ? String(last) : `${numbers.slice(0, -1).join(', ')} and ${last}`;
}
