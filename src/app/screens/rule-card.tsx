import type { RulesProblem } from '../../core/check-rules.ts';
import { itemById, type Component } from '../../core/items.ts';
import type { Rule } from '../../core/rules.ts';
import { callWords, meanwhileWords } from '../../words/en/calls.ts';
import { rulesProblemLine } from '../../words/en/check-lines.ts';
import { conditionText } from '../../words/en/conditions.ts';
import { itemName } from '../../words/en/items.ts';
import { reasonLine } from '../../words/en/reason-line.ts';
import { rules as words } from '../../words/en/sheets.ts';
import { reasonTexts } from '../data/built-in.ts';
import { formatter } from '../data/format.ts';
import { CallMark } from '../parts/call-mark.tsx';
import { SourceLine } from '../parts/source-line.tsx';
import styles from '../parts/forms.module.css';
import parts from '../parts/parts.module.css';

/** The reason that a rule gives, without the values of a reading. */
export const reasonOfRule = ({ reason }: Rule): string =>
  reason.text ?? reasonLine(reason.message, {}, formatter.value, reasonTexts.value);

export const whenText = (rule: Rule): string => conditionText(rule.when, formatter.value);

/** Everything of a rule that a search can find. */
export const ruleText = (rule: Rule): string =>
  [
    rule.id,
    whenText(rule),
    callWords[rule.call].word,
    meanwhileWords[rule.meanwhile].word,
    reasonOfRule(rule),
    rule.source.text,
    ...rule.items.map(itemName),
  ].join(' ');

/** The part of the machine that a rule is asked about. */
export const componentOf = (rule: Rule): Component => itemById(rule.items[0] ?? '')?.component ?? 'machine';

export const RuleProblems = ({ problems }: { problems: readonly RulesProblem[] }) => (
  <>
    {problems.map((problem) => (
      <p key={rulesProblemLine(problem)} class={parts.fault} data-fault tabIndex={-1}>
        {rulesProblemLine(problem)}
      </p>
    ))}
  </>
);

interface RuleCardProps {
  readonly rule: Rule;
  readonly problems: readonly RulesProblem[];
}

/** One rule as a mechanic reads it: when, what then, why, and who says so. */
export function RuleCard({ rule, problems }: RuleCardProps) {
  return (
    <article class={styles.card}>
      <span>
        {words.when} <strong>{whenText(rule)}</strong>
      </span>
      <span class={styles.pairText}>
        <CallMark call={rule.call} />
        <span>
          {words.meanwhile}: <strong>{meanwhileWords[rule.meanwhile].word}</strong>
        </span>
      </span>
      <span>{reasonOfRule(rule)}</span>
      {rule.gap === true && <span class={styles.soft}>{words.gap}</span>}
      <SourceLine source={rule.source} />
      <RuleProblems problems={problems} />
    </article>
  );
}
