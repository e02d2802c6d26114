import { calls, meanwhiles } from '../../core/calls.ts';
import type { RulesProblem } from '../../core/check-rules.ts';
import type { Rule } from '../../core/rules.ts';
import { callWords, meanwhileWords } from '../../words/en/calls.ts';
import { conditionText } from '../../words/en/conditions.ts';
import { itemName } from '../../words/en/items.ts';
import { rules as words } from '../../words/en/sheets.ts';
import { formatter } from '../data/format.ts';
import { changedRule, thresholdsOf, type RuleEdit, type Threshold } from '../data/rules-form.ts';
import { Button } from '../parts/button.tsx';
import { Choices } from '../parts/choices.tsx';
import { Field } from '../parts/field.tsx';
import { Fold } from '../parts/fold.tsx';
import { NumberField } from '../parts/number-field.tsx';
import styles from '../parts/forms.module.css';
import { reasonOfRule, RuleProblems, whenText } from './rule-card.tsx';
import { SourceFields } from './source-fields.tsx';

interface RuleFoldProps {
  readonly rule: Rule;
  readonly edit: RuleEdit | undefined;
  readonly asked: boolean;
  readonly problems: readonly RulesProblem[];
  /** The items that would be open without it. */
  readonly opens: readonly string[];
  readonly change: (edit: RuleEdit) => void;
  readonly remove: () => void;
}

/** One rule of a set that is being changed. */
export function RuleFold({ rule, edit = {}, asked, problems, opens, change, remove }: RuleFoldProps) {
  const now = changedRule(rule, edit) ?? rule;
  return (
    <Fold
      title={whenText(now)}
      line={words.callLine(callWords[now.call].word, meanwhileWords[now.meanwhile].word)}
      open={asked}
    >
      <RuleProblems problems={problems} />
      <Thresholds rule={rule} edit={edit} asked={asked} change={change} />
      <Choices
        title={words.then}
        narrow
        options={calls.map((value) => ({ value, label: callWords[value].word }))}
        chosen={now.call}
        onChoose={(call) => change({ call })}
      />
      <Choices
        title={words.meanwhile}
        narrow
        options={meanwhiles.map((value) => ({ value, label: meanwhileWords[value].word }))}
        chosen={now.meanwhile}
        onChoose={(meanwhile) => change({ meanwhile })}
      />
      <Field
        label={words.why}
        lines={4}
        value={edit.reason ?? reasonOfRule(rule)}
        hint={words.whyHint}
        onInput={(reason) => change({ reason })}
      />
      <SourceFields
        texts={{ mark: edit.mark ?? rule.source.mark, source: edit.source ?? rule.source.text }}
        change={change}
      />
      <Button look="plain" onTap={remove}>
        {words.removeRule}
      </Button>
      {opens.length > 0 && (
        <p class={styles.soft}>{words.removingOpensThese(opens.map(itemName).join(', '))}</p>
      )}
    </Fold>
  );
}

type ThresholdsProps = Pick<RuleFoldProps, 'rule' | 'asked' | 'change'> & { readonly edit: RuleEdit };

/** The numbers of a condition, each below what it is compared with. */
function Thresholds({ rule, edit, asked, change }: ThresholdsProps) {
  return (
    <>
      {thresholdsOf(rule.when).map((threshold) => (
        <NumberField
          key={threshold.path}
          label={conditionText(threshold.leaf, formatter.value)}
          text={edit.numbers?.[threshold.path] ?? threshold.text}
          hint={words.thresholdHints[threshold.kind]}
          whole={threshold.kind === 'count'}
          asked={asked}
          parse={threshold.parse}
          spell={(value) => spelled(value, threshold)}
          onInput={(text) => change({ numbers: { ...edit.numbers, [threshold.path]: text } })}
        />
      ))}
    </>
  );
}

const spelled = (value: number, { kind, unit }: Threshold): string =>
  kind === 'size' && unit === 'in/16' ? String(value / 16) : String(value);
