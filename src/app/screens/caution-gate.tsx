import { useState } from 'preact/hooks';
import type { Caution } from '../../core/walk.ts';
import { cautionTick, cautionWords, firstWord } from '../../words/en/cautions.ts';
import { common } from '../../words/en/common.ts';
import { step as words, walk } from '../../words/en/walk.ts';
import { tickCautions } from '../actions/walk.ts';
import type { WalkModel } from '../data/walk-model.ts';
import { Button, ButtonLink } from '../parts/button.tsx';
import { Toggle } from '../parts/choices.tsx';
import { Screen, Section } from '../parts/screen.tsx';
import { HelpDrawing } from './help-drawing.tsx';
import styles from './walk.module.css';

interface CautionGateProps {
  readonly model: WalkModel;
  readonly cautions: readonly Caution[];
  /** What comes after them. */
  readonly sub: string;
  readonly back: string;
}

/** What could hurt someone at the stop ahead; each is ticked by hand before the first question there. */
export function CautionGate({ model, cautions, sub, back }: CautionGateProps) {
  const [ticked, setTicked] = useState<readonly Caution[]>([]);
  const all = cautions.every((caution) => ticked.includes(caution));
  const toggle = (caution: Caution): void =>
    setTicked(ticked.includes(caution) ? ticked.filter((each) => each !== caution) : [...ticked, caution]);
  return (
    <Screen
      title={cautionWords[cautions[0] ?? 'ground'].title}
      sub={sub}
      bar={
        <>
          <ButtonLink href={back}>{common.back}</ButtonLink>
          <Button look="main" disabled={!all} onTap={() => void tickCautions(model.key, cautions)}>
            {all ? words.cautionGo : walk.cautionsLeft}
          </Button>
        </>
      }
    >
      {cautions.map((caution, i) => (
        <Section key={caution} title={i === 0 ? '' : cautionWords[caution].title}>
          {caution === 'raised' && <HelpDrawing id="raised" />}
          <ul class={styles.lines}>
            {cautionWords[caution].lines.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
          <Toggle label={cautionTick} on={ticked.includes(caution)} onTap={() => toggle(caution)} />
        </Section>
      ))}
      <p>{firstWord}</p>
    </Screen>
  );
}
