import type { Source } from '../core/source.ts';
import { common, practice, published } from './sources.ts';

/** What a finding at a rental return counts as, and who says so. */
export interface Telling {
  readonly item: string;
  /** Findings of the item; a crack that shows the cord is `cord-visible`. */
  readonly findings: readonly string[];
  readonly is: 'wear' | 'damage';
  readonly source: Source;
}

const row = (
  is: Telling['is'],
  item: string,
  findings: readonly string[],
  source: Source = common,
): Telling => ({ item, findings, is, source });

const cordDeep = published(
  'Cuts down to the cord are billed to the customer, plain wear by what is left: excessive wear agreement of a dealer (Cleveland Brothers)',
);
const kerbs = practice(
  'Edge cuts come from kerbs and concrete edges: JCB HTD-5 pp. J-20 to J-26, Probst TM 150 pp. 124–125',
);
const cores = practice(
  'Cores bend, break and part from over-tension, stones, coming off, and from a hooked sprocket, which is the owner’s: JCB HTD-5 pp. J-20 to J-26',
);
const lugs = practice(
  'Small lug cuts are usable, a lug torn out too: JCB HTD-5 p. J-23. Lugs torn in a patch are not worn',
);
const chemicals = practice(
  'Oil, fuel, salt and fertiliser must be washed off: Takeuchi TB128FR p. 109, TL220 p. 98',
);
const nicks = practice('Small cuts of lugs are usable: JCB HTD-5 p. J-23');

/** Wear or damage, by finding; the split itself is common practice, and the contract’s to settle. */
export const wearOrDamage: readonly Telling[] = [
  row('damage', 'cord', ['cut', 'half-cut', 'parted'], cordDeep),
  row('damage', 'crack', ['cord-visible'], cordDeep),
  row('damage', 'edges', ['cut', 'cord-showing'], kerbs),
  row('wear', 'edges', ['nicked'], nicks),
  row('damage', 'lug-damage', ['chunked', 'torn-out'], lugs),
  row('wear', 'lug-damage', ['nicked'], nicks),
  row('damage', 'cores', ['bent', 'loose', 'missing', 'neighbours-gone'], cores),
  row('damage', 'drive-lugs', ['chipped', 'missing', 'neighbours-gone']),
  row('wear', 'drive-lugs', ['worn']),
  row('damage', 'guide-horns', ['broken', 'neighbours-gone']),
  row('wear', 'guide-horns', ['worn']),
  row('damage', 'roller-path', ['core-exposed']),
  row('wear', 'roller-path', ['worn']),
  row('damage', 'kinked-cords', ['kinked']),
  row('damage', 'swelling', ['soft', 'swollen'], chemicals),
  row('wear', 'link-sides', ['scalloped']),
  row('damage', 'links-cracked', ['one', 'several']),
  row('damage', 'shoes', ['bent', 'cracked', 'missing']),
  row('damage', 'pads', ['torn', 'missing']),
  row('damage', 'idler-rim', ['cracked']),
  row('wear', 'idler-rim', ['worn']),
  row('damage', 'idler-mount', ['cracked']),
  row('damage', 'idler-flange', ['broken']),
  row('wear', 'idler-flange', ['worn']),
  row('wear', 'adjuster-travel', ['little']),
  row('wear', 'slide-wear', ['worn']),
  row('damage', 'roller-flange', ['broken', 'missing']),
  row('wear', 'roller-flange', ['worn']),
  row('wear', 'sprocket-teeth', ['worn']),
  row('damage', 'suspension-arms', ['cracked']),
  row('wear', 'suspension-arms', ['worn']),
  row('damage', 'track-frame', ['bent', 'cracked']),
  row('damage', 'guards', ['bent', 'missing']),
];

interface Told {
  readonly item: string;
  readonly finding: string;
  /** It may be wear as well: nobody says that it is damage. */
  readonly unclear?: true;
}

/** Who says that a finding is damage. */
export function toldBy({ item, finding, unclear }: Told): Source {
  const name = finding === 'crack' ? 'cord-visible' : finding;
  const row = wearOrDamage.find((each) => each.item === item && each.findings.includes(name));
  return (unclear ? undefined : row?.source) ?? common;
}
