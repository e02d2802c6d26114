import { useRef, useState } from 'preact/hooks';
import { cleanliness, type SagMethod, sagMethods, sagReads } from '../../core/limits.ts';
import { plausibility } from '../../core/plausible.ts';
import type { Reading } from '../../core/readings.ts';
import { common } from '../../words/en/common.ts';
import { findingLabel } from '../../words/en/items.ts';
import { pad } from '../../words/en/pad.ts';
import { questionLine } from '../../words/en/questions.ts';
import { cleanlinessWords, postureWords, sagAsk, sagMethodWords, travelWords } from '../../words/en/sag.ts';
import { step as words, walk } from '../../words/en/walk.ts';
import { dropDraft } from '../actions/saved.ts';
import { padKey, saveReadings } from '../actions/walk.ts';
import { stepTitle } from '../data/describe.ts';
import { formatter } from '../data/format.ts';
import { lastLine } from '../data/last.ts';
import { readPad } from '../data/pad-text.ts';
import {
  isSameSag,
  sagDraft,
  sagFrom,
  sagRead,
  sagSpecs,
  type SagChoice,
  type SagDraft,
} from '../data/sagging.ts';
import { isAnswered, pathBefore, useFlow } from '../data/step-flow.ts';
import { sizeText, unitFor } from '../data/tool.ts';
import { useDraft, useSaveOnLeave } from '../data/use-draft.ts';
import { Button, ButtonLink } from '../parts/button.tsx';
import { Choices, Toggle } from '../parts/choices.tsx';
import { Field } from '../parts/field.tsx';
import { Meanwhile, useMeanwhile } from '../parts/meanwhile.tsx';
import { Pad } from '../parts/pad.tsx';
import { Screen } from '../parts/screen.tsx';
import { HelpButton } from './help-button.tsx';
import { MoreHere } from './more-here.tsx';
import { Question, type Asked } from './question.tsx';
import { StepHead, stepSub, type StepProps } from './step-head.tsx';
import styles from './walk.module.css';

const looks = ['right', 'slack', 'very-slack', 'tight'] as const;

