import type { RulesProblem, RulesProblemKind } from '../../core/check-rules.ts';
import type { SheetProblem, SheetProblemKind } from '../../core/check-sheet.ts';
import { lengthUnits, toMm } from '../../core/quantity.ts';
import type { Params } from '../../core/reason.ts';
import type { Formatter, Message } from '../format.ts';
import { itemName } from './items.ts';

const text = (params: Params, name: string): string => String(params[name] ?? '');

/** A size of the sheet in the unit in which it is printed. */
function size(params: Params, name: string, unitName: string, format: Formatter): string {
  const unit = lengthUnits.find((each) => each === params[unitName]) ?? 'mm';
  return format.inUnit(toMm(Number(params[name] ?? 0), unit), unit);
}

const loadOf = (params: Params): string => text(params, 'load');

const sheetLines: Readonly<Record<SheetProblemKind, Message>> = {
  'unknown-item': () =>
    'This version does not know this item: the entry is kept, but nothing is compared to it.',
  'not-a-size': () => 'This item is not measured as a size, so no limit can be compared to it.',
  'new-is-limit': (params, format) =>
    `New and limit are both ${size(params, 'at', 'unit', format)}: worn cannot be counted between them.`,
  'no-hundred': () =>
    'No limit counts as 100 %: worn stays open. Mark the limit up to which worn is counted.',
  'several-hundred': (params) =>
    `More than one limit counts as 100 % under ${loadOf(params)} load. Mark only one of them.`,
  'limits-both-ways': (params, format) =>
    `Some limits lie above new (${size(params, 'at', 'unit', format)}), others below. A part wears one way only.`,
  'breaks-not-monotone': () =>
    'The steps between new and limit do not rise one after the other, in size and in percent.',
  'prints-disagree': (params, format) =>
    `The print contradicts itself: ${size(params, 'at', 'unit', format)} and ${size(params, 'alsoAt', 'alsoUnit', format)} are not the same. The stricter one is used.`,
  'sag-low-above-high': () => 'The first value is above the second. From must be the smaller one.',
  'sag-derail-below-high': (params, format) =>
    `The track would come off at ${size(params, 'at', 'unit', format)}, although up to ${size(params, 'high', 'unit', format)} is right.`,
  'several-entries': () => 'This item stands on the sheet twice for the same parts; only the first is used.',
  'several-sag': () => 'This sag method stands on the sheet twice; only the first is used.',
};

/** What is wrong or strange about an entry of a sheet, and how to mend it. */
export const sheetProblemLine = ({ kind, params }: SheetProblem, format: Formatter): string =>
  sheetLines[kind](params, format);

const rulesLines: Readonly<Record<RulesProblemKind, (params: Params) => string>> = {
  'newer-language': () => 'The set is written for a newer version of the app. It is kept, but not used.',
  'duplicate-id': () => 'Another rule has the same name. Rename one of them in the file.',
  'unknown-item': (params) =>
    `This version does not know the item “${text(params, 'item')}”: the rule cannot answer about it.`,
  'unknown-finding': (params) =>
    `${itemName(text(params, 'item'))} is never found “${text(params, 'finding')}”, so the rule can never fire.`,
  'unknown-track': (params) => `There is no kind of track “${text(params, 'track')}”.`,
  'wrong-question': (params) =>
    `What the rule asks of ${itemName(text(params, 'item'))} is not what is read there.`,
  'no-text': () => 'The rule gives no reason. Write one that a mechanic can act on.',
  'unknown-message': (params) =>
    `This version has no sentence for the reason “${text(params, 'message')}”. Write one of your own.`,
  'covers-unknown-item': (params) => `The set covers “${text(params, 'item')}”, which is not an item.`,
  'covers-unknown-rule': (params) =>
    `${itemName(text(params, 'item'))} is open: its rule ${text(params, 'missing')} is not in the set.`,
  'covers-without-rule': (params) =>
    `${itemName(text(params, 'item'))} counts as covered although no rule is about it: it would always be called run.`,
  'covers-by-other-item': (params) =>
    `${itemName(text(params, 'item'))} counts as covered by ${text(params, 'other')}, which is not about it.`,
  'covers-nothing': () => 'The set covers no item, so every item stays open under it.',
  'never-used': () => 'No item counts this rule among those that cover it. It still fires.',
};

/** What is wrong or strange about a rule or a set. */
export const rulesProblemLine = ({ kind, params }: RulesProblem): string => rulesLines[kind](params);
