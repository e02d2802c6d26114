import { isToSettle } from '../../core/rental-line.ts';
import { charge as words } from '../../words/en/charge.ts';
import { formatter } from '../data/format.ts';
import { walkPath } from '../data/paths.ts';
import type { WalkModel } from '../data/walk-model.ts';
import { ButtonLink } from '../parts/button.tsx';
import { useCharge } from './load-charge.ts';
import styles from './charging.module.css';

/** What the renter is about to sign for, with the way to all of it. */
export function ChargeSum({ model }: { model: WalkModel }) {
  const charge = useCharge(model);
  if (charge === undefined || charge === 'failed') return null;
  const { lines, grossMinor, currency } = charge.list;
  const open = lines.some(({ standing }) => standing.kind === 'open');
  const toSettle = lines.filter(isToSettle).length;
  const sum = grossMinor > 0 ? words.toPay(formatter.value.money(grossMinor, currency)) : undefined;
  return (
    <>
      <p class={styles.sum}>{sum ?? (open ? words.nothingYet : words.nothing)}</p>
      {toSettle > 0 && <p>{words.toSettleCount(toSettle)}</p>}
      <ButtonLink look="plain" href={walkPath(model.key, 'charge')}>
        {words.title}
      </ButtonLink>
    </>
  );
}
