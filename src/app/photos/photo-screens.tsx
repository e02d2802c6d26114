import { useLocation } from 'preact-iso';
import { common } from '../../words/en/common.ts';
import { sequenceStep, walkPath } from '../data/paths.ts';
import type { WalkModel } from '../data/walk-model.ts';
import { ButtonLink } from '../parts/button.tsx';
import { Screen } from '../parts/screen.tsx';
import { groupsOf, inOrder } from './photo-groups.ts';
import { MeasurePhoto } from './measure-photo.tsx';
import { PhotoList } from './photo-list.tsx';
import { PhotoView } from './photo-view.tsx';
import { photosPath, useWalkPhotos } from './walk-photos.ts';
import { photos as words } from '../../words/en/photos.ts';

/** The step or place in the sequence that the address says to come back to, as far as there is one. */
const backTo = ({ steps, rental }: WalkModel, asked: string): string | undefined =>
  [...steps.map(({ id }) => id), ...(rental?.shots.map(({ id }) => sequenceStep(id)) ?? [])].find(
    (id) => id === asked,
  );

/** The pictures of a walk: all of them, or the one that the address names. */
export function Photos({ model, rest }: { model: WalkModel; rest: readonly string[] }) {
  const { query } = useLocation();
  const all = useWalkPhotos(model.key);
  const [, sha256, screen] = rest;
  const from = backTo(model, query['from'] ?? '');
  if (all === undefined) {
    return (
      <Screen title={common.loading}>
        <span />
      </Screen>
    );
  }
  const groups = groupsOf(
    all,
    model.steps.map(({ place }) => place),
  );
  if (sha256 === undefined) return <PhotoList model={model} groups={groups} count={all.length} from={from} />;
  const ordered = inOrder(groups);
  const each = ordered.find((one) => one.sha256 === sha256);
  const list = photosPath(model.key, undefined, undefined, from);
  const back = from === undefined ? list : walkPath(model.key, from);
  if (each && screen === 'measure')
    return <MeasurePhoto key={sha256} model={model} each={each} from={from} />;
  if (each) return <PhotoView key={sha256} model={model} each={each} all={ordered} from={from} back={back} />;
  return (
    <Screen title={words.title} bar={<ButtonLink href={list}>{words.all}</ButtonLink>}>
      <p>{common.gone}</p>
    </Screen>
  );
}
