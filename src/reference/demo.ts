import { makeKey, makePlace, type Id, type Place, type RecordKey } from '../core/keys.ts';
import type { Machine } from '../core/machine.ts';
import type { Observed, Reading } from '../core/readings.ts';
import { stepsOf } from '../core/steps.ts';
import type { Walk, Work } from '../core/walk.ts';
import { demoMachines, type DemoMachine, type DemoWalk } from './demo-machines.ts';

/** A record of the demo; its key stands under `demo/`, so that it never mixes with real data. */
export interface DemoRecord {
  readonly key: RecordKey;
  readonly value: Machine | Walk | Work | Reading;
}

function record(walkId: Id, walk: Walk, place: Place, item: string, n: number, what: Observed): DemoRecord {
  const at = walk.startedAt;
  const value: Reading = { v: 1, what, spot: n, ...(at && { at }) };
  return { key: makeKey({ kind: 'reading', walk: walkId, place, item, n, demo: true }), value };
}

/** The walk; every group of it looked at and found fine, and beside that the readings that say otherwise. */
function walkRecords(machine: Machine, { walk, walkId, readings }: DemoWalk): readonly DemoRecord[] {
  const looks = stepsOf(machine, walk, 'raised').filter(({ kind }) => kind === 'look');
  const passed = looks.map(({ place, pass, items }) => {
    const what: Observed = { kind: 'pass', items: items.map(({ id }) => id), except: [], seen: 'whole' };
    return record(walkId, walk, place, pass, 1, what);
  });
  const read = readings.map(({ place, item, n, what }) =>
    record(walkId, walk, makePlace(place), item, n, what),
  );
  return [{ key: makeKey({ kind: 'walk', id: walkId, demo: true }), value: walk }, ...passed, ...read];
}

function recordsOf(demo: DemoMachine): readonly DemoRecord[] {
  const { machineId, machine, workId, work, before } = demo;
  return [
    { key: makeKey({ kind: 'machine', id: machineId, demo: true }), value: machine },
    { key: makeKey({ kind: 'work', machine: machineId, id: workId, demo: true }), value: work },
    ...[...before, demo].flatMap((each) => walkRecords(machine, each)),
  ];
}

/** The demo machines with the work done on them and their walks, all invented. */
export const demoRecords = (): readonly DemoRecord[] => demoMachines.flatMap(recordsOf);
