import type { Condition, Rule } from '../core/rules.ts';
import { byFinding, byWear, is, rule } from './rule-rows.ts';
import { estimate, practice, published } from './sources.ts';

const cracks = published(
  'IHI IC100-2 and IC120 manuals: 30 mm or longer and 8 mm or deeper, repair; cord visible, repair at once. Komatsu PC78MR-6 p. 225 leaves cracks under 30 mm long or under 10 mm deep',
);
const longCrack: Condition = { reading: 'crack', field: 'length', op: '>=', value: 30, unit: 'mm' };
const deepCrack: Condition = { reading: 'crack', field: 'depth', op: '>=', value: 8, unit: 'mm' };

const separated = published(
  'Core separated at one place or more, replace: Gehl Z17 Gen 2 p. 151; IHI IC120; Komatsu PC78MR-6 p. 225',
);

/** Wear, cords and rubber of the track. */
const tread: readonly Rule[] = [
  ...byWear(
    'lug-depth',
    'replace',
    published(
      'Replace at the lug limit of the sheet: Gehl Z17 Gen 2 p. 151; IHI IC100-2 p. 87; JCB HTD-5 p. J-23',
    ),
  ),
  ...byFinding('cord', [
    [
      'showing',
      'replace',
      'light-work',
      published('Cord exposed, replace: IHI IC100-2, IC120 (Gehl Z17 Gen 2 p. 151: from two links on)'),
    ],
    [
      'cut',
      'park',
      'move-only',
      published(
        'Any cut, replace at once: IHI IC100-2, IC120; JCB HTD-5 p. J-20; stop use: JLG X1000AJ p. 148 (Gehl Z17 Gen 2: from half a cord band on)',
      ),
    ],
    [
      'half-cut',
      'park',
      'move-only',
      published('Half or more of a cord band broken, replace: Gehl Z17 Gen 2 p. 151'),
    ],
    [
      'rust-under',
      'park',
      'move-only',
      practice('Rust creeping under the rubber leads to separation: JCB HTD-5 p. J-20'),
    ],
    ['parted', 'park', 'nothing'],
  ]),
  rule(
    'crack.watch',
    ['crack'],
    { all: [{ any: [longCrack, deepCrack] }, { not: { all: [longCrack, deepCrack] } }] },
    'recheck',
    'work',
    estimate('Longer or deeper than a crack that makers leave, but not both: watch, our estimate'),
  ),
  rule('crack.repair', ['crack'], { all: [longCrack, deepCrack] }, 'repair', 'work', cracks),
  rule(
    'crack.cord',
    ['crack'],
    is('crack', 'cord-visible'),
    'repair',
    'light-work',
    published(
      'Cord visible in a crack, repair at once: Komatsu PC78MR-6 p. 225, PC80MR-5 p. 296; IHI IC100-2, IC120; light work is common practice',
    ),
  ),
  ...byFinding('bulge', [['bulge', 'recheck', 'light-work']]),
  ...byFinding('lug-damage', [
    ['chunked', 'recheck', 'work'],
    [
      'torn-out',
      'recheck',
      'work',
      published('A lug torn out: usable, with much less grip in mud: JCB HTD-5 p. J-23'),
    ],
  ]),
  rule(
    'lug-damage.many-torn',
    ['lug-damage'],
    { count: 'lug-damage', atLeast: 'torn-out', op: '>=', value: 6 },
    'replace',
    'light-work',
    estimate('About a tenth of the lugs of a track of 60; newrubbertrack.com 2025 names one in ten damaged'),
  ),
  ...byFinding('edges', [
    ['cut', 'repair', 'work', practice('Cuts down to cord or core, repair: JCB HTD-5 p. J-23, said of lugs')],
    ['cord-showing', 'replace', 'light-work', published('Cord exposed, replace: IHI IC100-2, IC120')],
  ]),
  ...byFinding('swelling', [
    [
      'soft',
      'recheck',
      'work',
      practice('Wash off oil, fuel and salts: Takeuchi TB128FR p. 109, TL220 p. 98'),
    ],
    ['swollen', 'replace', 'light-work'],
  ]),
  ...byFinding('tread-way', [['reversed', 'recheck', 'work']]),
  ...byFinding('kinked-cords', [['kinked', 'replace', 'move-only']]),
];

/** Cores, drive lugs and horns on the inside of the track. */
const inside: readonly Rule[] = [
  ...byFinding('cores', [
    [
      'rusty',
      'recheck',
      'work',
      published('Slight rust usable, watch it creep under the rubber: JCB HTD-5 p. J-20'),
    ],
    ['bent', 'recheck', 'light-work'],
    ['loose', 'replace', 'light-work', separated],
    ['missing', 'replace', 'light-work', separated],
    ['neighbours-gone', 'park', 'move-only'],
  ]),
  ...byFinding('drive-lugs', [
    ['worn', 'recheck', 'work'],
    ['chipped', 'recheck', 'work'],
    ['missing', 'recheck', 'light-work'],
    ['neighbours-gone', 'park', 'move-only'],
  ]),
  ...byFinding('guide-horns', [
    ['worn', 'recheck', 'work'],
    ['broken', 'recheck', 'light-work'],
    [
      'neighbours-gone',
      'replace',
      'move-only',
      published(
        'Two or more neighbouring guide blocks missing, repair or replace: Challenger MT755E p. 42; move only is common practice',
      ),
    ],
  ]),
  ...byFinding('roller-path', [
    ['worn', 'recheck', 'work'],
    [
      'core-exposed',
      'recheck',
      'work',
      published('Roller path worn to the core can still be run: Probst TM 150 p. 125'),
    ],
  ]),
  rule(
    'roller-path.over-half',
    ['roller-path'],
    { share: 'roller-path', atLeast: 'core-exposed', op: '>', value: 0.5 },
    'replace',
    'work',
    published(
      'Core exposed over more than half the circumference, replace: Probst TM 150 p. 125; JLG X14JH p. 76',
    ),
  ),
];

const rubber = { track: ['rubber-cored', 'rubber-coreless'] };

/** Loose with no travel left: rubber hardly stretches. */
const endOfStroke = rule(
  'sag.end-of-stroke-rubber',
  ['sag'],
  {
    all: [{ sag: 'loose' }, is('adjuster-travel', 'end'), rubber],
  },
  'replace',
  'light-work',
  published(
    'Loose at the end of the adjuster stroke, replace the track: Gehl Z17 Gen 2; Komatsu PC78MR-6 p. 225',
  ),
);

export const rubberRules: readonly Rule[] = [...tread, ...inside, endOfStroke];
