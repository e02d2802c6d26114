import type { RulesProblem } from '../../core/check-rules.ts';
import type { SheetProblem } from '../../core/check-sheet.ts';
import { unreachable } from '../../core/result.ts';
import { itemName } from './items.ts';

type Params = SheetProblem['params'];

/** `245 mm`, `23/32 in`: a size as the sheet has it. */
const size = (params: Params, at: string, unit: string): string =>
  `${params[at]}${String(params[unit])
    .replace(/^in(\/\d+)$/, '$1 in')
    .replace(/^(?=\w)/, ' ')}`;

function sheetProblem({ kind, params, item }: SheetProblem): string {
  switch (kind) {
    case 'unknown-item':
      return 'this version does not know the item, so the entry is not used';
    case 'not-a-size':
      return 'this is judged by eye and has no size';
    case 'new-is-limit':
      return `new and limit are the same, ${size(params, 'at', 'unit')}; worn cannot be counted`;
    case 'no-hundred':
      return `no limit counts as 100 % under ${params['load']} load; worn cannot be counted`;
    case 'several-hundred':
      return `more than one limit counts as 100 % under ${params['load']} load; the strictest is used`;
    case 'limits-both-ways':
      return `limits lie on both sides of new, ${size(params, 'at', 'unit')}; a part wears one way only`;
    case 'breaks-not-monotone':
      return 'the steps between new and limit do not rise; worn cannot be counted';
    case 'prints-disagree':
      return `${size(params, 'at', 'unit')} and ${size(params, 'alsoAt', 'alsoUnit')} are not the same length; the stricter one is used`;
    case 'sag-low-above-high':
      return 'the lower end of the sag lies above its upper end';
    case 'sag-derail-below-high':
      return `the track is said to come off at ${size(params, 'at', 'unit')}, inside the right range`;
    case 'several-entries':
      return `${itemName(item)} has a second entry for the same parts; only the first is used`;
    case 'several-sag':
      return 'this way of reading sag has a second entry; only the first is used';
    default:
      return unreachable(kind);
  }
}

/** What is wrong with an entry of a limit sheet. */
export const sheetProblemLine = (problem: SheetProblem): string =>
  `${itemName(problem.item)}: ${sheetProblem(problem)}.`;

function rulesProblem({ kind, params }: RulesProblem): string {
  const item = itemName(String(params['item'] ?? ''));
  switch (kind) {
    case 'newer-language':
      return 'the set is written for a newer version; it is kept, but not used';
    case 'duplicate-id':
      return 'more than one rule has this name';
    case 'unknown-item':
      return `it asks for ${item}, which this version does not know`;
    case 'unknown-finding':
      return `it asks whether ${item} is “${params['finding']}”, which it never is`;
    case 'unknown-track':
      return `it asks for a track of the kind “${params['track']}”, which there is not`;
    case 'wrong-question':
      return `it asks something of ${item} that ${item} does not tell`;
    case 'no-text':
      return 'its reason has no text';
    case 'unknown-message':
      return `there is no sentence “${params['message']}”; its name is shown instead`;
    case 'covers-unknown-item':
      return `the set covers ${item}, which this version does not know`;
    case 'covers-unknown-rule':
      return `the set covers ${item} by a rule that is not in it, “${params['missing']}”; the item stays open`;
    case 'covers-without-rule':
      return `the set covers ${item} without any rule, so nothing found there is ever called`;
    case 'covers-by-other-item':
      return `the set covers ${item} by the rule “${params['other']}”, which is about something else`;
    case 'covers-nothing':
      return 'the set covers no item, so every item stays open';
    case 'never-used':
      return 'no item is covered by this rule';
    default:
      return unreachable(kind);
  }
}

/** What is wrong with a rule set. */
export function rulesProblemLine(problem: RulesProblem): string {
  const line = rulesProblem(problem);
  return problem.rule === undefined ? `${capital(line)}.` : `Rule ${problem.rule}: ${line}.`;
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
