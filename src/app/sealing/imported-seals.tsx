import type { RecordKey } from '../../core/keys.ts';
import { ok } from '../../core/result.ts';
import type { Stored } from '../../storage/store.ts';
import { checkWords, sealCard, sealed as words } from '../../words/en/sealing.ts';
import { useLive, valueOf } from '../data/live.ts';
import { besideOnPhone } from './beside.ts';
import { momentOf } from './moment-of.ts';
import { viewSeal, type SealView } from '../../files/seal-view.ts';
import { standingOf, useSigners, type Signers } from './use-signers.ts';
import { standingText } from './signer-standing.tsx';
import { keptSealsOf } from './walk-seals.ts';

async function sealsOf(walk: RecordKey<'walk'>): Promise<Stored<readonly SealView[]>> {
  const kept = await keptSealsOf(walk);
  if (!kept.ok || kept.value.length === 0) return kept.ok ? ok([]) : kept;
  const beside = await besideOnPhone(walk, false);
  if (!beside.ok) return beside;
  const seals: SealView[] = [];
  for (const seal of kept.value) seals.push(await viewSeal(seal.jws, beside.value, seal.key));
  return ok(seals);
}

function lineOf({ state, says, fingerprint }: SealView, signers: Signers | undefined): string {
  const when = says ? words.lineErased(momentOf(says.sealedAt)) : sealCard.seal;
  const whose = fingerprint === undefined ? [] : [standingText(standingOf(fingerprint, signers))];
  return [`${when}: ${checkWords[state].label}`, ...whose].join(', ');
}

/** Whether the seals of a walk that has just come in hold, and whose they are. */
export function ImportedSeals({ walk }: { walk: RecordKey<'walk'> }) {
  const seals = valueOf(useLive(`imported ${walk}`, ['seal/'], () => sealsOf(walk)));
  const [signers] = useSigners();
  if (!seals || !signers) return null;
  return (
    <>
      {seals.map((seal) => (
        <span key={seal.hash}>{lineOf(seal, signers)}</span>
      ))}
    </>
  );
}
