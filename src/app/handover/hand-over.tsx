import { useState } from 'preact/hooks';
import { isDemo } from '../../core/keys.ts';
import { handover as words } from '../../words/en/handover.ts';
import { verdict } from '../../words/en/verdict.ts';
import { exportWalk, type Way } from '../actions/files.ts';
import { tell } from '../data/notice.ts';
import { walkPath } from '../data/paths.ts';
import { canShare } from '../data/save-file.ts';
import type { WalkModel } from '../data/walk-model.ts';
import { Button, ButtonLink } from '../parts/button.tsx';
import forms from '../parts/forms.module.css';
import { Screen, Section } from '../parts/screen.tsx';

/** Everything of a walk that can leave the phone as a file, by the share sheet or into the phone's own files. */
export function HandOver({ model }: { model: WalkModel }) {
  const finished = model.walk.finishedAt !== undefined;
  const bar = <ButtonLink href={walkPath(model.key, 'verdict')}>{verdict.title}</ButtonLink>;
  return (
    <Screen title={words.title} sub={model.machine.name} bar={bar}>
      {isDemo(model.key) ? (
        <p>{words.demo}</p>
      ) : (
        <Section title={words.walk}>
          <p>{finished ? words.walkLine : words.unfinishedLine}</p>
          <Ways
            what={words.walk}
            name="walk.zip"
            type="application/zip"
            onGo={(way) => exportWalk(model.key, way)}
          />
        </Section>
      )}
    </Screen>
  );
}

interface WaysProps {
  readonly what: string;
  /** A file name and type such as the file will have. */
  readonly name: string;
  readonly type: string;
  readonly onGo: (way: Way) => Promise<void>;
}

/** Share, where there is a share sheet for such files, and save; what takes a while says so. */
function Ways({ what, name, type, onGo }: WaysProps) {
  const [busy, setBusy] = useState(false);
  const go = async (way: Way): Promise<void> => {
    setBusy(true);
    try {
      await onGo(way);
    } catch {
      tell(words.notMade);
    } finally {
      setBusy(false);
    }
  };
  const shares = canShare(name, type);
  return (
    <div class={forms.stack}>
      {shares && (
        <Button look="main" disabled={busy} onTap={() => void go('share')}>
          {words.share(what)}
        </Button>
      )}
      <Button look={shares ? 'normal' : 'main'} disabled={busy} onTap={() => void go('save')}>
        {words.save(what)}
      </Button>
      {busy && <p role="status">{words.working}</p>}
    </div>
  );
}
