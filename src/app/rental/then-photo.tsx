import { photos as words } from '../../words/en/photos.ts';
import { usePicture } from '../photos/picture-address.ts';
import { useWalkPhotos, type WalkPhoto } from '../photos/walk-photos.ts';
import type { HandedOut } from './handed-out.ts';
import styles from './rental.module.css';

/** The photo of the hand-out that stands in this place of the sequence; undefined where there is none. */
export const useThenPhoto = ({ key }: HandedOut, shot: string): WalkPhoto | undefined =>
  useWalkPhotos(key)?.find(({ photo }) => photo.shot === shot);

interface WholePhotoProps {
  readonly each: WalkPhoto;
  readonly alt: string;
}

/** A photo as wide as the screen. */
export function WholePhoto({ each, alt }: WholePhotoProps) {
  const picture = usePicture(each.sha256, 'whole');
  if (picture && picture.address === undefined) return <p>{words.gone}</p>;
  return <img class={styles.whole} src={picture?.address} alt={alt} />;
}
