import { useLocation } from 'preact-iso';
import type { RecordKey } from '../../core/keys.ts';
import { common } from '../../words/en/common.ts';
import { sealCard, sealed as words } from '../../words/en/sealing.ts';
import { fromPath, walkPath } from '../data/paths.ts';
import { tell } from '../data/notice.ts';
import { notSavedLine } from '../data/saving.ts';
import { useWalk } from '../data/use-walk.ts';
import type { WalkModel } from '../data/walk-model.ts';
import { Button, ButtonLink } from '../parts/button.tsx';
import { Screen } from '../parts/screen.tsx';
import { Gone } from '../screens/gone.tsx';
import { removeWithUndo } from '../actions/saved.ts';
import { inspectorName, keepInspector } from './inspector.ts';
import { Correction } from './late-readings.tsx';
import { SealCard } from './seal-card.tsx';
import type { SealedPerson } from '../../files/seal-view.ts';
import styles from './sealing.module.css';
import { useSeals, type WalkSeals } from './use-seals.ts';
import { standingOf, useSigners } from './use-signers.ts';

/** The seals of a walk: what holds, who signed, what came after. */
export function SealsScreen() {
  const { path } = useLocation();
  const key = fromPath('walk', path)?.key;
  return key ? <OfWalk walkKey={key} /> : <Gone />;
}

function OfWalk({ walkKey }: { walkKey: RecordKey<'walk'> }) {
  const state = useWalk(walkKey);
  if (state.kind === 'failed') return <Gone />;
  if (state.kind === 'loading') return <Screen title={words.title}>{null}</Screen>;
  return <Seals model={state.model} />;
}

function Seals({ model }: { model: WalkModel }) {
  const seals = useSeals(model, 'all');
  return (
    <Screen
      title={words.title}
      sub={model.machine.name}
      bar={
        <>
          <ButtonLink href={walkPath(model.key, 'verdict')}>{common.back}</ButtonLink>
          <ButtonLink href={walkPath(model.key, 'seal')}>{words.again}</ButtonLink>
        </>
      }
    >
      {seals === 'failed' && <p>{words.notChecked}</p>}
      {typeof seals === 'object' && <Listed model={model} seals={seals} />}
    </Screen>
  );
}

function Listed({ model, seals }: { model: WalkModel; seals: WalkSeals }) {
  const [signers, again] = useSigners();
  if (seals.all.length === 0) return <p>{words.none}</p>;
  return (
    <>
      {seals.fork && <p class={styles.fault}>{sealCard.fork}</p>}
      {seals.all.map((seal) => (
        <SealCard
          key={seal.hash}
          seal={seal}
          standing={standingOf(seal.fingerprint, signers)}
          personAction={(person) => <Erase person={person} />}
          onKnown={again}
        />
      ))}
      <Correction model={model} />
    </>
  );
}

/** Takes the person's record away for good, once the way back is gone; nor is the name suggested any more. */
async function erase(key: RecordKey, name: string): Promise<void> {
  const removed = await removeWithUndo([key]);
  if (!removed.ok) return tell(notSavedLine(removed.error));
  if ((await inspectorName()) === name) await keepInspector('');
  tell(sealCard.eraseDone, removed.value);
}

const Erase = ({ person: { key, person } }: { person: SealedPerson }) =>
  person ? (
    <Button look="plain" onTap={() => void erase(key, person.name)}>
      {sealCard.erase}
    </Button>
  ) : null;
