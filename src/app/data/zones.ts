import { callRank } from '../../core/calls.ts';
import type { Component } from '../../core/items.ts';
import type { Side } from '../../core/machine.ts';
import type { Step } from '../../core/steps.ts';
import { componentNames, sideNames } from '../../words/en/items.ts';
import { walk as words } from '../../words/en/walk.ts';
import type { Zone, ZoneState } from '../parts/track-map.tsx';
import type { WalkModel } from './walk-model.ts';

const zoneOf: Record<Component, Zone | undefined> = {
  machine: undefined,
  idler: 'front',
  adjuster: 'front',
  track: 'track',
  'carrier-roller': 'top',
  'slide-plate': 'top',
  'bottom-roller': 'under',
  suspension: 'under',
  frame: 'under',
  sprocket: 'rear',
  motor: 'rear',
};

const namedFor: Record<Zone, Component> = {
  front: 'idler',
  track: 'track',
  top: 'carrier-roller',
  under: 'bottom-roller',
  rear: 'sprocket',
};

/** The steps that a zone of one side stands for, in walking order. */
export const stepsInZone = (model: WalkModel, side: Side, zone: Zone): readonly Step[] =>
  model.steps.filter((step) => step.side === side && zoneOf[step.component] === zone);

function markOf(model: WalkModel, steps: readonly Step[]): ZoneState['mark'] {
  const all = steps.flatMap(({ id }) => model.progress.get(id) ?? []);
  if (all.some(({ call }) => callRank(call) > 0)) return 'needs';
  if (all.every(({ state }) => state === 'done')) return 'done';
  return all.some(({ state }) => state !== 'todo') ? 'partly' : 'none';
}

const stateWord: Record<ZoneState['mark'], string> = {
  none: words.stopOpen,
  partly: words.stopPartly,
  done: words.stopDone,
  needs: words.stopNeeds,
};

/** The states of the map's zones on one side; a zone without steps is not shown. */
export function zonesOf(
  model: WalkModel,
  side: Side,
  here: Step | undefined,
): Partial<Record<Zone, ZoneState>> {
  const zones: Partial<Record<Zone, ZoneState>> = {};
  for (const zone of Object.keys(namedFor) as Zone[]) {
    const steps = stepsInZone(model, side, zone);
    if (steps.length === 0) continue;
    const mark = markOf(model, steps);
    const isHere = here !== undefined && steps.includes(here);
    const place = `${sideNames[side]} ${componentNames[namedFor[zone]].one}`;
    const state = isHere ? words.stopHere : stateWord[mark];
    zones[zone] = { here: isHere, mark, label: words.jumpTo(place, state) };
  }
  return zones;
}
