import { useEffect, useState } from 'preact/hooks';
import { knownSigners, type KnownSigner } from './known-signers.ts';
import { ownFingerprint } from './own-key.ts';
import type { Standing } from './signer-standing.tsx';

export interface Signers {
  /** Absent while this phone has sealed nothing. */
  readonly own: string | undefined;
  readonly known: readonly KnownSigner[];
}

/** The keys that this phone knows, and how to read them again. */
export function useSigners(): readonly [Signers | undefined, () => void] {
  const [signers, setSigners] = useState<Signers>();
  const [turn, setTurn] = useState(0);
  useEffect(() => {
    let current = true;
    void Promise.all([ownFingerprint(), knownSigners()]).then(([own, known]) => {
      if (current) setSigners({ own, known });
    });
    return () => {
      current = false;
    };
  }, [turn]);
  return [signers, () => setTurn(turn + 1)];
}

/** Whose key it is, as far as this phone knows. */
export function standingOf(fingerprint: string | undefined, signers: Signers | undefined): Standing {
  if (fingerprint !== undefined && fingerprint === signers?.own) return { kind: 'own' };
  const known = signers?.known.find((each) => each.fingerprint === fingerprint);
  return known ? { kind: 'known', name: known.name } : { kind: 'unknown' };
}
