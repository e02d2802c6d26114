import { useLocation } from 'preact-iso';
import { useState } from 'preact/hooks';
import { isDemo } from '../../core/keys.ts';
import type { FittedFact, Machine } from '../../core/machine.ts';
import { isToLookAt, type PartFact } from '../../core/part-facts.ts';
import { factAsk } from '../../core/part-kinds.ts';
import type { OrderLine } from '../../core/parts-to-order.ts';
import { localDate } from '../../words/calendar.ts';
import { common } from '../../words/en/common.ts';
import { factWords, ordering as words } from '../../words/en/ordering.ts';
import { doubtTexts, factText, howText, partText } from '../../words/order-text.ts';
import { capital } from '../../words/outcome-text.ts';
import { formatter } from '../data/format.ts';
import { observedNow } from '../data/moment.ts';
import { tell } from '../data/notice.ts';
import type { Meant } from '../data/pad-text.ts';
import { walkPath } from '../data/paths.ts';
import { preferences } from '../data/preferences.ts';
import { notSavedLine } from '../data/saving.ts';
import { useDraft } from '../data/use-draft.ts';
import { Button, ButtonLink } from '../parts/button.tsx';
import forms from '../parts/forms.module.css';
import { Screen } from '../parts/screen.tsx';
import { Question, type Asked } from '../screens/question.tsx';
import walkStyles from '../screens/walk.module.css';
import { FactControls, HowKnown } from './fact-controls.tsx';
import { draftOf, factFrom, type FactDraft } from './fact-entry.ts';
import { factPath } from './line-card.tsx';
import { saveFact, saveMoulding } from './save-order.ts';
import { linesOf, placeOf, type OrderModel } from './use-order.ts';

interface FactProps {
  readonly order: OrderModel;
  readonly line: OrderLine;
  readonly fact: PartFact;
}

function today(): { readonly on?: string } {
  const { utc, offsetMinutes } = observedNow();
  const on = localDate(utc, offsetMinutes);
  return on === undefined ? {} : { on };
}

function keep(
  { order, line, fact: { name } }: FactProps,
  fact: FittedFact | undefined,
  drafts: readonly string[],
) {
  const at = placeOf(line);
  if (!at) return undefined;
  if (name !== 'moulding') return saveFact(order.machineKey, name, at, fact, drafts);
  const size = fact === undefined ? undefined : String(fact.value);
  return saveMoulding(order.machineKey, at.side, size, drafts);
}

/** The next fact of the part that has to be looked at on the machine as it is now, or the list when there is none. */
function nextPath({ order, line, fact }: FactProps, machine: Machine): string {
  const facts = linesOf(order.orderFor(machine)).find(({ id }) => id === line.id)?.facts ?? [];
  const at = facts.findIndex(({ name }) => name === fact.name);
  const next = [...facts.slice(at + 1), ...facts.slice(0, Math.max(0, at))].find(isToLookAt);
  return next ? factPath(order, line, next) : walkPath(order.walk.key, 'order');
}

/** One fact of one part: where to look, what was found, and how it is known. */
export function FactScreen(props: FactProps) {
  const { order, line, fact } = props;
  const { route } = useLocation();
  const unit = preferences.value.length;
  const draftKey = `${isDemo(order.walk.key) ? 'demo/' : ''}fact/${order.walk.key}/${line.id}/${fact.name}`;
  const [draft, setDraft] = useDraft<FactDraft>(draftKey, draftOf(fact, unit));
  const [asked, setAsked] = useState<Asked>();
  const done = async (made: FittedFact | undefined): Promise<void> => {
    const saved = await keep(props, made, [draftKey]);
    if (!saved) return;
    if (!saved.ok) return tell(notSavedLine(saved.error));
    tell(made ? words.saved : words.cleared);
    route(nextPath(props, saved.value));
  };
  const save = (meant?: Meant): void => {
    const entered = factFrom(fact.name, draft, unit, meant);
    const { how } = draft;
    if (entered.kind === 'fact') return void done({ ...entered.fact, how, ...today() });
    const { choices } = entered;
    const take = choices.length > 0 ? (choice?: Meant): void => save(choice) : undefined;
    setAsked({ line: entered.line, choices, take });
  };
  const change = (next: FactDraft): void => {
    setAsked(undefined);
    setDraft(next);
  };
  const { name, ask } = factWords[fact.name];
  return (
    <Screen
      title={capital(name)}
      sub={partText(line)}
      bar={
        <>
          <ButtonLink href={walkPath(order.walk.key, 'order')}>{common.back}</ButtonLink>
          <Button look="main" onTap={() => save()}>
            {words.save}
          </Button>
        </>
      }
    >
      <p class={walkStyles.question}>{ask}</p>
      <p>{words.stand}</p>
      {factAsk(fact.name).kind === 'twice' && <p>{words.bothCounts}</p>}
      <Now fact={fact} />
      {asked && <Question asked={asked} onAgain={() => setAsked(undefined)} />}
      <FactControls name={fact.name} draft={draft} unit={unit} onChange={change} onDone={() => save()} />
      {fact.name !== 'moulding' && <HowKnown draft={draft} onChange={change} />}
      {isOwn(fact) && (
        <Button look="plain" onTap={() => void done(undefined)}>
          {words.clear}
        </Button>
      )}
    </Screen>
  );
}

const isOwn = ({ name, from }: PartFact): boolean =>
  from === 'entered' || (name === 'moulding' && from === 'machine');

/** What stands there now, and what is questionable about it. */
function Now({ fact }: { fact: PartFact }) {
  const value = factText(fact, formatter.value, preferences.value.length !== 'mm');
  if (value === undefined) return null;
  return (
    <div class={forms.strong}>
      <p>
        {value} · {howText(fact)}
      </p>
      {doubtTexts(fact).map((line) => (
        <p key={line}>{line}</p>
      ))}
    </div>
  );
}
