import type { ComponentChildren } from 'preact';
import { useLocation } from 'preact-iso';
import type { Side } from '../../core/machine.ts';
import type { Step } from '../../core/steps.ts';
import { modeWords, stopWords } from '../../words/en/stops.ts';
import { step as words } from '../../words/en/walk.ts';
import { walkPath } from '../data/paths.ts';
import type { WalkModel } from '../data/walk-model.ts';
import { stepsInZone, zonesOf } from '../data/zones.ts';
import { ReceiptLine } from '../parts/receipt-line.tsx';
import { TrackMap, type Zone } from '../parts/track-map.tsx';

export interface StepProps {
  readonly model: WalkModel;
  readonly step: Step;
}

/** Where one stands, above every question: the map, or what is more to the point, and what the last reading led to. */
export function StepHead({ model, step, children }: StepProps & { readonly children?: ComponentChildren }) {
  const { route } = useLocation();
  const side: Side = step.side === 'right' ? 'right' : 'left';
  const jump = (zone: Zone): void => {
    const [first] = stepsInZone(model, side, zone);
    if (first) route(walkPath(model.key, first.id));
  };
  return (
    <>
      {children ?? (
        <TrackMap shape={model.machine.shape} side={side} zones={zonesOf(model, side, step)} onZone={jump} />
      )}
      <ReceiptLine model={model} />
    </>
  );
}

/** The line under a step's title. */
export function stepSub(model: WalkModel, step: Step): string {
  const done = [...model.progress.values()].filter(({ state }) => state !== 'todo').length;
  const mode = step.mode === 'two-people' ? [modeWords[step.mode]] : [];
  return [stopWords[step.stop], ...mode, words.progress(done, model.steps.length)].join(' · ');
}
