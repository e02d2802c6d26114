import { useMemo } from 'preact/hooks';
import { isDemo, type RecordKey } from '../../core/keys.ts';
import { parseTrackSize } from '../../core/track-size.ts';
import { common } from '../../words/en/common.ts';
import { hauling } from '../../words/en/hauling.ts';
import { options as words } from '../../words/en/options.ts';
import { dropDraft } from '../actions/saved.ts';
import { tell } from '../data/notice.ts';
import { preferences } from '../data/preferences.ts';
import { notSavedLine } from '../data/saving.ts';
import { useDraft } from '../data/use-draft.ts';
import { Button, ButtonLink } from '../parts/button.tsx';
import { Screen } from '../parts/screen.tsx';
import forms from '../parts/forms.module.css';
import { Answer } from './answer.tsx';
import { answerOf, useComparison, type Compared, type Subject } from './comparison.ts';
import {
  changedDraft,
  controlTexts,
  lengthText,
  unitsOf,
  type ControlDraft,
  type ControlTexts,
  type Units,
} from './controls.ts';
import { OptionControls } from './option-controls.tsx';
import { OptionViews } from './option-views.tsx';
import styles from './options.module.css';
import { keepUse } from './save-option.ts';

const draftKeyOf = ({ machineKey }: Subject): string =>
  machineKey === undefined ? 'options/alone' : `${isDemo(machineKey) ? 'demo/' : ''}options/${machineKey}`;

const untouched: ControlDraft = {};

/** What the records say, under what a person has set here; kept on disk at every change. */
export function useControls(subject: Subject) {
  const key = draftKeyOf(subject);
  const [draft, setDraft] = useDraft<ControlDraft>(key, untouched);
  const { length, mass } = unitsOf(draft, preferences.value);
  const start = useMemo(() => startOf(subject, { length, mass }), [subject, length, mass]);
  const texts = useMemo(() => ({ ...start, ...draft }), [start, draft]);
  return { key, texts, draft, setDraft };
}

function startOf({ use, machine }: Subject, units: Units): ControlTexts {
  const noise = use['noise'] === true ? 'yes' : '';
  const track = machine?.left?.size ?? machine?.right?.size;
  const kind = machine?.kind ?? 'excavator';
  return { ...controlTexts(use, units), ...sizesOf(track, units), noise, kind };
}

function sizesOf(size: string | undefined, units: Units): ControlTexts {
  const parsed = size === undefined ? undefined : parseTrackSize(size);
  return parsed ? { width: lengthText(parsed.widthMm, units), pitch: lengthText(parsed.pitchMm, units) } : {};
}

/** The comparison: the answer first, then what it hangs on, then every option. */
export function Compare({ subject }: { subject: Subject }) {
  const { key, texts, draft, setDraft } = useControls(subject);
  const compared = useComparison(subject, texts);
  const change = (part: ControlTexts): void => setDraft(changedDraft(texts, draft, part));
  const isAlone = subject.machine === undefined;
  // Prices go by the mass: of a machine that nothing is known of there is nothing to say yet.
  const ready = isAlone && compared?.machine.massKg === undefined ? undefined : compared;
  return (
    <Screen
      wide
      title={isAlone ? words.aloneTitle : words.title}
      sub={isAlone ? words.aloneLine : subject.name}
      bar={
        <>
          <ButtonLink href={subject.back}>{common.back}</ButtonLink>
          <ButtonLink look="main" href={`${subject.base}/new`}>
            {words.add}
          </ButtonLink>
        </>
      }
    >
      <div class={styles.split}>
        <div class={styles.answer}>
          {!compared && <p role="status">{words.reading}</p>}
          {compared && !ready && <Unasked />}
          {ready && <Answer compared={ready} texts={texts} />}
        </div>
        <div class={styles.controls}>
          <OptionControls texts={texts} change={change} alone={isAlone} figures={compared?.result.figures} />
          {ready && <NowLine compared={ready} />}
          <Keep subject={subject} compared={compared} draftKey={key} draft={draft} setDraft={setDraft} />
        </div>
        <div class={styles.all}>
          {ready && <OptionViews compared={ready} />}
          <div class={forms.pair}>
            <ButtonLink href={`${subject.base}/own`}>{words.own}</ButtonLink>
            {ready && <ButtonLink href={`${subject.base}/print`}>{words.paper}</ButtonLink>}
          </div>
          {subject.machineKey === undefined && (
            <ButtonLink look="plain" href="/hauling">
              {hauling.title}
            </ButtonLink>
          )}
        </div>
      </div>
    </Screen>
  );
}

/** What has to be said before there is anything to answer. */
function Unasked() {
  return (
    <section class={forms.lead} aria-label={words.answer}>
      <p class={forms.first}>{words.unasked}</p>
      <p>{words.unaskedLine}</p>
    </section>
  );
}

/** On a phone the answer has scrolled away by the time that something is changed: it is said again here. */
const NowLine = ({ compared }: { compared: Compared }) => (
  <p class={styles.now} role="status">
    <strong>{answerOf(compared).answer}</strong>
  </p>
);

interface KeepProps {
  readonly subject: Subject;
  readonly compared: Compared | undefined;
  readonly draftKey: string;
  readonly draft: ControlDraft;
  readonly setDraft: (draft: ControlDraft) => void;
}

/** What was set is kept as it is anyway; on a machine it can become part of its record. */
function Keep({ subject, compared, draftKey, draft, setDraft }: KeepProps) {
  if (Object.keys(draft).length === 0) return null;
  const drop = (): void => {
    const kept = draft;
    setDraft({});
    void dropDraft(draftKey);
    tell(words.dropped, () => setDraft(kept));
  };
  const keep = async (): Promise<void> => {
    if (!compared) return;
    const use = { ...compared.use, ...(draft['noise'] !== undefined && { noise: draft['noise'] === 'yes' }) };
    const saved = await keepUse(subject.machineKey as RecordKey<'machine'>, use);
    tell(saved.ok ? words.kept : notSavedLine(saved.error));
  };
  return (
    <div class={forms.pair}>
      {subject.machine && <Button onTap={() => void keep()}>{words.keep}</Button>}
      <Button look="plain" onTap={drop}>
        {subject.machine ? words.drop : words.again}
      </Button>
    </div>
  );
}
