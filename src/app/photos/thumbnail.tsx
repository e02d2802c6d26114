import { useEffect, useRef, useState } from 'preact/hooks';
import { photos as words } from '../../words/en/photos.ts';
import { usePicture } from './picture-address.ts';
import { photoAlt } from './photo-text.ts';
import { photosPath, type WalkPhoto } from './walk-photos.ts';
import styles from './photos.module.css';

/** A small picture that leads to the large one; read from the disk once it comes near the screen. */
export function Thumbnail({ walk, each }: { walk: string; each: WalkPhoto }) {
  const link = useRef<HTMLAnchorElement>(null);
  const [near, setNear] = useState(false);
  useEffect(() => {
    if (!link.current) return undefined;
    const watch = new IntersectionObserver(
      (entries) => {
        if (!entries.some(({ isIntersecting }) => isIntersecting)) return;
        setNear(true);
        watch.disconnect();
      },
      { rootMargin: '300px' },
    );
    watch.observe(link.current);
    return () => watch.disconnect();
  }, []);
  const picture = usePicture(near ? each.sha256 : undefined, 'small');
  return (
    <a ref={link} class={styles.thumbnail} href={photosPath(walk, each.sha256)}>
      {picture === undefined && <span class={styles.waits} role="img" aria-label={photoAlt(each.photo)} />}
      {picture && picture.address === undefined && <span>{words.gone}</span>}
      {picture?.address !== undefined && <img src={picture.address} alt={photoAlt(each.photo)} />}
    </a>
  );
}
