import { isNeeded } from './groups.ts';
import { itemById } from './items.ts';
import { isMarked } from './shots.ts';
import type { PlacedReading } from './states.ts';
import type { Step } from './steps.ts';
import type { Walk } from './walk.ts';

const spotOf = ({ n, reading }: PlacedReading): number => reading.spot ?? n;

/** The readings of a hand-out that were made at marks: sizes of the track, the first at each spot. */
export function markedIn(readings: readonly PlacedReading[]): readonly PlacedReading[] {
  const bySpot = new Map<string, PlacedReading>();
  for (const each of [...readings].sort((a, b) => a.n - b.n)) {
    const { kind } = each.reading.what;
    const isSize = kind === 'length' || kind === 'pitch';
    const at = `${each.place}|${each.item}|${spotOf(each)}`;
    if (isSize && itemById(each.item)?.component === 'track' && !bySpot.has(at)) bySpot.set(at, each);
  }
  return [...bySpot.values()];
}

/** What was read at hand-out where a step measures; undefined where it has no counterpart. */
export const handedOutAt = (
  { place, items: [item], spot }: Step,
  marked: readonly PlacedReading[],
): PlacedReading | undefined =>
  marked.find((each) => each.place === place && each.item === item?.id && spotOf(each) === spot);

/** Items that were measured at hand-out and that the return would not ask for by itself. */
export const openedBy = (marked: readonly PlacedReading[], walk: Walk): readonly string[] =>
  [...new Set(marked.map(({ item }) => item))].filter((id) => {
    const item = itemById(id);
    return item !== undefined && !isNeeded(item, walk);
  });

/** Steps for spots that the hand-out marked beyond those that this depth asks for. */
function added(steps: readonly Step[], marked: readonly PlacedReading[]): readonly Step[] {
  return marked.flatMap((each): readonly Step[] => {
    const spot = spotOf(each);
    const alike = steps.filter(
      (step) => isMarked(step) && step.place === each.place && step.items[0]?.id === each.item,
    );
    const [first] = alike;
    if (!first || alike.some((step) => step.spot === spot)) return [];
    return [{ ...first, id: `${first.id.replace(/\.s\d+$/, '')}.s${spot}`, spot }];
  });
}

/** The steps of a return led by its hand-out: first what was measured there, at the same marks, then the others. */
export function ledBy(steps: readonly Step[], marked: readonly PlacedReading[]): readonly Step[] {
  const all = [...steps, ...added(steps, marked)];
  const isFirst = (step: Step): boolean => handedOutAt(step, marked) !== undefined;
  const first = all
    .filter(isFirst)
    .sort((a, b) => stepRank(steps, a) - stepRank(steps, b) || a.spot - b.spot);
  return [...first, ...all.filter((step) => !isFirst(step))];
}

/** Where a step stands in the walk; one that was added stands with the others of its place. */
const stepRank = (steps: readonly Step[], { place, items: [item] }: Step): number =>
  steps.findIndex((step) => step.place === place && step.items[0]?.id === item?.id);

/** Whether a walk of that key can be the hand-out of a return: another walk, of the same machine, made for that. */
export const isHandOutFor = (
  back: { readonly key: string | undefined; readonly machine: string },
  key: string,
  { purpose, machine }: Pick<Walk, 'purpose' | 'machine'>,
): boolean => key !== back.key && purpose === 'hand-out' && machine === back.machine;

/** What a return names when somebody has said that none of the hand-outs is that of its hire. */
export const noHandOut = '';
