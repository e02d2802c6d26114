import { useState } from 'preact/hooks';
import { ok } from '../../core/result.ts';
import { localDate } from '../../words/calendar.ts';
import { makeDates } from '../../words/dates.ts';
import { common } from '../../words/en/common.ts';
import { files } from '../../words/en/files.ts';
import { home } from '../../words/en/home.ts';
import { demo, settings as words } from '../../words/en/settings.ts';
import { addDemo, removeDemo } from '../actions/demo.ts';
import { useBackupAge, type BackupAge } from '../data/backup-age.ts';
import { preferences } from '../data/preferences.ts';
import { useLive, valueOf } from '../data/live.ts';
import { observedNow } from '../data/moment.ts';
import { store } from '../data/phone.ts';
import { Button, ButtonLink } from '../parts/button.tsx';
import { Screen, Section } from '../parts/screen.tsx';
import { UpdateOffer } from '../parts/update-offer.tsx';
import { buildId } from '../update.ts';
import styles from '../parts/forms.module.css';
import { BackupButton } from './backup-button.tsx';
import { aloneLine } from './backup-notice.tsx';
import { ImportButton } from './import-button.tsx';
import { SettingsStorage } from './settings-storage.tsx';
import { SettingsUnits } from './settings-units.tsx';

/** Units, files in and out, and how this phone keeps what was entered. */
export function Settings() {
  return (
    <Screen wide title={words.title} bar={<ButtonLink href="/">{common.back}</ButtonLink>}>
      <UpdateOffer />
      <div class={styles.columns}>
        <div class={styles.form}>
          <SettingsFiles />
          <SettingsStorage />
        </div>
        <div class={styles.form}>
          <SettingsUnits />
          <SettingsDemo />
          <Section title={words.about}>
            <p>{words.build(buildId)}</p>
            <ButtonLink href="/about">{words.about}</ButtonLink>
          </Section>
        </div>
      </div>
    </Screen>
  );
}

function SettingsFiles() {
  const [turn, setTurn] = useState(0);
  const age = useBackupAge(turn);
  return (
    <Section title={files.title}>
      <p>{files.backupLine}</p>
      {age && <BackupLines age={age} />}
      <BackupButton onDone={() => setTurn(turn + 1)} />
      <ImportButton label={files.importFile} />
      <p class={styles.soft}>
        {files.importLine} {files.restoreLine}
      </p>
      <ButtonLink look="plain" href="/check">
        {files.check}
      </ButtonLink>
    </Section>
  );
}

function BackupLines({ age: { last, aloneHours } }: { age: BackupAge }) {
  const alone = aloneLine(aloneHours);
  return (
    <>
      <p>{last ? files.lastBackup(agoText(last)) : files.noBackup}</p>
      {alone !== undefined && <p class={styles.strong}>{alone}</p>}
    </>
  );
}

/** In calendar days of where it was done and where this phone is now. */
function agoText(at: NonNullable<BackupAge['last']>): string {
  const now = observedNow();
  const dates = makeDates(preferences.value.locale);
  const [from, today] = [localDate(at.utc, at.offsetMinutes), localDate(now.utc, now.offsetMinutes)];
  return from !== undefined && today !== undefined ? dates.ago(from, today) : dates.moment(at);
}

const demoMachines = async () => {
  const rows = await store.list({ prefix: 'demo/machine/', limit: 1 });
  return rows.ok ? ok(rows.value.length > 0) : rows;
};

function SettingsDemo() {
  const hasDemo = valueOf(useLive('demo', ['demo/'], demoMachines));
  return (
    <Section title={demo.title}>
      <p>{demo.apart}</p>
      {hasDemo === true ? (
        <Button onTap={() => void removeDemo()}>{demo.remove}</Button>
      ) : (
        <Button onTap={() => void addDemo()}>{home.demo}</Button>
      )}
    </Section>
  );
}
