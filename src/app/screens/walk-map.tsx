import { useLocation } from 'preact-iso';
import { sides, type Side } from '../../core/machine.ts';
import { common } from '../../words/en/common.ts';
import { stopWords } from '../../words/en/stops.ts';
import { step as words, walk } from '../../words/en/walk.ts';
import { stepTitle } from '../data/describe.ts';
import { walkPath } from '../data/paths.ts';
import type { WalkModel } from '../data/walk-model.ts';
import { stepsInZone, zonesOf } from '../data/zones.ts';
import { ButtonLink, RowLink, RowText } from '../parts/button.tsx';
import { CallMark } from '../parts/call-mark.tsx';
import { Screen, Section } from '../parts/screen.tsx';
import { PhotosOf } from './photos-here.tsx';
import { TrackMap, type Zone } from '../parts/track-map.tsx';

const stateWords = {
  todo: walk.stopOpen,
  partly: walk.stopPartly,
  done: walk.stopDone,
  open: walk.couldNot,
} as const;

/** The whole walk on one page: both sides as maps, and every question as a list to jump to. */
export function WalkMap({ model }: { model: WalkModel }) {
  const { route } = useLocation();
  const jump = (side: Side) => (zone: Zone) => {
    const [first] = stepsInZone(model, side, zone);
    if (first) route(walkPath(model.key, first.id));
  };
  const done = [...model.progress.values()].filter(({ state }) => state !== 'todo').length;
  const stops = [...new Set(model.steps.map(({ stop }) => stop))];
  return (
    <Screen
      title={model.machine.name}
      sub={words.progress(done, model.steps.length)}
      bar={
        <>
          <ButtonLink href="/">{walk.leave}</ButtonLink>
          <ButtonLink look="main" href={walkPath(model.key, 'verdict')}>
            {walk.toVerdict}
          </ButtonLink>
        </>
      }
    >
      {sides.map((side) => (
        <Section key={side} title={common[side]}>
          <TrackMap
            shape={model.machine.shape}
            side={side}
            zones={zonesOf(model, side, undefined)}
            onZone={jump(side)}
          />
        </Section>
      ))}
      {model.rental && <model.rental.Links model={model} />}
      <PhotosOf walk={model.key} />
      {stops.map((stop) => (
        <Section key={stop} title={stopWords[stop]}>
          {model.steps
            .filter((step) => step.stop === stop)
            .map((step) => (
              <RowLink key={step.id} href={walkPath(model.key, step.id)}>
                <RowText
                  name={stepTitle(step)}
                  line={stateWords[model.progress.get(step.id)?.state ?? 'todo']}
                />
                {model.progress.get(step.id)?.state !== 'todo' && (
                  <CallMark call={model.progress.get(step.id)?.call ?? 'run'} />
                )}
              </RowLink>
            ))}
        </Section>
      ))}
    </Screen>
  );
}
