import { lazy } from 'preact-iso';
import { isDemo, parseKey, prefixOf } from '../../core/keys.ts';
import { ok } from '../../core/result.ts';
import { shownCall } from '../../core/verdict.ts';
import { callWords, openCall } from '../../words/en/calls.ts';
import { sealForm as words } from '../../words/en/sealing.ts';
import { formatter } from '../data/format.ts';
import { useLive, valueOf } from '../data/live.ts';
import { store } from '../data/phone.ts';
import type { WalkModel } from '../data/walk-model.ts';
import { CallMark } from '../parts/call-mark.tsx';
import { Facts } from '../parts/facts.tsx';
import { Fold } from '../parts/fold.tsx';
import { Section } from '../parts/screen.tsx';
import { openLines } from './open-lines.ts';
import styles from './sealing.module.css';

const ChargeSum = lazy(() => import('../charging/charge-sum.tsx').then((each) => each.ChargeSum));

/** How many records of a kind belong to a walk. */
function useCount(key: string, kind: 'photo' | 'seal'): number | undefined {
  const parts = parseKey(key);
  const prefix = parts?.kind === 'walk' ? prefixOf(kind, { owner: parts.id, demo: isDemo(key) }) : kind;
  return valueOf(
    useLive(`count ${prefix}`, [prefix], async () => {
      const rows = await store.list({ prefix });
      return rows.ok ? ok(rows.value.filter(({ versions }) => versions.at(-1)?.value).length) : rows;
    }),
  );
}

/** Up to here a list is read at a glance; a longer one is folded away. */
const shortList = 4;

/** The verdict in a line, how much it stands on, and plainly what is not known. */
export function WhatIsSealed({ model }: { model: WalkModel }) {
  const photos = useCount(model.key, 'photo');
  const seals = useCount(model.key, 'seal');
  const call = shownCall(model.scored.verdict);
  const open = openLines(model);
  const { readings } = model.assembled.input;
  const { meterHours } = model.walk;
  const list = (
    <ul class={styles.list}>
      {open.map((line) => (
        <li key={line}>{line}</li>
      ))}
    </ul>
  );
  return (
    <Section title={words.what}>
      {seals !== undefined && seals > 0 && <p class={styles.fault}>{words.again}</p>}
      <p class={styles.verdict}>
        <CallMark call={call} size={28} />
        <span>{call === 'open' ? openCall.line : callWords[call].line}</span>
      </p>
      <Facts
        facts={[
          [words.readings, formatter.value.number(readings.length)],
          [words.photos, formatter.value.number(photos ?? 0)],
          [words.hours, meterHours === undefined ? undefined : formatter.value.hours(meterHours)],
        ]}
      />
      {model.walk.purpose === 'rental-return' && <ChargeSum model={model} />}
      {open.length === 0 && <p>{words.nothingOpen}</p>}
      {open.length > 0 && <p class={styles.fault}>{words.sealedAsOpen(open.length)}</p>}
      {open.length > shortList ? <Fold title={words.openList}>{list}</Fold> : list}
    </Section>
  );
}
