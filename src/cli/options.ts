import { valueIn, type Shelf } from '../core/assemble.ts';
import { costsFor } from '../core/costs-for.ts';
import { isKind, type RecordKey } from '../core/keys.ts';
import type { Machine } from '../core/machine.ts';
import type { NamedOption } from '../core/option-answer.ts';
import { currentTrack, knownUse } from '../core/option-current.ts';
import { learntLife } from '../core/option-learnt.ts';
import type { Option } from '../core/option.ts';
import { optionsFor } from '../core/options.ts';
import { err, ok, type Result } from '../core/result.ts';
import type { Walk } from '../core/walk.ts';
import { optionsOfMachine, type OptionsOfMachine } from '../files/options.ts';
import { shelfOf } from '../files/shelf.ts';
import { readWalkFile } from '../files/walk-file.ts';
import { builtIn } from '../reference/built-in.ts';
import { startingCostsFor } from '../reference/cost-classes.ts';
import { optionPrices } from '../reference/option-prices.ts';
import { optionTables } from '../reference/option-tables.ts';
import { plainOptions } from '../reference/options.ts';
import { outlooksOf, type AtLastWalk } from './outlook.ts';
import { cli } from '../words/en/cli.ts';
import { fileErrorLine } from '../words/en/file-errors.ts';

/** What `sagline options` prints. */
export interface OptionsFile {
  readonly format: 'sagline-options';
  readonly version: 1;
  readonly machines: readonly OptionsOfMachine[];
}

type Keyed = Shelf & { readonly keys: readonly RecordKey[] };

function optionsAt(shelf: Keyed, machineKey: string): readonly NamedOption[] {
  return shelf.keys.flatMap((key) => {
    const option = isKind(key, 'option') ? valueIn<Option>(shelf.get(key)) : undefined;
    const isFor = option && (option.machine === undefined || option.machine === machineKey);
    return isFor ? [{ id: key, option }] : [];
  });
}

function optionsOf(
  shelf: Keyed,
  key: RecordKey,
  machine: Machine,
  last: AtLastWalk | undefined,
): OptionsOfMachine {
  const named = optionsAt(shelf, key);
  const options = named.length > 0 ? named : plainOptions(machine.shape.track);
  const current = currentTrack(machine, named);
  const costs = costsFor(shelf, builtIn, machine, startingCostsFor(machine));
  const pricesFor = optionPrices(machine, costs);
  const walk = last && valueIn<Walk>(shelf.get(last.walk));
  const use = knownUse(machine, walk);
  const learnt = walk && learntLife(machine.shape.track, last.outlook.hours.parts, walk);
  const result = optionsFor({ machine, current, options, use, pricesFor, tables: optionTables, learnt });
  return optionsOfMachine(key, machine.name, current, result);
}

/** Compares tracks for every machine of a file, or says in one sentence why not. */
export function optionsFile(bytes: Uint8Array): Result<OptionsFile, string> {
  const content = readWalkFile(bytes);
  if (!content.ok) return err(fileErrorLine(content.error));
  const shelf = shelfOf(content.value);
  const walks = shelf.keys.filter((key) => isKind(key, 'walk'));
  const last = new Map(outlooksOf(shelf, walks).map((each) => [each.machine, each]));
  const machines = shelf.keys.flatMap((key) => {
    const machine = isKind(key, 'machine') ? valueIn<Machine>(shelf.get(key)) : undefined;
    return machine ? [optionsOf(shelf, key, machine, last.get(key))] : [];
  });
  return machines.length === 0
    ? err(cli.noMachineAtAll)
    : ok({ format: 'sagline-options', version: 1, machines });
}
