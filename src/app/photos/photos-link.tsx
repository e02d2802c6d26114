import type { RecordKey } from '../../core/keys.ts';
import { photos as words } from '../../words/en/photos.ts';
import { ButtonLink } from '../parts/button.tsx';
import { photosPath, useWalkPhotos } from './walk-photos.ts';

/** Leads to the pictures of a walk and says how many there are. */
export function PhotosLink({ walk }: { walk: RecordKey<'walk'> }) {
  const all = useWalkPhotos(walk);
  return (
    <ButtonLink look="plain" href={photosPath(walk)}>
      {words.link(all?.length)}
    </ButtonLink>
  );
}
