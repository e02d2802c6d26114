import type { Rule } from '../core/rules.ts';
import { byFinding, byWear, is, rule, type FindingRow } from './rule-rows.ts';
import { practice, published } from './sources.ts';

const leaks: readonly FindingRow[] = [
  ['weeping', 'recheck', 'work'],
  ['leaking', 'repair', 'work'],
];
const bolts: readonly FindingRow[] = [
  ['loose', 'repair', 'move-only'],
  ['missing', 'park', 'move-only'],
];
const turns: readonly FindingRow[] = [
  ['rough', 'recheck', 'work'],
  ['seized', 'replace', 'light-work'],
];

/** Sag against the sheet, or by eye where there is no gauge. */
const sag: readonly Rule[] = [
  rule(
    'sag.tight',
    ['sag'],
    { sag: 'tight' },
    'adjust',
    'light-work',
    published(
      'Too tight breaks cords and wears up to three times faster: JCB HTD-5; Soucy S-Tech 7016 p. 63; Construction Equipment 2010; light work is common practice',
    ),
  ),
  rule(
    'sag.loose',
    ['sag'],
    { all: [{ sag: 'loose' }, { not: { sag: 'derailing' } }] },
    'adjust',
    'light-work',
    published(
      'Too loose jumps teeth and wears guides early: Soucy S-Tech 7016 p. 63; Bertolini p. 94; light work is common practice',
    ),
  ),
  rule(
    'sag.derailing',
    ['sag'],
    { sag: 'derailing' },
    'adjust',
    'move-only',
    published(
      'Above the printed value the track comes off: Komatsu PC15MRX-1 p. 174; move only is common practice',
    ),
  ),
  ...byFinding('sag-by-eye', [
    ['slack', 'adjust', 'light-work'],
    ['very-slack', 'adjust', 'move-only'],
    ['tight', 'adjust', 'light-work'],
  ]),
];

const adjuster: readonly Rule[] = [
  ...byFinding('adjuster-travel', [
    ['little', 'recheck', 'work'],
    ['end', 'repair', 'work'],
  ]),
  ...byFinding('adjuster-leak', [
    ['weeping', 'repair', 'work'],
    [
      'valve-damaged',
      'park',
      'nothing',
      practice(
        'Grease leaves a damaged valve or nipple at extreme pressure: UK HSE Safety Alert FOD 4-2014; US MSHA AP2002-M016',
      ),
    ],
  ]),
  rule(
    'adjuster-leak.not-holding',
    ['adjuster-leak'],
    { all: [is('adjuster-leak', 'weeping'), { sag: 'loose' }] },
    'repair',
    'light-work',
    published(
      'Loose again after greasing, adjuster seal defective or track stretched: Gehl Z17 Gen 2; Komatsu PC78MR-6',
    ),
  ),
  ...byFinding('recoil-spring', [['broken', 'park', 'move-only']]),
  ...byFinding('packing', [
    [
      'packed',
      'recheck',
      'work',
      practice('Packing raises tension: Columbus Equipment; Bandit 2890 manual p. 109'),
    ],
  ]),
];

const idler: readonly Rule[] = [
  ...byFinding('idler-rim', [
    ['worn', 'recheck', 'work'],
    ['cracked', 'replace', 'move-only'],
  ]),
  ...byFinding('idler-play', [
    ['play', 'repair', 'work', practice('Growing side clearance lets the track come off: Komatsu D31EX-21')],
    ['track-climbs', 'park', 'move-only'],
  ]),
  ...byFinding('idler-leak', leaks),
  ...byFinding('idler-mount', [['cracked', 'park', 'move-only']]),
  ...byFinding('idler-flange', [
    ['worn', 'recheck', 'work'],
    ['broken', 'park', 'move-only'],
  ]),
  ...byWear('idler-tread'),
];

const rollers: readonly Rule[] = [
  ...byFinding('carrier-turn', turns),
  ...byFinding('carrier-leak', leaks),
  ...byFinding('carrier-flat', [['flat', 'replace', 'light-work']]),
  ...byFinding('slide-wear', [
    ['worn', 'recheck', 'work'],
    ['worn-through', 'replace', 'light-work'],
  ]),
  ...byFinding('roller-turn', turns),
  ...byFinding('roller-leak', leaks),
  ...byFinding('roller-flat', [['flat', 'replace', 'light-work']]),
  ...byFinding('roller-flange', [
    ['worn', 'recheck', 'work'],
    ['broken', 'park', 'move-only'],
    ['missing', 'park', 'move-only'],
    ['track-climbs', 'park', 'move-only'],
  ]),
  ...byFinding('roller-bolts', bolts),
  ...byFinding('roller-wire', [['wrapped', 'repair', 'light-work']]),
  ...byWear('roller-tread'),
];

const driveAndFrame: readonly Rule[] = [
  ...byFinding('sprocket-teeth', [
    ['worn', 'recheck', 'work'],
    [
      'hooked',
      'replace',
      'light-work',
      { mark: 'weak', text: 'Replace together with the track: rubbertrackstore.com; seekmach 2026' },
    ],
    ['broken', 'replace', 'move-only'],
  ]),
  ...byFinding('sprocket-bolts', bolts),
  ...byFinding('motor-oil', [
    ['weeping', 'recheck', 'work'],
    ['leaking', 'repair', 'light-work'],
  ]),
  ...byFinding('motor-bolts', bolts),
  ...byFinding('suspension-arms', [
    ['worn', 'recheck', 'work'],
    ['cracked', 'park', 'move-only'],
  ]),
  ...byFinding('track-frame', [
    ['bent', 'repair', 'light-work'],
    ['cracked', 'park', 'move-only'],
  ]),
  ...byFinding('guards', [
    ['bent', 'recheck', 'work'],
    ['missing', 'repair', 'work'],
  ]),
];

/** What driving it shows, and what concerns both sides. */
const machine: readonly Rule[] = [
  ...byFinding('drift', [['drifts', 'recheck', 'work']]),
  ...byFinding('jumping', [['jumps', 'repair', 'move-only']]),
  ...byFinding('drive-noise', [
    ['popping', 'recheck', 'work'],
    ['grinding', 'repair', 'light-work'],
  ]),
  ...byFinding('heat', [
    [
      'one-hot',
      'repair',
      'light-work',
      practice('A roller warm after 1 km on hard road is overloaded: Deere OMNW00273'),
    ],
  ]),
  ...byFinding('tracks-alike', [['different', 'recheck', 'work']]),
  ...byFinding('track-off', [
    ['off-inside', 'park', 'nothing'],
    ['off-outside', 'park', 'nothing'],
  ]),
];

export const partRules: readonly Rule[] = [
  ...sag,
  ...adjuster,
  ...idler,
  ...rollers,
  ...driveAndFrame,
  ...machine,
];
