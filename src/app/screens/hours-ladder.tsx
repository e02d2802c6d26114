import { planHorizonHours } from '../../core/job-plan.ts';
import type { PartHours } from '../../core/hours-left.ts';
import type { Outlook } from '../../core/outlook.ts';
import { ahead as words } from '../../words/en/ahead.ts';
import { history, historyFaultWords } from '../../words/en/history.ts';
import { aboutHours, leftText, partName } from '../../words/ahead-text.ts';
import { formatter } from '../data/format.ts';
import { machinePath, walkPath, workPath } from '../data/paths.ts';
import type { WalkModel } from '../data/walk-model.ts';
import { ButtonLink } from '../parts/button.tsx';
import { Fold } from '../parts/fold.tsx';
import { HoursBar } from '../parts/hours-bar.tsx';
import { Section } from '../parts/screen.tsx';
import { whenText } from './ahead-lead.tsx';
import { HoursBasis } from './hours-basis.tsx';
import forms from '../parts/forms.module.css';
import styles from './ahead.module.css';

interface LadderProps {
  readonly model: WalkModel;
  readonly outlook: Outlook;
}

const shownFirst = 6;

/** Hours left of every measured part, the one that is worn out first on top; each opens to what it comes from. */
export function HoursLadder({ model, outlook }: LadderProps) {
  const { parts } = outlook.hours;
  const figured = parts.filter(({ left }) => left !== undefined);
  const open = parts.filter(({ left }) => left === undefined);
  const ends = figured.flatMap(({ left }) => (left && Number.isFinite(left.high) ? [left.high] : []));
  const most = Math.min(planHorizonHours * 2, Math.max(planHorizonHours / 2, ...ends));
  const rung = (part: PartHours) => (
    <Rung
      key={`${part.history.place}${part.history.item.id}`}
      part={part}
      most={most}
      model={model}
      outlook={outlook}
    />
  );
  const rest = figured.slice(shownFirst);
  return (
    <Section title={words.hours}>
      {figured.length === 0 && <p>{words.noFigures}</p>}
      {figured.length > 0 && <p class={forms.soft}>{words.eightOfTen}</p>}
      <div class={styles.ladder}>{figured.slice(0, shownFirst).map(rung)}</div>
      {rest.length > 0 && (
        <Fold title={words.moreParts(rest.length)}>
          <div class={styles.ladder}>{rest.map(rung)}</div>
        </Fold>
      )}
      <Open parts={open} model={model} />
      <p class={forms.soft}>
        {clockText(outlook)} {parts.some(({ history }) => history.isLearnt) ? words.learnt : words.fromBook}
      </p>
      <RubberNote outlook={outlook} />
      <ButtonLink href={machinePath(model.walk.machine, 'history')}>{words.history}</ButtonLink>
    </Section>
  );
}

function clockText({ hours }: Outlook): string {
  const { clock, travelShare } = hours.hours;
  return clock === 'travel' && travelShare !== undefined
    ? words.clockTravel(formatter.value.percent(travelShare * 100))
    : words.clockEngine;
}

interface RungProps extends LadderProps {
  readonly part: PartHours;
  readonly most: number;
}

function Rung({ part, most, model, outlook }: RungProps) {
  const format = formatter.value;
  const { left, history } = part;
  if (!left) return null;
  const name = partName(part, format);
  const text = leftText(left, format);
  const last = history.points.at(-1);
  const when =
    Number.isFinite(left.middle) && left.middle > 0 ? whenText(model, outlook, left.middle) : undefined;
  return (
    <Fold
      title={name}
      line={
        <>
          <span class={styles.hours}>{text}</span>
          <HoursBar left={left} most={most} label={words.ladderLabel(name, text)} />
          <span class={forms.soft}>
            {[last && words.wornPercent(format.percent(last.percent)), when].filter(Boolean).join('; ')}
          </span>
        </>
      }
    >
      <HoursBasis part={part} outlook={outlook} />
    </Fold>
  );
}

/** Parts without a figure, each reason said once. */
function Open({ parts, model }: { parts: readonly PartHours[]; model: WalkModel }) {
  const format = formatter.value;
  const faults = new Map<string, string[]>();
  for (const part of parts) {
    for (const fault of part.open) faults.set(fault, [...(faults.get(fault) ?? []), partName(part, format)]);
  }
  return (
    <>
      {[...faults].map(([fault, names]) => {
        const { what, mend } = historyFaultWords[fault as keyof typeof historyFaultWords];
        return (
          <p key={fault} class={styles.open}>
            <strong>{words.openParts(names)}</strong> {what} {mend}{' '}
            <a href={workPath(model.walk.machine, { from: walkPath(model.key, 'verdict') })}>
              {history.enterWork}
            </a>
          </p>
        );
      })}
    </>
  );
}

/** What ends rubber besides wear. */
function RubberNote({ outlook: { rubber } }: { outlook: Outlook }) {
  if (!rubber) return null;
  const format = formatter.value;
  const share = rubber.left.within(1000);
  const known = [rubber.left.yearsLeft, rubber.right.yearsLeft].flatMap((years) => years ?? []);
  return (
    <p class={forms.soft}>
      {(rubber.left.isLearnt ? words.damageLearnt : words.damage)(
        format.percent(share * 100),
        aboutHours(1000, format),
      )}{' '}
      {words.age(format.number(rubber.left.years))}{' '}
      {known.length > 0 && words.ageLeft(format.number(Math.min(...known)))}
    </p>
  );
}
