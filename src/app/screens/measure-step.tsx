import { useRef, useState } from 'preact/hooks';
import { readingsAtSpot } from '../../core/progress.ts';
import type { Reading } from '../../core/readings.ts';
import { common } from '../../words/en/common.ts';
import { fromPhoto, toolWords } from '../../words/en/choices.ts';
import { itemQuestion } from '../../words/en/items.ts';
import { pad } from '../../words/en/pad.ts';
import { questionLine } from '../../words/en/questions.ts';
import { step as words, walk } from '../../words/en/walk.ts';
import type { Step } from '../../core/steps.ts';
import { dropDraft } from '../actions/saved.ts';
import { padKey, saveReadings } from '../actions/walk.ts';
import { stepTitle } from '../data/describe.ts';
import { formatter } from '../data/format.ts';
import { doubtOf, fieldsOf, mmOf, observedFrom, textsOf } from '../data/measuring.ts';
import { readPad, type Meant } from '../data/pad-text.ts';
import { freeNumber, isAnswered, pathBefore, useFlow } from '../data/step-flow.ts';
import { sizeText, unitFor, usualTool } from '../data/tool.ts';
import { useDraft, useSaveOnLeave } from '../data/use-draft.ts';
import type { WalkModel } from '../data/walk-model.ts';
import { lastLine } from '../data/last.ts';
import { Button, ButtonLink } from '../parts/button.tsx';
import { Choices } from '../parts/choices.tsx';
import { Meanwhile, useMeanwhile } from '../parts/meanwhile.tsx';
import { Pad } from '../parts/pad.tsx';
import { Screen } from '../parts/screen.tsx';
import { Stepper } from '../parts/stepper.tsx';
import { ComparedTo } from './compared-to.tsx';
import { MoreHere } from './more-here.tsx';
import { Question, type Asked } from './question.tsx';
import { StepHead, stepSub, type StepProps } from './step-head.tsx';
import styles from './walk.module.css';

interface Draft {
  readonly texts: readonly string[];
  readonly links: number;
  readonly tool: string;
  /** Where the mark is, at a hand-out. */
  readonly mark: string;
  /** The number of the reading that is being made; another than the spot's first is a repeat. */
  readonly n: number;
}

