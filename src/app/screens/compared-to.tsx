import { chooseLimit } from '../../core/limits.ts';
import { toMm } from '../../core/quantity.ts';
import type { Step } from '../../core/steps.ts';
import { pad } from '../../words/en/pad.ts';
import { sourceMarkWords } from '../../words/en/sources.ts';
import { limitsAt } from '../data/measuring.ts';
import { sizeText } from '../data/tool.ts';
import type { WalkModel } from '../data/walk-model.ts';
import styles from './walk.module.css';

/** What a size will be compared with, and where those figures are from. */
export function ComparedTo({ model, step }: { model: WalkModel; step: Step }) {
  const limits = limitsAt(model, step);
  const chosen = limits && chooseLimit(limits, 'hundred', model.walk.load);
  const id = step.items[0]?.id ?? '';
  if (!limits?.new || !chosen) return <p class={styles.quiet}>{pad.noLimit}</p>;
  const fresh = sizeText(id, toMm(limits.new.at, limits.unit));
  const limit = sizeText(id, toMm(chosen.at, limits.unit));
  return (
    <p class={styles.quiet}>
      {pad.newAndLimit(fresh, limit)} ({sourceMarkWords[limits.new.source.mark]},{' '}
      {sourceMarkWords[chosen.limit.source.mark]})
    </p>
  );
}
