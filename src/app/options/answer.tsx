import { options as optionWords, optionAnswer as words } from '../../words/en/options.ts';
import { Section } from '../parts/screen.tsx';
import { answerOf, type Compared } from './comparison.ts';
import type { ControlTexts } from './controls.ts';
import forms from '../parts/forms.module.css';

interface AnswerProps {
  readonly compared: Compared;
  readonly texts: ControlTexts;
}

/** Which tracks in one sentence, then why, how sure that is, what would decide it and what would turn it. */
export function Answer({ compared, texts }: AnswerProps) {
  const { machine } = compared;
  const text = answerOf(compared);
  return (
    <>
      <section class={forms.lead} aria-label={optionWords.answer}>
        <p class={forms.first}>{text.answer}</p>
        {machine.massKg === undefined && <p>{optionWords.needsMass}</p>}
        {text.why.map((line) => (
          <p key={line}>{line}</p>
        ))}
        <Noise compared={compared} texts={texts} />
        {text.usual.length > 0 && <p class={forms.soft}>{text.usual.join(' ')}</p>}
        <p class={forms.soft}>{words.estimates}</p>
      </section>
      <Lines title={words.decides} lines={text.decides} />
      <Lines title={words.flips} lines={text.flips} />
    </>
  );
}

function Lines({ title, lines }: { title: string; lines: readonly string[] }) {
  if (lines.length === 0) return null;
  return (
    <Section title={title}>
      <ul class={forms.bullets}>
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </Section>
  );
}

/** Cost knows nothing of noise: where it matters and the first is loud, that is said beside it. */
function Noise({ compared: { result, nameOf }, texts }: AnswerProps) {
  const [first] = result.ranked;
  if (texts['noise'] !== 'yes' || !first) return null;
  const isLoud = !first.facts.some(({ fact }) => fact === 'rides-quieter');
  return isLoud ? <p>{words.quieter(nameOf(first.id))}</p> : null;
}