/** The reading pad for one size at one spot. */
export function MeasureStep({ model, step }: StepProps) {
  const [item] = step.items;
  const itemId = item?.id ?? '';
  const flow = useFlow(model, step);
  const unit = unitFor(itemId);
  const here = readingsAtSpot(step, model.assembled.input.readings);
  const first = here.find(({ reading }) => reading.what.kind !== 'unseen');
  const fields = item ? fieldsOf(item) : [];
  const what = first?.reading.what;
  const initial: Draft = {
    texts: what ? textsOf(what, unit) : fields.map(() => ''),
    links: what?.kind === 'pitch' ? what.links : 4,
    tool: first?.reading.tool ?? usualTool(itemId),
    mark: first?.reading.mark ?? '',
    n: first?.n ?? here[0]?.n ?? step.spot,
  };
  const key = padKey(model.key, step.id);
  const [draft, setDraft] = useDraft<Draft>(key, initial);
  const [active, setActive] = useState(0);
  const [asked, setAsked] = useState<Asked>();
  const [toolOpen, setToolOpen] = useState(false);

  const readingOf = (mm: readonly number[], confirmed: boolean): Reading | undefined =>
    item && {
      v: 1,
      what: observedFrom(item, mm, draft.texts, unit, draft.links),
      spot: step.spot,
      tool: draft.tool,
      ...(confirmed && { confirmed }),
      ...(draft.mark !== '' && { mark: draft.mark }),
    };
  const at = { place: step.place, item: itemId, n: draft.n };
  const isChanged =
    draft.texts.some((text, i) => text !== initial.texts[i]) ||
    draft.links !== initial.links ||
    draft.mark !== initial.mark;
  const done = useRef(false);
  const isOverwritten = useMeanwhile(initial.texts.join(' '), draft !== initial) && !done.current;
  const store = (reading: Reading): void => {
    done.current = true;
    void flow
      .saveAnd(() => saveReadings(model.key, [{ ...at, reading }], [key]), [at])
      .then((saved) => (done.current = saved));
  };
  const settle = (mm: readonly number[], confirmed: boolean): void => {
    const reading = readingOf(mm, confirmed);
    const doubt = reading && !confirmed ? doubtOf(model, step, reading) : undefined;
    if (!reading) return;
    if (!doubt) return store(reading);
    const line = questionLine(itemId, doubt, formatter.value, draft.links);
    setAsked({ line, choices: [], take: () => settle(mm, true) });
  };
  const next = (): void => {
    if (first && !isChanged && draft.n === initial.n) return flow.goOn();
    if (isAnswered(model, step) && draft.texts.every((text) => text.trim() === '')) return flow.goOn();
    const read = draft.texts.map((text) => readPad(text, unit));
    const bad = read.findIndex(({ kind }) => kind !== 'length');
    if (bad > active && draft.texts[active] !== '') return setActive(bad);
    const problem = read[bad];
    if (problem && problem.kind !== 'length') {
      setActive(bad);
      const takes = problem.kind === 'doubt';
      const others = (mm: number): number[] =>
        read.map((each, i) => (i === bad ? mm : each.kind === 'length' ? each.mm : 0));
      const take = (choice?: Meant): void => settle(others(choice?.mm ?? 0), false);
      return setAsked({
        line: problem.line,
        choices: takes ? problem.choices : [],
        take: takes ? take : undefined,
      });
    }
    settle(
      read.flatMap((each) => (each.kind === 'length' ? each.mm : [])),
      false,
    );
  };
  useSaveOnLeave(() => {
    const read = draft.texts.map((text) => readPad(text, unit));
    if (done.current || !isChanged || isOverwritten || read.some(({ kind }) => kind !== 'length')) return;
    const reading = readingOf(
      read.flatMap((each) => (each.kind === 'length' ? each.mm : [])),
      false,
    );
    if (reading && !doubtOf(model, step, reading)) void saveReadings(model.key, [{ ...at, reading }], [key]);
  });
  return (
    <Screen
      title={stepTitle(step)}
      sub={stepSub(model, step)}
      bar={
        <>
          <ButtonLink href={pathBefore(model, step)}>{common.back}</ButtonLink>
          <Button look="main" onTap={next}>
            {pad.next}
          </Button>
        </>
      }
    >
      <StepHead model={model} step={step}>
        {model.rental?.noteAt({
          model,
          step,
          mark: draft.mark,
          onMark: (mark) => setDraft({ ...draft, mark }),
        })}
      </StepHead>
      <p class={styles.question}>{lugAsk(model, step) ?? itemQuestion(itemId)}</p>
      {isOverwritten && first && (
        <Meanwhile
          now={sizeText(itemId, mmOf(first.reading.what)[0] ?? 0)}
          onKeep={() => {
            done.current = true;
            void dropDraft(key).then(flow.goOn);
          }}
        />
      )}
      {asked && <Question asked={asked} onAgain={() => setAsked(undefined)} />}
      <Pad
        fields={fields.map((field, i) => ({
          ...field,
          name: field.label === '' ? stepTitle(step) : undefined,
          text: draft.texts[i] ?? '',
        }))}
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
      {item?.ask.kind === 'pitch' && (
        <Stepper
          label={`${pad.links} ${pad.linksHint}`}
          value={draft.links}
          least={1}
          most={12}
          onChange={(links) => setDraft({ ...draft, links })}
        />
      )}
      <ComparedTo model={model} step={step} />
      <Button look="plain" pressed={toolOpen} onTap={() => setToolOpen(!toolOpen)}>
        {words.toolAsk}:{' '}
        {first?.reading.from && draft === initial
          ? fromPhoto
          : (toolWords[draft.tool as keyof typeof toolWords] ?? draft.tool)}
      </Button>
      {toolOpen && (
        <Choices
          title={words.toolAsk}
          narrow
          chosen={draft.tool}
          options={Object.entries(toolWords).map(([value, label]) => ({ value, label }))}
          onChoose={(tool) => setDraft({ ...draft, tool })}
        />
      )}
      {first && (
        <Button
          look="plain"
          onTap={() =>
            setDraft({ ...draft, texts: fields.map(() => ''), n: freeNumber(model, step, itemId) })
          }
        >
          {walk.again}
        </Button>
      )}
      <MoreHere model={model} step={step} />
    </Screen>
  );
}

/** Which lug is meant: the marked ones, which every walk reads again, and last the shortest one. */
function lugAsk({ walk: { depth }, rental }: WalkModel, step: Step): string | undefined {
  const [item] = step.items;
  if (item?.id !== 'lug-depth' || item.ask.kind !== 'length') return undefined;
  // What the hand-out took for the shortest has a mark by now, and is read again wherever the shortest is today.
  const isMarked = step.spot < item.ask.samples[depth] || rental?.handedOutAt(step) !== undefined;
  return walk.lugAsk(isMarked ? step.spot : undefined);
}
