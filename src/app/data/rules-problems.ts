import { checkRules, type RulesProblem } from '../../core/check-rules.ts';
import type { RuleSet } from '../../core/rules.ts';
import { isReason } from '../../words/en/reason-line.ts';
import { reasonTexts } from './built-in.ts';

/** What is wrong with a set, judged by our catalogue of reasons. */
export const problemsOf = (set: RuleSet): readonly RulesProblem[] =>
  checkRules(set, (id) => isReason(id, reasonTexts.value));
