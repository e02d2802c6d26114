import type { Json } from '../../core/canonical-json.ts';
import type { Outlook } from '../../core/outlook.ts';
import type { WalkModel } from '../data/walk-model.ts';
import { sealedAnswers } from './sealed-answers.ts';

/** What the walk's purpose asks for beside the verdict: its answers, and the charge list or the sums of an appraisal. */
export async function sealedOutcome(model: WalkModel, outlook: Outlook): Promise<Json> {
  const answers = sealedAnswers(model);
  if (model.walk.purpose === 'appraisal') {
    const { sealedAppraisal } = await import('../appraisal/sealed-appraisal.ts');
    return { ...answers, appraisal: sealedAppraisal(model, outlook) };
  }
  if (model.walk.purpose !== 'rental-return') return answers;
  const { sealedCharge } = await import('../charging/sealed-charge.ts');
  const charge = await sealedCharge(model);
  return charge === undefined ? answers : { ...answers, charge };
}
