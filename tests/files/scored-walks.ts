import { outlooksOf } from '../../src/cli/outlook.ts';
import { assemble, valueIn } from '../../src/core/assemble.ts';
import { isKind, type RecordKey } from '../../src/core/keys.ts';
import type { Machine } from '../../src/core/machine.ts';
import type { Outlook } from '../../src/core/outlook.ts';
import { score, type Scored } from '../../src/core/score.ts';
import type { PlacedReading } from '../../src/core/states.ts';
import type { Walk } from '../../src/core/walk.ts';
import { shelfOf } from '../../src/files/shelf.ts';
import { readWalkFile } from '../../src/files/walk-file.ts';
import { builtIn } from '../../src/reference/built-in.ts';

export interface FullWalk {
  readonly key: RecordKey;
  readonly walk: Walk;
  readonly machine: Machine;
  readonly scored: Scored;
  readonly readings: readonly PlacedReading[];
  /** Of the last walk of a machine. */
  readonly outlook: Outlook | undefined;
}

/** Every walk of a walk file, scored. */
export function walksOf(text: string): readonly FullWalk[] {
  const content = readWalkFile(text);
  if (!content.ok) throw new Error(content.error.kind);
  const shelf = shelfOf(content.value);
  const keys = shelf.keys.filter((key) => isKind(key, 'walk'));
  const outlooks = new Map(outlooksOf(shelf, keys).map(({ walk, outlook }) => [walk, outlook]));
  return keys.map((key) => {
    const assembled = assemble(shelf, builtIn, key);
    const walk = valueIn<Walk>(shelf.get(key));
    if (!assembled.ok || !walk) throw new Error(`no walk ${key}`);
    const { input } = assembled.value;
    const { machine, readings } = input;
    return { key, walk, machine, readings, scored: score(input), outlook: outlooks.get(key) };
  });
}
