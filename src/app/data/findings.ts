import { callRank } from '../../core/calls.ts';
import type { ItemOutcome } from '../../core/score.ts';
import { componentNames, findingLabel, itemName } from '../../words/en/items.ts';
import { jobsiteVerdict as words } from '../../words/en/verdict.ts';
import type { WalkModel } from './walk-model.ts';

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
export const damageOf = (model: WalkModel): readonly ItemOutcome[] =>
  model.scored.outcomes.filter(({ state }) => {
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

/** Warning signs for an appraisal, each once. */
export function signsOf(model: WalkModel): readonly string[] {
  const lines = model.scored.outcomes.flatMap(({ state }) => {
    const { finding, item } = state;
    if (finding === undefined || !signs[item.id]?.includes(finding)) return [];
    return [`${itemName(item.id)}: ${findingLabel(item.id, finding)}`];
  });
  return [...new Set(lines)];
}

/** What a visit to do the calls needs: the parts, and what the work itself asks for. */
export function toBring(model: WalkModel): readonly string[] {
  const due = model.scored.outcomes.filter(({ atLeast }) => callRank(atLeast) >= callRank('adjust'));
  const parts = due
    .filter(({ atLeast }) => atLeast === 'replace' || atLeast === 'park')
    .map(
      ({ state }) =>
        `${words.bringParts}: ${componentNames[state.item.component].one}, ${itemName(state.item.id)}`,
    );
  const adjusts = due.some(({ atLeast }) => atLeast === 'adjust');
  const grease = model.machine.shape.tensioner === 'grease';
  return [
    ...new Set(parts),
    ...(adjusts && grease ? [words.bringGrease] : []),
    ...(due.length > 0 ? [words.bringBlocks, words.bringSecond] : []),
  ];
}
