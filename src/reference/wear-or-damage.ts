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
  row('damage', 'guide-horns', ['broken', 'neighbours-gone']),
  row('wear', 'guide-horns', ['worn']),
  row('damage', 'swelling', ['soft', 'swollen'], chemicals),
  row('damage', 'shoes', ['bent', 'missing']),
  row('damage', 'pads', ['torn', 'missing']),
  row('damage', 'idler-rim', ['cracked']),
  row('wear', 'idler-rim', ['worn']),
  row('damage', 'roller-flange', ['broken', 'missing']),
  row('wear', 'roller-flange', ['worn']),
  row('damage', 'track-frame', ['bent', 'cracked']),
  row('damage', 'guards', ['bent', 'missing']),
];

/** Who says that a finding is damage. */
export const toldBy = ({ item, finding }: { readonly item: string; readonly finding: string }): Source =>
  wearOrDamage.find(
    (each) => each.item === item && each.findings.includes(finding === 'crack' ? 'cord-visible' : finding),
  )?.source ?? common;
