import { checkWords, sealed as words } from '../../words/en/sealing.ts';
import { fingerprintText } from '../../seal/fingerprint.ts';
import { useLive, valueOf } from '../data/live.ts';
import { walkPath } from '../data/paths.ts';
import type { WalkModel } from '../data/walk-model.ts';
import { ButtonLink } from '../parts/button.tsx';
import { LateReadings } from './late-readings.tsx';
import { momentOf } from './moment-of.ts';
import styles from './sealing.module.css';
import type { SealView } from '../../files/seal-view.ts';
import { useSeals } from './use-seals.ts';
import { linksOf, type LinkedWalk } from './walk-links.ts';

/** On the verdict: who sealed it and whether that holds, what came after, and which walk corrects which. */
export function SealNote({ model }: { model: WalkModel }) {
  const seals = useSeals(model, 'records');
  return (
    <>
      <Links model={model} />
      {seals === 'failed' && <p>{words.notChecked}</p>}
      {typeof seals === 'object' && seals.all.length > 0 && (
        <>
          <section class={styles.card} aria-label={words.title}>
            {seals.all.map((seal) => (
              <SealLine key={seal.hash} seal={seal} />
            ))}
            <ButtonLink look="plain" href={walkPath(model.key, 'seals')}>
              {words.show}
            </ButtonLink>
          </section>
          <LateReadings late={seals.late} />
        </>
      )}
    </>
  );
}

function SealLine({ seal }: { seal: SealView }) {
  const name = seal.people.find(({ role }) => role === 'inspector')?.person?.name;
  const when = seal.says && momentOf(seal.says.sealedAt);
  return (
    <div class={styles.person}>
      {when !== undefined && (
        <strong>{name === undefined ? words.lineErased(when) : words.line(when, name)}</strong>
      )}
      {seal.fingerprint !== undefined && (
        <span class={styles.print}>{words.fingerprint(fingerprintText(seal.fingerprint))}</span>
      )}
      <span class={seal.state === 'altered' ? styles.altered : undefined}>
        {checkWords[seal.state].label}
      </span>
    </div>
  );
}

/** Which walk this one corrects, and by which it was corrected. */
function Links({ model: { key, walk } }: { model: WalkModel }) {
  const links = valueOf(useLive(`links ${key}`, ['walk/', 'demo/walk/'], () => linksOf(key, walk)));
  if (!links) return null;
  const { corrects, correctedBy } = links;
  return (
    <>
      {corrects && <CorrectsLine linked={corrects} />}
      {correctedBy.map(({ key: by, walk: other }) => (
        <a key={by} class={styles.link} href={walkPath(by)}>
          {other?.finishedAt ? words.correctedBy(momentOf(other.finishedAt)) : words.correctedOpen}
        </a>
      ))}
    </>
  );
}

function CorrectsLine({ linked: { key, walk } }: { linked: LinkedWalk }) {
  if (!walk) return <p>{words.correctsGone}</p>;
  const at = walk.finishedAt ?? walk.startedAt;
  return (
    <a class={styles.link} href={walkPath(key, 'verdict')}>
      {words.corrects(at ? momentOf(at) : '')}
    </a>
  );
}
