import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import type { Block } from '../../report/blocks.ts';
import { report as words } from '../../words/en/report.ts';
import { usePicture } from '../photos/picture-address.ts';
import styles from './reporting.module.css';

/** Whole pictures on a page with few of them; of many the small ones, so that no phone runs out of memory. */
export const PictureSize = createContext<'whole' | 'small'>('whole');

/** A picture from the phone's storage; without its bytes, that they are not here. */
export function ReportPhoto({ photo }: { photo: Extract<Block, { kind: 'photo' }> }) {
  const { sha256, alt, caption } = photo;
  const picture = usePicture(sha256, useContext(PictureSize));
  const gone = picture !== undefined && picture.address === undefined;
  return (
    <figure class={styles.photo}>
      {picture?.address !== undefined && <img src={picture.address} alt={alt} />}
      {gone && <p>{words.photoGone}</p>}
      <figcaption>{caption}</figcaption>
    </figure>
  );
}
