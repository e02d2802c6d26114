import { assemble, valueIn, type Assembled, type Shelf } from '../core/assemble.ts';
import type { RecordKey } from '../core/keys.ts';
import type { Machine } from '../core/machine.ts';
import { learn, lessonOf } from '../core/fleet.ts';
import { historiesOf } from '../core/history.ts';
import { historyInput, outlookOf, type Outlook } from '../core/outlook.ts';
import { score, type Scored } from '../core/score.ts';
import { compareBytewise } from '../core/stamp.ts';
import type { Walk } from '../core/walk.ts';
import { builtIn } from '../reference/built-in.ts';
import { startingCostsFor } from '../reference/cost-classes.ts';

/** A machine of a file at its last walk. */
export interface AtLastWalk {
  readonly machine: string;
  readonly name: string;
  readonly walk: string;
  readonly assembled: Assembled;
  readonly scored: Scored;
  readonly outlook: Outlook;
}

/** The outlook of every machine in a file at its last walk; walks that cannot be read have none. */
export function outlooksOf(shelf: Shelf, walks: readonly RecordKey[]): readonly AtLastWalk[] {
  const last = new Map<string, { readonly key: string; readonly at: string }>();
  for (const key of walks) {
    const walk = valueIn<Walk>(shelf.get(key));
    if (!walk) continue;
    const known = last.get(walk.machine);
    const at = walk.startedAt?.utc ?? '';
    const isLater = !known || (compareBytewise(at, known.at) || compareBytewise(key, known.key)) > 0;
    if (isLater) last.set(walk.machine, { key, at });
  }
  const gathered = [...last].flatMap(([machineKey, { key }]) => {
    const made = assemble(shelf, builtIn, key);
    const machine = valueIn<Machine>(shelf.get(machineKey));
    return made.ok && machine ? [{ machineKey, key, machine, assembled: made.value }] : [];
  });
  // The machines of one file are one fleet.
  const learnt = learn(
    gathered.map(({ key, assembled }) =>
      lessonOf(historiesOf(historyInput(shelf, builtIn, key, assembled)), builtIn.life.kappa.value),
    ),
  );
  return gathered.map(({ machineKey, key, machine, assembled }) => {
    const scored = score(assembled.input);
    const starting = startingCostsFor(machine);
    const outlook = outlookOf(shelf, builtIn, key, assembled, scored, { starting, learnt });
    return { machine: machineKey, name: machine.name, walk: key, assembled, scored, outlook };
  });
}
