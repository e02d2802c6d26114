import { useState } from 'preact/hooks';
import { sealCard as words } from '../../words/en/sealing.ts';
import { common } from '../../words/en/common.ts';
import { fingerprintText } from '../../seal/fingerprint.ts';
import { tell } from '../data/notice.ts';
import { Button } from '../parts/button.tsx';
import { Field } from '../parts/field.tsx';
import { rememberSigner } from './known-signers.ts';
import styles from './sealing.module.css';

/** What this phone knows of a key. */
export type Standing =
  { readonly kind: 'own' | 'unknown' } | { readonly kind: 'known'; readonly name: string };

interface SignerStandingProps {
  readonly fingerprint: string;
  readonly standing: Standing;
  /** Called once an unknown signer is known; without it the signer cannot be marked here. */
  readonly onKnown?: () => void;
}

/** Whose key it is, in a few words. */
export function standingText(standing: Standing): string {
  return standing.kind === 'known' ? words.known(standing.name) : words[standing.kind];
}

/** The key's fingerprint and whose it is; an unknown one can be marked as known under a name. */
export function SignerStanding({ fingerprint, standing, onKnown }: SignerStandingProps) {
  return (
    <>
      <h3>{words.by}</h3>
      <p class={styles.print}>{fingerprintText(fingerprint)}</p>
      <p class={standing.kind === 'unknown' ? styles.fault : undefined}>{standingText(standing)}</p>
      {standing.kind === 'unknown' && <p>{words.unknownLine}</p>}
      {standing.kind === 'unknown' && onKnown && <Remember fingerprint={fingerprint} onKnown={onKnown} />}
    </>
  );
}

function Remember({ fingerprint, onKnown }: { fingerprint: string; onKnown: () => void }) {
  const [asking, setAsking] = useState(false);
  const [name, setName] = useState('');
  const keep = async (): Promise<void> => {
    const given = name.trim();
    if (given === '') return;
    await rememberSigner({ fingerprint, name: given });
    tell(words.remembered(given));
    onKnown();
  };
  if (!asking)
    return (
      <Button look="plain" onTap={() => setAsking(true)}>
        {words.remember}
      </Button>
    );
  return (
    <>
      <Field label={words.rememberName} value={name} onInput={setName} />
      {/* A button of its own: as the one before it, its first tap would pass for an echo. */}
      <Button key="save" disabled={name.trim() === ''} onTap={() => void keep()}>
        {common.save}
      </Button>
    </>
  );
}
