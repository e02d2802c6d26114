import type { Condition, Rule } from '../core/rules.ts';
import { beyondPercent, beyondRule, byFinding, byWear, is, rule, watchRule, wornFrom } from './rule-rows.ts';
import { estimate, published } from './sources.ts';

const turning = published(
  'Turn pins and bushings at the limit: Komatsu D31EX-21 and D39EX-21 (pitch), pipelayer service page 56320 (bushing)',
);

/** Links able to outlast turned bushings; half of the chain's life must be left. */
const linkShare = 50;

/** Any of these, and turning the bushings is money lost. */
const cannotTurn: Condition = {
  any: [
    is('bushing-turned', 'yes'),
    is('joints', 'dry'),
    is('bushing-crack', 'cracked'),
    { worn: 'link-height', op: '>=', percent: linkShare },
  ],
};

const turnSource = estimate(
  `Turn only once, oiled, uncracked and with links under ${linkShare} % worn: common practice, the share is our estimate`,
);
const pastTurn = 110;

const outOf = (item: string): Condition => wornFrom(item, 100, pastTurn);

/** Pitch and bushing come to their limit together and are turned together. */
const turnRules = (item: string): readonly Rule[] => [
  { ...watchRule(item), reason: { message: 'bushing.watch' } },
  {
    ...rule(`${item}.turn`, [item], outOf(item), 'repair', 'work', turning),
    reason: { message: 'bushing.turn' },
  },
  {
    ...rule(`${item}.cannot-turn`, [item], { all: [outOf(item), cannotTurn] }, 'replace', 'work', turnSource),
    reason: { message: 'bushing.cannot-turn' },
  },
  {
    ...rule(
      `${item}.past`,
      [item],
      wornFrom(item, pastTurn, beyondPercent),
      'replace',
      'work',
      estimate(`Too late to turn from ${pastTurn} % of the way to the turn limit: our estimate`),
    ),
    reason: { message: 'bushing.past' },
  },
  beyondRule(item),
];

/** Links, pins and bushings. */
const chain: readonly Rule[] = [
  ...byWear('link-height'),
  ...turnRules('pitch'),
  ...turnRules('bushing-od'),
  ...byFinding('link-sides', [
    ['scalloped', 'recheck', 'work'],
    ['peened', 'recheck', 'work'],
  ]),
  ...byFinding('pin-bosses', [
    [
      'touching',
      'replace',
      'light-work',
      published('Pin bosses touching flanges or guards mean excess rail wear: TM 5-3805-280-10 p. 21-16'),
    ],
  ]),
  ...byFinding('links-cracked', [
    ['one', 'repair', 'light-work'],
    ['several', 'replace', 'move-only'],
  ]),
  ...byFinding('bushing-crack', [['cracked', 'replace', 'light-work']]),
  ...byFinding('master-joint', [
    ['loose', 'park', 'move-only'],
    ['open', 'park', 'nothing'],
  ]),
  ...byFinding('pin-walk', [['walking', 'park', 'move-only']]),
  ...byFinding('joints', [['dry', 'recheck', 'work']]),
  ...byFinding('chain-way', [['reversed', 'recheck', 'work']]),
  ...byFinding('snaking', [['snaking', 'recheck', 'work']]),
];

/** Shoes, their bolts and pads. */
const shoes: readonly Rule[] = [
  ...byWear('grouser', 'repair'),
  ...byWear('pad-height'),
  ...byFinding('shoes', [
    ['bent', 'repair', 'work'],
    ['cracked', 'repair', 'light-work'],
    ['missing', 'repair', 'move-only'],
  ]),
  ...byFinding('shoe-bolts', [
    ['one-loose', 'repair', 'light-work'],
    ['too-few', 'park', 'move-only'],
  ]),
  ...byFinding('bolt-holes', [['ovalled', 'repair', 'light-work']]),
  ...byFinding('pads', [
    ['torn', 'recheck', 'work'],
    ['missing', 'repair', 'light-work'],
  ]),
  ...byFinding('pad-bolts', [
    ['loose', 'repair', 'light-work'],
    ['missing', 'repair', 'light-work'],
  ]),
  ...byFinding('alignment', [['toed', 'repair', 'light-work']]),
];

const steel = { track: ['steel', 'steel-pads', 'rubber-shoes'] };

/** Loose with no travel left: the chain has grown. */
const endOfStroke = rule(
  'sag.end-of-stroke-steel',
  ['sag'],
  {
    all: [{ sag: 'loose' }, is('adjuster-travel', 'end'), steel],
  },
  'repair',
  'light-work',
  published(
    'Sag past its range with the grease stroke at its end means worn pins and bushings, turn or replace: Komatsu PC210-11 p. 377; Hyundai R130 Smart',
  ),
);

export const steelRules: readonly Rule[] = [...chain, ...shoes, endOfStroke];
