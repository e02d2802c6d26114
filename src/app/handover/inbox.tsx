import { useLocation } from 'preact-iso';
import { useEffect, useState } from 'preact/hooks';
import { common } from '../../words/en/common.ts';
import { handover as words } from '../../words/en/handover.ts';
import { useImport } from '../data/use-import.ts';
import { Button, ButtonLink } from '../parts/button.tsx';
import forms from '../parts/forms.module.css';
import parts from '../parts/parts.module.css';
import { Screen } from '../parts/screen.tsx';
import { ImportProgress } from '../screens/import-progress.tsx';
import { ImportResult } from '../screens/import-result.tsx';
import { onOpenedWith, sharedFiles, type Waiting } from './inbox-files.ts';

/** Files that were shared with the app or opened with it: each is taken in or left out, when the person says so. */
export function Inbox() {
  const { query } = useLocation();
  const [files, setFiles] = useState<readonly Waiting[]>();
  const { share, result, take, cancel } = useImport();
  useEffect(() => {
    const add = (more: readonly Waiting[]): void => setFiles((known = []) => [...known, ...more]);
    void sharedFiles().then(add, () => add([]));
    onOpenedWith(add);
  }, []);
  const done = async (file: Waiting): Promise<void> => {
    await file.drop();
    setFiles((all) => all?.filter(({ id }) => id !== file.id));
  };
  const takeIn = async (file: Waiting): Promise<void> => {
    const opened = await file.open();
    const came = await take(opened);
    // What could not be saved, or was stopped, waits here for the next try.
    if (came.kind === 'done' || came.kind === 'refused') await done(file);
  };
  return (
    <Screen title={words.inbox} bar={<ButtonLink href="/">{common.toHome}</ButtonLink>}>
      {'lost' in query && <p class={parts.banner}>{words.lost}</p>}
      {result && <ImportResult result={result} />}
      {share !== undefined && <ImportProgress share={share} onCancel={cancel} />}
      {files?.length === 0 && <p>{result ? words.inboxEmpty : `${words.inboxEmpty} ${words.inboxHow}`}</p>}
      {share === undefined && files !== undefined && files.length > 0 && <p>{words.ask}</p>}
      {share === undefined &&
        files?.map((file) => (
          <section key={file.id} class={forms.card}>
            <Button look="main" onTap={() => void takeIn(file)}>
              {words.takeIn(file.name || words.noName)}
            </Button>
            <Button look="plain" onTap={() => void done(file)}>
              {words.leaveOut(file.name || words.noName)}
            </Button>
          </section>
        ))}
    </Screen>
  );
}
