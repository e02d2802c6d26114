import type { Json } from '../../core/canonical-json.ts';
import type { Outlook } from '../../core/outlook.ts';
import { ok } from '../../core/result.ts';
import type { Walk } from '../../core/walk.ts';
import type { Stored } from '../../storage/store.ts';
import type { WalkModel } from '../data/walk-model.ts';
import { sealedAnswers } from './sealed-answers.ts';

/** What the walk's purpose asks for beside the verdict: its answers, and the charge list or the sums of an appraisal. */
export async function sealedOutcome(model: WalkModel, outlook: Outlook): Promise<Stored<Json>> {
  const answers = sealedAnswers(model);
  if (model.walk.purpose === 'appraisal') {
    const { sealedAppraisal } = await import('../appraisal/sealed-appraisal.ts');
    return ok({ ...answers, appraisal: sealedAppraisal(model, outlook) });
  }
  if (model.walk.purpose !== 'rental-return') return ok(answers);
  const { sealedCharge } = await import('../charging/sealed-charge.ts');
  const charge = await sealedCharge(model);
  return charge.ok ? ok({ ...answers, charge: charge.value }) : charge;
}

/** What a walk must name to be sealed, and does not yet: of a rental return its contract and its hand-out. */
export async function pinsOf(model: WalkModel): Promise<Stored<Partial<Walk>>> {
  if (model.walk.purpose !== 'rental-return') return ok({});
  const { chargePins } = await import('../charging/sealed-charge.ts');
  return chargePins(model);
}
