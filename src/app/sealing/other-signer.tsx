import type { Purpose } from '../../core/walk.ts';
import { roleWords, sealForm as words } from '../../words/en/sealing.ts';
import { Choices } from '../parts/choices.tsx';
import { Field } from '../parts/field.tsx';
import { Section } from '../parts/screen.tsx';
import styles from './sealing.module.css';
import { answers, likelyRole, otherRoles, type SealFault, type SealForm } from './seal-form.ts';
import { SignerFields } from './signer-fields.tsx';

interface OtherSignerProps {
  readonly purpose: Purpose;
  readonly form: SealForm;
  readonly faults: readonly SealFault[];
  readonly change: (part: Partial<SealForm>) => void;
}

const rolesFor = (purpose: Purpose) => [
  likelyRole[purpose],
  ...otherRoles.filter((role) => role !== likelyRole[purpose]),
];

/** Renter, buyer or owner, where one is here: signs, objects, or would not sign. */
export function OtherSigner({ purpose, form, faults, change }: OtherSignerProps) {
  const { role, answer, other, objection } = form;
  const fault = (name: SealFault) => faults.find((each) => each === name);
  const answerFault = fault('answer');
  return (
    <Section title={words.else}>
      <Choices
        title={words.else}
        hideTitle
        narrow
        chosen={role}
        options={(['nobody', ...rolesFor(purpose)] as const).map((value) => ({
          value,
          label: value === 'nobody' ? words.nobody : roleWords[value],
        }))}
        onChoose={(next) => change({ role: next })}
      />
      {role !== 'nobody' && (
        <>
          <Choices
            title={words.answer}
            chosen={answer === '' ? undefined : answer}
            options={answers.map((value) => ({ value, ...words.answers[value] }))}
            onChoose={(next) => change({ answer: next })}
          />
          {answerFault && (
            <p class={styles.fault} data-fault tabIndex={-1}>
              {words.faults[answerFault]}
            </p>
          )}
          {answer === 'objects' && (
            <Field
              label={words.objection}
              hint={words.objectionHint}
              lines={3}
              value={objection}
              fault={fault('objection') && words.faults.objection}
              onInput={(next) => change({ objection: next })}
            />
          )}
          {answer !== '' && (
            <SignerFields
              whose={role}
              form={other}
              {...(answer === 'refuses' && { nameLabel: words.nameIfGiven })}
              faults={{ name: fault('other-name'), sign: fault('other-sign') }}
              signs={answer === 'agrees' ? 'drawn-or-typed' : answer === 'objects' ? 'drawn' : 'no'}
              onChange={(next) => change({ other: next })}
            />
          )}
        </>
      )}
    </Section>
  );
}
