import { files as words } from '../../words/en/files.ts';
import { askAfterHours, urgeAfterHours, useBackupAge } from '../data/backup-age.ts';
import { ButtonLink } from '../parts/button.tsx';
import parts from '../parts/parts.module.css';

/** How long work has been on this phone only, in a sentence; nothing while there is none or it is fresh. */
export function aloneLine(aloneHours: number): string | undefined {
  if (aloneHours < askAfterHours) return undefined;
  return aloneHours < urgeAfterHours ? words.aloneDay : words.aloneDays(Math.floor(aloneHours / 24));
}

/** Asks for a backup once work has been on this phone only for a day. */
export function BackupNotice() {
  const line = aloneLine(useBackupAge()?.aloneHours ?? 0);
  if (line === undefined) return null;
  return (
    <section class={parts.banner} role="status">
      <span>{line}</span>
      <ButtonLink href="/settings">{words.backup}</ButtonLink>
    </section>
  );
}
