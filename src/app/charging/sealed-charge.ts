import type { Json } from '../../core/canonical-json.ts';
import type { WalkModel } from '../data/walk-model.ts';
import { loadCharge } from './load-charge.ts';

/** The charge list as it is sealed: every line with its readings and why; what is not known is left out. */
export async function sealedCharge(model: WalkModel): Promise<Json | undefined> {
  const charge = await loadCharge(model);
  return charge.ok ? (JSON.parse(JSON.stringify(charge.value.list)) as Json) : undefined;
}
