import { useEffect, useRef, useState } from 'preact/hooks';
import { photos as words } from '../../words/en/photos.ts';
import { usePicture } from './picture-address.ts';
import { photoAlt } from './photo-text.ts';
import { photosPath, type WalkPhoto } from './walk-photos.ts';
import styles from './photos.module.css';

const near = new WeakMap<Element, (isNear: boolean) => void>();
let watch: IntersectionObserver | undefined;

/** One observer for all: a list may have hundreds of pictures. */
function observe(element: Element, tell: (isNear: boolean) => void): () => void {
  watch ??= new IntersectionObserver(
    (entries) => {
      for (const { target, isIntersecting } of entries) near.get(target)?.(isIntersecting);
    },
    { rootMargin: '300px' },
  );
  near.set(element, tell);
  watch.observe(element);
  return () => watch?.unobserve(element);
}

interface ThumbnailProps {
  readonly walk: string;
  readonly each: WalkPhoto;
  /** The step to come back to. */
  readonly from?: string | undefined;
  /** What stands under it. */
  readonly line?: string;
}

/** A small picture that leads to the large one; in memory only while it is on the screen or near it. */
export function Thumbnail({ walk, each, from, line = '' }: ThumbnailProps) {
  const link = useRef<HTMLAnchorElement>(null);
  const [isNear, setNear] = useState(false);
  useEffect(() => (link.current ? observe(link.current, setNear) : undefined), []);
  const picture = usePicture(isNear ? each.sha256 : undefined, 'small');
  const gone = picture && picture.address === undefined;
  const alt = photoAlt(each.photo);
  return (
    <a
      ref={link}
      class={styles.tile}
      href={photosPath(walk, each.sha256, undefined, from)}
      aria-label={gone ? `${alt}. ${words.gone}` : alt}
    >
      <span class={styles.thumbnail}>
        {gone && <span>{words.gone}</span>}
        {picture?.address !== undefined && <img src={picture.address} alt="" />}
      </span>
      {line !== '' && <span class={styles.soft}>{line}</span>}
    </a>
  );
}