/** Sag: first how it is measured, since the number means nothing without that; then the number, or a look. */
export function SagStep({ model, step }: StepProps) {
  const flow = useFlow(model, step);
  const specs = sagSpecs(model, step);
  const sag = sagRead(model, step);
  const unit = unitFor('sag');
  const key = padKey(model.key, step.id);
  const initial = sagDraft(model, step, unit);
  const [draft, setDraft] = useDraft<SagDraft>(key, initial);
  const [active, setActive] = useState(0);
  const [asked, setAsked] = useState<Asked>();
  const [choosing, setChoosing] = useState(false);
  const spec = specs.find(({ method }) => method === draft.method);
  const at = { place: step.place, item: 'sag', n: 1 };

  const isChanged = !isSameSag(draft, initial);
  const done = useRef(false);
  const isOverwritten = useMeanwhile(initial.texts.join(' '), draft !== initial) && !done.current;
  // A second span that was opened and left empty is none.
  const texts = draft.texts.filter((text, i) => i === 0 || text.trim() !== '');
  const readingOf = (mm: readonly number[], confirmed: boolean): Reading => {
    const method = draft.method === 'by-eye' ? 'straightedge-grouser' : draft.method;
    return {
      v: 1,
      what: sagFrom({ ...draft, texts, method }, mm, unit, spec),
      tool: method === 'roller-gap' ? 'bolt-or-dowel' : 'straightedge',
      ...(confirmed && { confirmed }),
    };
  };
  const doubtIn = (mm: readonly number[]) => {
    const [item] = step.items;
    return item && plausibility(item, { mm: Math.max(...mm), uMm: 0 });
  };
  const store = (mm: readonly number[], confirmed: boolean): void => {
    done.current = true;
    const reading = readingOf(mm, confirmed);
    void flow
      .saveAnd(() => saveReadings(model.key, [{ ...at, reading }], [key]), [at])
      .then((saved) => (done.current = saved));
  };
  const settle = (mm: readonly number[]): void => {
    const doubt = doubtIn(mm);
    if (!doubt) return store(mm, false);
    const line = questionLine('sag', doubt, formatter.value);
    setAsked({ line, choices: [], take: () => store(mm, true) });
  };
  const next = (): void => {
    if (sag && !isChanged) return flow.goOn();
    const isEmpty = draft.method === 'by-eye' || texts.every((text) => text.trim() === '');
    if (isAnswered(model, step) && isEmpty) return flow.goOn();
    const read = texts.map((text) => readPad(text, unit));
    const bad = read.findIndex(({ kind }) => kind !== 'length');
    const problem = read[bad];
    const lengths = (instead: number): number[] =>
      read.map((each) => (each.kind === 'length' ? each.mm : instead));
    if (problem && problem.kind !== 'length') {
      setActive(bad);
      const doubtful = problem.kind === 'doubt';
      const take = (choice?: { mm: number }): void => settle(lengths(choice?.mm ?? 0));
      return setAsked({
        line: problem.line,
        choices: doubtful ? problem.choices : [],
        take: doubtful ? take : undefined,
      });
    }
    settle(lengths(0));
  };
  useSaveOnLeave(() => {
    const mm = texts.flatMap((text) => {
      const read = readPad(text, unit);
      return read.kind === 'length' ? read.mm : [];
    });
    const unread =
      isOverwritten || draft.method === 'by-eye' || mm.length < texts.length || doubtIn(mm) !== undefined;
    if (done.current || !isChanged || unread) return;
    void saveReadings(model.key, [{ ...at, reading: readingOf(mm, false) }], [key]);
  });
  const byEye = (finding: string): void => {
    const eye = { place: step.place, item: 'sag-by-eye', n: 1 };
    const reading: Reading = { v: 1, what: { kind: 'finding', finding }, tool: 'eye' };
    done.current = true;
    void flow.saveAnd(() => saveReadings(model.key, [{ ...eye, reading }], [key]), [eye]);
  };
  const pick = (method: SagChoice): void => {
    setDraft({ ...draft, method });
    setChoosing(false);
  };
  return (
    <Screen
      title={stepTitle(step)}
      sub={stepSub(model, step)}
      bar={
        <>
          <ButtonLink href={pathBefore(model, step)}>{common.back}</ButtonLink>
          {(draft.method !== 'by-eye' || isAnswered(model, step)) && (
            <Button look="main" onTap={next}>
              {pad.next}
            </Button>
          )}
        </>
      }
    >
      <StepHead model={model} step={step} />
      <Button look="plain" pressed={choosing} onTap={() => setChoosing(!choosing)}>
        {words.method}: {draft.method === 'by-eye' ? words.byEye : sagMethodWords[draft.method].name}
      </Button>
      {choosing && (
        <Choices<SagChoice>
          title={sagAsk.method}
          chosen={draft.method}
          options={methodsFor(specs.map(({ method }) => method))}
          onChoose={pick}
        />
      )}
      {isOverwritten && sag && (
        <Meanwhile
          now={sag.mm.map((mm) => sizeText('sag', mm)).join(', ')}
          onKeep={() => {
            done.current = true;
            void dropDraft(key).then(flow.goOn);
          }}
        />
      )}
      {asked && <Question asked={asked} onAgain={() => setAsked(undefined)} />}
      {draft.method === 'by-eye' ? (
        <Choices
          title={words.byEyeTitle}
          chosen={undefined}
          options={looks.map((value) => ({ value, label: findingLabel('sag-by-eye', value) }))}
          onChoose={byEye}
        />
      ) : (
        <>
          <Pad
            fields={draft.texts.map((text, i) => ({ id: String(i), label: '', name: stepTitle(step), text }))}
            active={active}
            unit={unit}
            last={lastLine(model, step)}
            onText={(i, text) => {
              setAsked(undefined);
              setDraft({ ...draft, texts: draft.texts.map((each, k) => (k === i ? text : each)) });
            }}
            onActive={setActive}
            onNext={next}
          />
          <p class={styles.quiet}>{sagMethodWords[draft.method].how}</p>
          {spec && (
            <p class={styles.quiet}>
              {formatter.value.inUnit(spec.low, spec.unit)} – {formatter.value.inUnit(spec.high, spec.unit)},{' '}
              {postureWords[spec.posture]}
            </p>
          )}
          <Choices
            title={sagAsk.clean}
            narrow
            chosen={draft.clean}
            options={cleanliness.map((value) => ({ value, label: cleanlinessWords[value] }))}
            onChoose={(clean) => setDraft({ ...draft, clean })}
          />
          {draft.method === 'straightedge-grouser' && draft.texts.length < 2 && (
            <Button
              look="plain"
              onTap={() => {
                setDraft({ ...draft, texts: [...draft.texts, ''] });
                setActive(draft.texts.length);
              }}
            >
              {sagAsk.another}
            </Button>
          )}
          {sagReads[draft.method] === 'sag' && (
            <Field
              label={sagAsk.span}
              hint={sagAsk.spanHint}
              inputMode="decimal"
              value={draft.span}
              onInput={(span) => setDraft({ ...draft, span })}
            />
          )}
          <Choices
            title={sagAsk.travel}
            narrow
            chosen={draft.travel}
            options={(['forward', 'reverse'] as const).map((value) => ({ value, label: travelWords[value] }))}
            onChoose={(travel) => setDraft({ ...draft, travel })}
          />
          <Toggle
            label={travelWords.coasted}
            on={draft.coasted}
            onTap={() => setDraft({ ...draft, coasted: !draft.coasted })}
          />
          <HelpButton topic={draft.method} />
        </>
      )}
      <MoreHere model={model} step={step} />
    </Screen>
  );
}

/** By eye, the methods of the sheet, then the others. */
function methodsFor(
  ofSheet: readonly SagMethod[],
): readonly { value: SagChoice; label: string; line?: string }[] {
  const methods = [...new Set([...ofSheet, ...sagMethods])];
  return [
    { value: 'by-eye', label: walk.byEyeInstead },
    ...methods.map((value) => ({
      value,
      label: sagMethodWords[value].name,
      ...(ofSheet.includes(value) && { line: sagAsk.sheetSays(sagMethodWords[value].reads) }),
    })),
  ];
}
