import { appraise, type Appraisal } from '../../core/appraisal.ts';
import { settingsOf, type AppraisalSettings } from '../../core/appraisal-settings.ts';
import { isDemo, partsOf, prefixOf, type RecordKey } from '../../core/keys.ts';
import type { Outlook } from '../../core/outlook.ts';
import { ok } from '../../core/result.ts';
import { changeWalk } from '../actions/walk.ts';
import type { Saved } from '../actions/saved.ts';
import { store } from '../data/phone.ts';
import type { WalkModel } from '../data/walk-model.ts';

/** The appraisal of a walk by these choices, or by those that the walk has. */
export const appraised = (
  { machine: { shape }, scored, walk }: WalkModel,
  outlook: Outlook,
  settings: AppraisalSettings = settingsOf(walk),
): Appraisal => appraise({ shape, scored, outlook, settings });

let lastSave: Promise<unknown> = Promise.resolve();

/** A sealed walk stays as it was sealed. */
async function keep(key: RecordKey<'walk'>, settings: AppraisalSettings): Promise<Saved> {
  const prefix = prefixOf('seal', { owner: partsOf(key).id, demo: isDemo(key) });
  const seals = await store.list({ prefix, limit: 1 });
  if (!seals.ok) return seals;
  return seals.value.length > 0 ? ok() : changeWalk(key, () => ({ appraisal: { ...settings } }));
}

/** Keeps the choices with the walk; those made fast after each other are kept in their order. */
export function keepChoices(key: RecordKey<'walk'>, settings: AppraisalSettings): Promise<Saved> {
  const saving = lastSave.then(() => keep(key, settings));
  lastSave = saving.catch(() => undefined);
  return saving;
}
