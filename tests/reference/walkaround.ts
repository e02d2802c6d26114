import type { LimitSheet } from '../../src/core/limits.ts';
import type { Machine, TrackKind } from '../../src/core/machine.ts';
import type { RuleSet } from '../../src/core/rules.ts';
import type { PlacedReading, ScoreInput } from '../../src/core/states.ts';
import { stepsOf } from '../../src/core/steps.ts';
import type { Walk } from '../../src/core/walk.ts';

/** A machine with every component, so that each item has a place on one of the two kinds of track. */
export const machineOn = (track: TrackKind): Machine => ({
  v: 1,
  name: 'bench',
  kind: 'excavator',
  massKg: track.startsWith('rubber-c') ? 3000 : 21_000,
  shape: {
    track,
    drive: 'oval',
    idlers: 1,
    bottomRollers: 2,
    carrierRollers: 1,
    slidePlate: true,
    suspension: 'torsion',
    flanges: 'double',
    tensioner: 'grease',
  },
});

export const fullWalk: Walk = {
  v: 1,
  machine: 'machine/bench',
  purpose: 'jobsite',
  depth: 'full',
  start: 'walk',
  corner: 'front-left',
};

/** Everything that can be passed by eye, passed. */
export function allPassed(machine: Machine, walk: Walk): readonly PlacedReading[] {
  return stepsOf(machine, walk, 'raised')
    .filter(({ kind }) => kind === 'look')
    .map(({ place, pass, items }) => ({
      place,
      item: pass,
      n: 1,
      reading: {
        v: 1,
        what: { kind: 'pass', items: items.map(({ id }) => id), except: [], seen: 'whole' },
      },
    }));
}

export const inputOf = (
  machine: Machine,
  sheet: LimitSheet | undefined,
  rules: RuleSet | undefined,
  readings: readonly PlacedReading[],
  walk: Walk = fullWalk,
): ScoreInput => ({ machine, walk, sheets: { left: sheet, right: sheet }, rules, readings });
