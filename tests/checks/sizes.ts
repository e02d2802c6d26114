import type { ItemLimits, Limit, LimitSheet } from '../../src/core/limits.ts';
import type { Source } from '../../src/core/source.ts';

const source: Source = { mark: 'published', text: 'see the title' };

export const limitAt = (at: number, extra: Partial<Limit> = {}): Limit => ({
  at,
  means: 'service',
  hundred: true,
  source,
  ...extra,
});

/** New and limit size of an item in millimetres; a tolerance ±a counts as a/√3. */
export const entryOf = (item: string, fresh: number, limit: number, tolerance = 0): ItemLimits => ({
  item,
  unit: 'mm',
  new: { at: fresh, tolerance, source },
  limits: [limitAt(limit)],
});

export const sheetOf = (items: readonly ItemLimits[], sag: LimitSheet['sag'] = []): LimitSheet => ({
  v: 1,
  name: 'check',
  items: [...items],
  sag,
});
