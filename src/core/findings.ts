import type { ItemOutcome } from './score.ts';

/** Findings that use does not make: common practice, no source; the split is the contract's to settle. */
const damage: Readonly<Record<string, readonly string[]>> = {
  cord: ['cut', 'half-cut', 'parted'],
  edges: ['cut', 'cord-showing'],
  'lug-damage': ['chunked', 'torn-out'],
  cores: ['bent', 'missing', 'neighbours-gone'],
  'guide-horns': ['broken', 'neighbours-gone'],
  swelling: ['soft', 'swollen'],
  shoes: ['bent', 'missing'],
  pads: ['torn', 'missing'],
  'idler-rim': ['cracked'],
  'roller-flange': ['broken', 'missing'],
  'track-frame': ['bent', 'cracked'],
  guards: ['bent', 'missing'],
};

/** What looks like damage and not like wear. */
export const damageOf = (outcomes: readonly ItemOutcome[]): readonly ItemOutcome[] =>
  outcomes.filter(({ state }) => {
    if (state.item.ask.kind === 'crack') return state.cracks.some(({ cordVisible }) => cordVisible);
    return state.finding !== undefined && (damage[state.item.id]?.includes(state.finding) ?? false);
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
