import type { ItemLimits } from '../core/limits.ts';
import { estimate, published } from './sources.ts';
import { band, hundred, inMm, newSize, sheet, type Sheet } from './sheet-rows.ts';

const lookUp =
  'Starting values taken from single machines of the class, not from yours. Enter the sizes of your own chain and rollers.';

const asPrinted = (text: string) => estimate(`As printed for one machine of the class: ${text}`);

const sized = (
  item: string,
  fresh: number,
  tolerance: number,
  limit: number,
  means: 'service' | 'turn',
  text: string,
): ItemLimits =>
  inMm(item, newSize(fresh, tolerance, asPrinted(text)), hundred(limit, means, asPrinted(text)));

/** Idler backed off from tight by half an inch; a millimetre either way is the width of the pencil mark. */
const retreat = band(
  'retreat',
  'ground',
  12,
  14,
  published('D4E/D5B/D6D service page; PS Magazine 703: back the idler off 13 mm (½ in)'),
);

const bushing: ItemLimits = inMm(
  'bushing-od',
  newSize(60.7, 2, asPrinted('pipelayer service page 56320')),
  { ...hundred(51.6, 'turn', asPrinted('service page 56320, light shock')), loads: ['light'] },
  {
    ...hundred(54.1, 'turn', asPrinted('service page 56320, average and heavy shock')),
    loads: ['average', 'heavy'],
  },
);

const endRollers: ItemLimits = {
  ...sized('roller-tread', 280, 5, 200, 'service', 'Komatsu D375A-8, rollers 1 and 8'),
  positions: 'ends',
};

/** Dozers and steel loaders by operating mass, lightest class first. */
export const dozerSheets: readonly Sheet[] = [
  sheet(
    'dozer-small',
    'Starting sheet: steel, dozer up to 12 t',
    lookUp,
    [
      sized('pitch', 171.5, 0.5, 174.5, 'turn', 'Komatsu D39'),
      inMm(
        'grouser',
        newSize(45, 6, estimate('Typical of small dozers')),
        hundred(18, 'service', estimate('Two fifths of new')),
      ),
    ],
    [retreat],
  ),
  sheet(
    'dozer-mid',
    'Starting sheet: steel, dozer 12 to 25 t',
    lookUp,
    [
      sized('link-height', 105.5, 3, 96.5, 'service', 'pipelayer service page 56320'),
      bushing,
      sized('grouser', 57.5, 4, 16.5, 'service', 'Komatsu D61EX/PX-24 p. 273'),
      sized('roller-tread', 200, 5, 164, 'service', 'Komatsu D61EX/PX-24 p. 273'),
    ],
    [
      band(
        'straightedge-grouser',
        'ground',
        29,
        41,
        published('US Army TM 5-2410-240-10 WP 0018: mean of two spans, grouser tip to straightedge'),
      ),
      retreat,
    ],
  ),
  sheet(
    'dozer-large',
    'Starting sheet: steel, dozer over 25 t',
    lookUp,
    [
      sized('grouser', 93, 6, 30, 'service', 'Komatsu D375A-8 p. 264'),
      endRollers,
      sized('roller-tread', 270, 5, 210, 'service', 'Komatsu D375A-8, rollers 2 to 7'),
    ],
    [
      band(
        'straightedge-grouser',
        'ground',
        20,
        30,
        published('Komatsu D155A-6 p. 265 (40 t), in working dirt'),
        {
          clean: 'working-dirt',
        },
      ),
    ],
  ),
];
