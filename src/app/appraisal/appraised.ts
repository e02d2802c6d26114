import { appraise, type Appraisal } from '../../core/appraisal.ts';
import { settingsOf, type AppraisalSettings } from '../../core/appraisal-settings.ts';
import type { RecordKey } from '../../core/keys.ts';
import type { Outlook } from '../../core/outlook.ts';
import { changeUnsealed } from '../actions/walk.ts';
import type { WalkModel } from '../data/walk-model.ts';

/** The appraisal of a walk by these choices, or by those that the walk has. */
export const appraised = (
  { machine: { shape }, scored, walk }: WalkModel,
  outlook: Outlook,
  settings: AppraisalSettings = settingsOf(walk),
): Appraisal => appraise({ shape, scored, outlook, settings });

let lastSave: Promise<unknown> = Promise.resolve();

/** Keeps the choices with a walk that is not sealed; those made fast after each other are kept in their order. */
export function keepChoices(key: RecordKey<'walk'>, settings: AppraisalSettings) {
  const saving = lastSave.then(() => changeUnsealed(key, () => ({ appraisal: { ...settings } })));
  lastSave = saving.catch(() => undefined);
  return saving;
}
