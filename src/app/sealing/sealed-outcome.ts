import type { Json } from '../../core/canonical-json.ts';
import type { WalkModel } from '../data/walk-model.ts';
import { sealedAnswers } from './sealed-answers.ts';

/** What the walk's purpose asks for beside the verdict: its answers and, of a rental return, the charge list. */
export async function sealedOutcome(model: WalkModel): Promise<Json> {
  const answers = sealedAnswers(model);
  if (model.walk.purpose !== 'rental-return') return answers;
  const { sealedCharge } = await import('../charging/sealed-charge.ts');
  const charge = await sealedCharge(model);
  return charge === undefined ? answers : { ...answers, charge };
}
