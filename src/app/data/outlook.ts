import { isDemo } from '../../core/keys.ts';
import { outlookOf, type Outlook } from '../../core/outlook.ts';
import { ok, type Result } from '../../core/result.ts';
import type { StorageError } from '../../storage/errors.ts';
import { startingCostsFor } from '../../reference/cost-classes.ts';
import { loadBuiltIn } from './built-in.ts';
import { learntFromFleet } from './fleet.ts';
import { outlookShelf } from './outlook-shelf.ts';
import type { WalkModel } from './walk-model.ts';

/** Works out what lies ahead of the machine at this walk. */
export async function loadOutlook(
  model: WalkModel,
  earlier?: ReadonlyMap<string, number | 'never'>,
): Promise<Result<Outlook, StorageError>> {
  const shelf = await outlookShelf(model);
  if (!shelf.ok) return shelf;
  const starting = startingCostsFor(model.machine);
  // Demo machines are judged by the book: nothing invented mixes with the own fleet.
  const learnt = isDemo(model.key) ? undefined : await learntFromFleet();
  const options = { starting, ...(earlier && { earlier }), ...(learnt && { learnt }) };
  return ok(outlookOf(shelf.value, await loadBuiltIn(), model.key, model.assembled, model.scored, options));
}
