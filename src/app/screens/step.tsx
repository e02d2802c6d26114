import { useEffect } from 'preact/hooks';
import { stopWords } from '../../words/en/stops.ts';
import { hereKey } from '../actions/walk.ts';
import { cautionsFor } from '../data/cautions.ts';
import { hush } from '../data/notice.ts';
import { store } from '../data/phone.ts';
import { pathBefore } from '../data/step-flow.ts';
import { useTop } from '../data/use-top.ts';
import { CautionGate } from './caution-gate.tsx';
import { LookStep } from './look-step.tsx';
import { MeasureStep } from './measure-step.tsx';
import { SagStep } from './sag-step.tsx';
import type { StepProps } from './step-head.tsx';

/** One question of the walk, after the cautions that it needs. */
export function StepScreen({ model, step }: StepProps) {
  useEffect(() => void store.drafts.put(hereKey(model.key), step.id), [model.key, step.id]);
  // A notice of the screen before would lie over the keys.
  useEffect(hush, []);
  const cautions = cautionsFor(model, step);
  useTop(cautions.length > 0);
  if (cautions.length > 0)
    return <CautionGate {...{ model, cautions }} sub={stopWords[step.stop]} back={pathBefore(model, step)} />;
  if (step.kind === 'look') return <LookStep model={model} step={step} />;
  return step.kind === 'sag' ? (
    <SagStep model={model} step={step} />
  ) : (
    <MeasureStep model={model} step={step} />
  );
}
