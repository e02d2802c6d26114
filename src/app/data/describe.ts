import type { ItemOutcome } from '../../core/score.ts';
import type { ItemState } from '../../core/states.ts';
import type { Step } from '../../core/steps.ts';
import type { Formatter } from '../../words/format.ts';
import { componentNames, itemName, placeName, sideNames } from '../../words/en/items.ts';
import { pad } from '../../words/en/pad.ts';
import { reasonLine } from '../../words/en/reason-line.ts';
import { sagStateWords } from '../../words/en/sag.ts';
import { groupWords } from '../../words/en/stops.ts';
import { step as words } from '../../words/en/walk.ts';
import { sizeOf } from '../../words/size-of.ts';
import { reasonTexts } from './built-in.ts';
import type { Reason } from '../../core/reason.ts';

/** What is known of an item, in a few words. */
export function stateText(state: ItemState, format: Formatter): string {
  if (state.sag) return `${format.length(state.sag.valueMm)}, ${sagStateWords[state.sag.state]}`;
  if (state.sampled) return sizeOf(state.item.id, state.sampled.worst.mm, format);
  if (state.finding !== undefined) {
    const label = format.finding(state.item.id, state.finding);
    return state.count === undefined ? label : `${label}, ${words.countOf(state.count)}`;
  }
  const [crack] = state.cracks;
  if (!crack) return words.notReadYet;
  if (crack.lengthMm === 0 && crack.depthMm === 0) return words.crackNone;
  const size = words.crackRead(format.depth(crack.lengthMm), format.depth(crack.depthMm));
  return crack.cordVisible ? `${size}, ${words.cordSeen}` : size;
}

/** Percent worn with its uncertainty, or nothing. */
export const wearText = ({ wear }: ItemState, format: Formatter): string | undefined =>
  wear && pad.wornWithin(format.percent(wear.percent), format.percent(wear.expanded));

/** The sentence of a reason. */
export const reasonText = ({ message, params }: Reason, format: Formatter): string =>
  reasonLine(message, params, format, reasonTexts.value);

export const outcomePlace = ({ state }: ItemOutcome): string =>
  placeName({
    side: state.side,
    component: state.item.component,
    ...(state.number !== undefined && { number: state.number }),
  });

function whatOf(step: Step): string {
  if (step.kind === 'look') return groupWords[step.group].name;
  const [item] = step.items;
  const name = item ? itemName(item.id) : componentNames[step.component].one;
  const number = step.numbers.length === 1 && step.kind === 'measure' ? ` ${step.numbers[0]}` : '';
  return item?.ask.kind === 'length' ? `${name} ${step.spot}` : `${name}${number}`;
}

/** The heading of a step: the side and what is read there. */
export function stepTitle(step: Step): string {
  const what = whatOf(step);
  return step.side === 'whole' ? capital(what) : `${capital(sideNames[step.side])} ${what}`;
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
