import type { Json } from '../../core/canonical-json.ts';
import { noHandOut } from '../../core/hand-out.ts';
import { ok } from '../../core/result.ts';
import type { Walk } from '../../core/walk.ts';
import type { Stored } from '../../storage/store.ts';
import type { WalkModel } from '../data/walk-model.ts';
import { loadCharge } from './load-charge.ts';
import { asSealed } from './signed-charge.ts';

/** The charge list as it is sealed: every line with its readings and why; what is not known is left out. */
export async function sealedCharge(model: WalkModel): Promise<Stored<Json>> {
  const charge = await loadCharge(model);
  return charge.ok ? ok(asSealed(charge.value.list)) : charge;
}

/**
 * What a return is signed by, for a walk that does not name it: whatever is entered for this machine later, the
 * signed list leans on this contract and this hand-out.
 */
export async function chargePins(model: WalkModel): Promise<Stored<Partial<Walk>>> {
  const charge = await loadCharge(model);
  if (!charge.ok) return charge;
  const { contractKey, input } = charge.value;
  const { contract, handOut } = model.walk;
  return ok({
    ...(contract === undefined && contractKey !== undefined && { contract: contractKey }),
    ...(handOut === undefined && { handOut: input.handOut?.key ?? noHandOut }),
  });
}
