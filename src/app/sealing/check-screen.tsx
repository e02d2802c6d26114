import { useRef, useState } from 'preact/hooks';
import { common } from '../../words/en/common.ts';
import { check as words, sealCard } from '../../words/en/sealing.ts';
import { fileErrorLine } from '../../words/en/file-errors.ts';
import { fingerprintText } from '../../seal/fingerprint.ts';
import { tell } from '../data/notice.ts';
import { Button, ButtonLink } from '../parts/button.tsx';
import { FileButton } from '../parts/file-button.tsx';
import { ImportProgress } from '../screens/import-progress.tsx';
import { Screen, Section } from '../parts/screen.tsx';
import { checkFile, type FileChecked } from './check-file.ts';
import { forgetSigner, rememberSigner, type KnownSigner } from './known-signers.ts';
import { SealCard } from './seal-card.tsx';
import styles from './sealing.module.css';
import { standingOf, useSigners, type Signers } from './use-signers.ts';

/** Anybody with a file sees here whether it is as it was sealed and who signed; nothing of it is kept. */
export function CheckScreen() {
  const [result, setResult] = useState<FileChecked>();
  const [share, setShare] = useState<number>();
  const stop = useRef<AbortController | undefined>(undefined);
  const [signers, again] = useSigners();
  const look = async (file: File): Promise<void> => {
    const controller = new AbortController();
    stop.current = controller;
    setResult(undefined);
    setShare(0);
    const onProgress = (done: number, of: number): void => setShare(of > 0 ? done / of : 0);
    const checked = await checkFile(file, { stop: controller.signal, onProgress });
    setShare(undefined);
    if (!controller.signal.aborted) setResult(checked);
  };
  return (
    <Screen title={words.title} bar={<ButtonLink href="/settings">{common.back}</ButtonLink>}>
      <p>{words.what}</p>
      {share === undefined ? (
        <FileButton
          label={result === undefined ? words.choose : words.another}
          onFile={(file) => void look(file)}
        />
      ) : (
        <ImportProgress share={share} onCancel={() => stop.current?.abort()} />
      )}
      <div role="status" class={styles.results}>
        {result && <Result result={result} signers={signers} onKnown={again} />}
      </div>
      <KnownSigners signers={signers} onChange={again} />
    </Screen>
  );
}

interface ResultProps {
  readonly result: FileChecked;
  readonly signers: Signers | undefined;
  readonly onKnown: () => void;
}

function Result({ result, signers, onKnown }: ResultProps) {
  if (result.kind === 'refused') return <p class={styles.fault}>{fileErrorLine(result.error)}</p>;
  if (result.kind === 'backup') return <p class={styles.fault}>{words.backup}</p>;
  if (result.seals.length === 0) return <p class={styles.fault}>{words.noSeal}</p>;
  return (
    <>
      {result.fork && <p class={styles.fault}>{sealCard.fork}</p>}
      {result.seals.map((seal, at) => (
        <SealCard
          key={at}
          seal={seal}
          here={result.here}
          standing={standingOf(seal.fingerprint, signers)}
          onKnown={onKnown}
        />
      ))}
      <p class={styles.soft}>{words.nothingKept}</p>
    </>
  );
}

function KnownSigners({ signers, onChange }: { signers: Signers | undefined; onChange: () => void }) {
  if (!signers) return null;
  const forget = async (signer: KnownSigner): Promise<void> => {
    await forgetSigner(signer.fingerprint);
    tell(sealCard.forgotten(signer.name), () => rememberSigner(signer).then(onChange));
    onChange();
  };
  return (
    <>
      <Section title={words.own}>
        {signers.own === undefined ? (
          <p>{words.noOwn}</p>
        ) : (
          <p class={styles.print}>{fingerprintText(signers.own)}</p>
        )}
      </Section>
      <Section title={words.known}>
        {signers.known.length === 0 && <p>{words.noneKnown}</p>}
        {signers.known.map((signer) => (
          <div key={signer.fingerprint} class={styles.person}>
            <strong>{signer.name}</strong>
            <span class={styles.print}>{fingerprintText(signer.fingerprint)}</span>
            <Button look="plain" onTap={() => void forget(signer)}>
              {sealCard.forget}
            </Button>
          </div>
        ))}
      </Section>
    </>
  );
}
