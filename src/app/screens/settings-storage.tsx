import { useEffect, useState } from 'preact/hooks';
import { settings as words, shell } from '../../words/en/settings.ts';
import { persistence } from '../../words/en/storage.ts';
import { formatter } from '../data/format.ts';
import { isInstalled, isIos } from '../data/install.ts';
import { Button } from '../parts/button.tsx';
import { Section } from '../parts/screen.tsx';

// Some engines and every private window lack the whole of it (WebKitGTK), so nothing may lean on it.
const manager = (): Partial<StorageManager> => (navigator as Partial<Navigator>).storage ?? {};

const bytesPerMegabyte = 1e6;

/** What the browser says of keeping the data, as a fact, and how to have it kept better. */
export function SettingsStorage() {
  const [isKept, setKept] = useState<boolean>();
  const [used, setUsed] = useState<number>();
  useEffect(() => {
    void manager().persisted?.().then(setKept);
    // Only what is used: what is said to be free has little to do with what can be stored.
    void manager()
      .estimate?.()
      .then(({ usage }) => setUsed(usage));
  }, []);
  // Never awaited on the way to anything: some browsers ask the person, others never answer.
  const ask = (): void => void manager().persist?.().then(setKept);
  const { number } = formatter.value;
  return (
    <>
      <Section title={words.storage}>
        {used !== undefined && (
          <p>{words.used(words.megabytes(number(Math.ceil(used / bytesPerMegabyte))))}</p>
        )}
        <p>{isKept === true ? persistence.kept : persistence.notPromised}</p>
        {isKept === false && <Button onTap={ask}>{words.askToKeep}</Button>}
      </Section>
      {!isInstalled() && (
        <Section title={shell.install}>
          {isIos && <p>{persistence.iosTab}</p>}
          <p>{isIos ? shell.installIos : shell.installMenu}</p>
          <p>{shell.installHint}</p>
        </Section>
      )}
    </>
  );
}
