import { callRank } from './calls.ts';
import type { Side } from './machine.ts';
import type { ItemOutcome } from './score.ts';
import type { ItemState } from './states.ts';

/** Findings that use does not make: common practice, no source; the split is the contract's to settle. */
const damage: Readonly<Record<string, readonly string[]>> = {
  cord: ['cut', 'half-cut', 'parted'],
  edges: ['cut', 'cord-showing'],
  'lug-damage': ['chunked', 'torn-out'],
  cores: ['bent', 'loose', 'missing', 'neighbours-gone'],
  'drive-lugs': ['chipped', 'missing', 'neighbours-gone'],
  'guide-horns': ['broken', 'neighbours-gone'],
  'roller-path': ['core-exposed'],
  'kinked-cords': ['kinked'],
  swelling: ['soft', 'swollen'],
  'links-cracked': ['one', 'several'],
  shoes: ['bent', 'cracked', 'missing'],
  pads: ['torn', 'missing'],
  'idler-rim': ['cracked'],
  'idler-mount': ['cracked'],
  'idler-flange': ['broken'],
  'roller-flange': ['broken', 'missing'],
  'suspension-arms': ['cracked'],
  'track-frame': ['bent', 'cracked'],
  guards: ['bent', 'missing'],
};

/** What looks like damage and not like wear. */
export const damageOf = (outcomes: readonly ItemOutcome[]): readonly ItemOutcome[] =>
  outcomes.filter(({ state }) => {
    if (state.item.ask.kind === 'crack') return state.cracks.some(({ cordVisible }) => cordVisible);
    return state.finding !== undefined && (damage[state.item.id]?.includes(state.finding) ?? false);
  });

/** Plain wear that leaves a part as sound as a used one is: common practice, no source. */
const plainWear: Readonly<Record<string, readonly string[]>> = {
  edges: ['nicked'],
  'lug-damage': ['nicked'],
  'drive-lugs': ['worn'],
  'guide-horns': ['worn'],
  'roller-path': ['worn'],
  'link-sides': ['scalloped'],
  'idler-rim': ['worn'],
  'idler-flange': ['worn'],
  'adjuster-travel': ['little'],
  'slide-wear': ['worn'],
  'roller-flange': ['worn'],
  'sprocket-teeth': ['worn'],
  'suspension-arms': ['worn'],
};

/** True for an item found fine or plainly worn: nothing that could have led to the damage found later. */
export function isSound({ item: { id, ask }, finding, cracks }: ItemState): boolean {
  if (ask.kind === 'crack') return cracks.every(({ lengthMm }) => lengthMm === 0);
  if (ask.kind !== 'finding' || finding === undefined) return false;
  return finding === ask.findings[0] || (plainWear[id]?.includes(finding) ?? false);
}

// Dirt and tension are neither wear nor damage; those of the machine as a whole are signs of what is found elsewhere.
const neither: ReadonlySet<string> = new Set(['packing', 'sag-by-eye', 'sag-before']);

/** What is not sound and may be wear as well as damage. */
export const unclearOf = (outcomes: readonly ItemOutcome[]): readonly ItemOutcome[] =>
  outcomes.filter((outcome) => {
    const { item, finding, cracks } = outcome.state;
    const isFound = finding !== undefined || cracks.length > 0;
    const isPart = item.component !== 'machine' && !neither.has(item.id);
    return isFound && isPart && !isSound(outcome.state) && damageOf([outcome]).length === 0;
  });

/** Findings that tell a buyer of more than themselves: common practice, no source. */
const signs: Readonly<Record<string, readonly string[]>> = {
  'bushing-turned': ['yes'],
  snaking: ['snaking'],
  joints: ['dry'],
  'tracks-alike': ['different'],
  'adjuster-travel': ['end'],
  'tread-way': ['reversed'],
  'chain-way': ['reversed'],
  packing: ['packed'],
};

/** Outcomes that are warning signs for an appraisal. */
export const signsOf = (outcomes: readonly ItemOutcome[]): readonly ItemOutcome[] =>
  outcomes.filter(
    ({ state }) => state.finding !== undefined && (signs[state.item.id]?.includes(state.finding) ?? false),
  );

interface OwnerSide {
  readonly findings: readonly string[];
  /** Items that such a fault wears or damages. */
  readonly harms: readonly string[];
}

const slack = ['edges', 'guide-horns', 'cores', 'drive-lugs', 'cord', 'lug-damage', 'link-sides'];
const tight = ['lug-depth', 'cores', 'cord', 'bushing-od', 'pitch', 'roller-path'];

/**
 * Faults that are the owner's, not the renter's, and what they harm: common practice, no source. Whether one did in
 * the case at hand is for people to settle.
 */
export const ownerSide: Readonly<Record<string, OwnerSide>> = {
  'sprocket-teeth': {
    findings: ['hooked', 'broken'],
    harms: ['drive-lugs', 'cores', 'cord', 'lug-depth', 'pitch', 'bushing-od'],
  },
  'roller-turn': { findings: ['seized'], harms: ['roller-path', 'guide-horns', 'cores', 'link-height'] },
  'idler-play': { findings: ['play', 'track-climbs'], harms: slack },
  'adjuster-leak': { findings: ['weeping', 'valve-damaged'], harms: slack },
  'recoil-spring': { findings: ['broken'], harms: slack },
  sag: { findings: ['loose', 'derailing', 'tight'], harms: [...new Set([...slack, ...tight])] },
  'sag-by-eye': { findings: ['slack', 'very-slack', 'tight'], harms: [...new Set([...slack, ...tight])] },
  cord: { findings: ['rust-under'], harms: ['cord', 'crack', 'bulge'] },
  cores: { findings: ['rusty'], harms: ['cores', 'cord', 'bulge'] },
  'tracks-alike': { findings: ['different'], harms: ['lug-depth', 'edges', 'guide-horns', 'drive-lugs'] },
  alignment: { findings: ['toed'], harms: ['link-sides', 'edges', 'pin-bosses'] },
};

/** What asks for most on a side, among those the one worn most; undefined where nothing was read. */
export function worstOn(outcomes: readonly ItemOutcome[], side: Side): ItemOutcome | undefined {
  const [worst] = outcomes
    .filter(({ state }) => state.side === side && state.known)
    .sort(
      (a, b) =>
        callRank(b.atLeast) - callRank(a.atLeast) ||
        (b.state.wear?.percent ?? 0) - (a.state.wear?.percent ?? 0),
    );
  return worst;
}
