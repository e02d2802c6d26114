import { useState } from 'preact/hooks';
import { cautions } from '../../core/walk.ts';
import { about as words } from '../../words/en/about.ts';
import { cautionWords, firstWord } from '../../words/en/cautions.ts';
import { common } from '../../words/en/common.ts';
import { settings } from '../../words/en/settings.ts';
import { rules, sheets } from '../../words/en/sheets.ts';
import { Button, ButtonLink } from '../parts/button.tsx';
import { Facts } from '../parts/facts.tsx';
import { Fold } from '../parts/fold.tsx';
import { Screen, Section } from '../parts/screen.tsx';
import { buildId } from '../update.ts';
import styles from '../parts/forms.module.css';

/** What the app is, its cautions, and whose work is in it. */
export function About() {
  return (
    <Screen
      title={words.title}
      sub={settings.build(buildId)}
      bar={<ButtonLink href="/settings">{common.back}</ButtonLink>}
    >
      <p>{words.what}</p>
      <p>{words.offline}</p>
      <p>{words.numbers}</p>
      <Section title={words.cautions}>
        <p class={styles.strong}>{firstWord}</p>
        <p>{words.cautionsLine}</p>
        {cautions.map((caution) => (
          <Fold key={caution} title={cautionWords[caution].title}>
            <ul class={styles.stack}>
              {cautionWords[caution].lines.map((line) => (
                <li key={line}>{line}</li>
              ))}
            </ul>
          </Fold>
        ))}
      </Section>
      <Section title={words.more}>
        <div class={styles.pair}>
          <ButtonLink href="/sheets">{sheets.title}</ButtonLink>
          <ButtonLink href="/rules">{rules.title}</ButtonLink>
        </div>
        <ButtonLink href="/schema/walk-file.json" target="_blank">
          {words.schema}
        </ButtonLink>
      </Section>
      <Section title={words.keyboard}>
        <Facts facts={words.keys} />
      </Section>
      <Licences />
    </Screen>
  );
}

/** The list that the build makes of all that it bundles; shown here, because an installed app has no way back. */
async function licenceText(): Promise<string> {
  try {
    const answer = await fetch('/licenses.txt');
    const isText = answer.headers.get('content-type')?.startsWith('text/plain') === true;
    return answer.ok && isText ? await answer.text() : words.noLicences;
  } catch {
    return words.noLicences;
  }
}

function Licences() {
  const [text, setText] = useState<string>();
  return (
    <Section title={words.licences}>
      <p>{words.own}</p>
      {text === undefined ? (
        <Button look="plain" onTap={() => void licenceText().then(setText)}>
          {words.showLicences}
        </Button>
      ) : (
        <pre class={styles.pre}>{text}</pre>
      )}
    </Section>
  );
}
