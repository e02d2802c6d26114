import type { Reason } from '../../core/reason.ts';
import type { Step } from '../../core/steps.ts';
import type { Formatter } from '../../words/format.ts';
import { componentNames, itemName, sideNames } from '../../words/en/items.ts';
import { reasonLine } from '../../words/en/reason-line.ts';
import { groupWords } from '../../words/en/stops.ts';
import { capital } from '../../words/outcome-text.ts';
import { reasonTexts } from './built-in.ts';

/** The sentence of a reason. */
export const reasonText = ({ message, params }: Reason, format: Formatter): string =>
  reasonLine(message, params, format, reasonTexts.value);

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
