import { estimate, fromMemory, published } from './sources.ts';
import { band, hundred, inMm, newSize, sheet, type Sheet } from './sheet-rows.ts';

const lookUp =
  'Starting values for the class, not for your machine. Enter the lug height of a new track of your make, and the sag from your manual.';

const lug = (newMm: number, within: string, limit: ReturnType<typeof hundred>) =>
  inMm('lug-depth', newSize(newMm, 4, fromMemory(`New lugs of this class are about ${within} high`)), limit);

const excavatorLimit = hundred(
  5,
  'replace',
  published('Gehl Z17 Gen 2 operator manual p. 151: replace at 5 mm (0.2 in) or less'),
);

/** Track on its bolts or dowel: the same band in five manuals from 1.4 to 5 t. */
const miniGap = band(
  'roller-gap',
  'raised',
  10,
  15,
  published(
    'Hitachi EX27U/35U/50U p. 162; Bobcat E35 service text; Komatsu PC15MRX-1 p. 174; Achilles A14SE p. 72',
  ),
  { derailAbove: 20 },
);

export const rubberSheets: readonly Sheet[] = [
  sheet(
    'rubber-mini',
    'Starting sheet: rubber, mini excavator up to 6 t',
    lookUp,
    [lug(22, '18–25 mm', excavatorLimit)],
    [
      miniGap,
      band('straightedge-slide', 'ground', 1, 3, published('Komatsu PC18MR-3 p. 224 (1.8 t)')),
      band('frame-to-track', 'raised', 77, 87, published('Takeuchi TB128FR p. 140 (2.8 t)')),
    ],
  ),
  sheet(
    'rubber-midi',
    'Starting sheet: rubber, midi excavator over 6 t',
    lookUp,
    [lug(25, '20–30 mm', excavatorLimit)],
    [
      band('straightedge-slide', 'ground', 1, 3, published('Komatsu PC80MR-5 p. 296 (8 t)')),
      band(
        'roller-gap',
        'raised',
        10,
        20,
        estimate('Printed for mini excavators as 10–15 mm; widened for larger ones'),
      ),
    ],
  ),
  sheet(
    'rubber-carrier',
    'Starting sheet: rubber, carrier or dumper',
    lookUp,
    [
      lug(
        25,
        '20–30 mm',
        hundred(
          5,
          'replace',
          published(
            'IHI IC100-2 p. 87; IHI IC120 p. 70: replace below 5 mm; JCB HTD-5 p. J-23: usable above 5 mm',
          ),
        ),
      ),
    ],
    [band('roller-gap', 'raised', 10, 15, published('Hinowa HP1100 p. 40; Probst TM 150 p. 122'))],
  ),
  sheet(
    'rubber-loader',
    'Starting sheet: rubber with cores, compact track loader',
    lookUp,
    [
      lug(
        25,
        '22–28 mm',
        hundred(
          5,
          'replace',
          estimate('No limit found for compact loaders; 5 mm as printed for mini excavators and carriers'),
        ),
      ),
    ],
    [
      band('straightedge-slide', 'ground', 5, 10, published('JCB Robot 160 p. 106')),
      band('roller-gap', 'raised', 6, 10, published('Boxer 600HD p. 63')),
    ],
  ),
  sheet(
    'rubber-loader-coreless',
    'Starting sheet: rubber belt without cores, compact track loader',
    lookUp,
    [
      lug(
        25,
        '22–28 mm',
        hundred(
          5,
          'replace',
          estimate('No limit found for compact loaders; 5 mm as printed for mini excavators and carriers'),
        ),
      ),
    ],
    [
      // 90 lb at mid-span is 400 N.
      band(
        'deflection',
        'ground',
        19,
        25,
        published('ASV RC-100 p. 62: 0.75–1.0 in under 90 lb (40 kg) at mid-span'),
        {
          loadN: 400,
        },
      ),
    ],
  ),
];
