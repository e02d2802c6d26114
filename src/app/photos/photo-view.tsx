import { useLocation } from 'preact-iso';
import { useEffect, useState } from 'preact/hooks';
import { common } from '../../words/en/common.ts';
import { photos as words, scaleWords } from '../../words/en/photos.ts';
import { pendingPhotoNow } from '../data/pending-photo.ts';
import type { WalkModel } from '../data/walk-model.ts';
import { Button, ButtonLink } from '../parts/button.tsx';
import { NoticeBar } from '../parts/notice-bar.tsx';
import { AboutPhoto } from './about-photo.tsx';
import { photoAlt, showsText, takenText } from './photo-text.ts';
import { usePicture } from './picture-address.ts';
import { photosPath, photoStep, thisRun, type WalkPhoto } from './walk-photos.ts';
import { ZoomFrame } from './zoom-frame.tsx';
import partStyles from '../parts/parts.module.css';
import styles from './photos.module.css';

interface PhotoViewProps {
  readonly model: WalkModel;
  readonly each: WalkPhoto;
  /** All pictures in the order in which one goes through them. */
  readonly all: readonly WalkPhoto[];
  /** The step to come back to. */
  readonly from: string | undefined;
  readonly back: string;
}

/** One picture on the whole screen, or what is known of it. */
export function PhotoView({ model, each, all, from, back }: PhotoViewProps) {
  const { route } = useLocation();
  const [about, setAbout] = useAbout(model.key, each.sha256);
  const { photo } = each;
  const at = all.indexOf(each);
  const title = showsText(photo);
  useEffect(() => {
    document.title = `${title} · Sagline`;
  }, [title]);
  const pathOf = (sha256?: string): string => photosPath(model.key, sha256, undefined, from);
  const [before, after] = [all[at - 1], all[at + 1]];
  if (about) {
    return (
      <AboutPhoto
        model={model}
        each={each}
        onGone={() => route(pathOf((after ?? before)?.sha256), true)}
        onNew={(sha256) => route(pathOf(sha256), true)}
        onDone={() => setAbout(false)}
      />
    );
  }
  const facts = [photo.scale && scaleWords[photo.scale].label.toLowerCase(), takenText(photo)];
  const turn = (to: WalkPhoto | undefined, label: string) => (
    <Button disabled={to === undefined} onTap={() => to && route(pathOf(to.sha256), true)}>
      {label}
    </Button>
  );
  return (
    <div class={styles.viewer}>
      <main class={styles.inside}>
        <Picture key={each.sha256} each={each} />
        <div class={styles.caption}>
          <h1>{title}</h1>
          <p class={styles.soft}>
            {[words.nth(at + 1, all.length), ...facts].filter((text) => text).join(' · ')}
          </p>
          {photo.note !== undefined && photo.note !== '' && <p>{photo.note}</p>}
        </div>
      </main>
      <NoticeBar />
      <nav class={partStyles.bar}>
        <div class={styles.turn}>
          <ButtonLink href={back}>{common.back}</ButtonLink>
          {turn(before, words.before)}
          {turn(after, words.after)}
          <Button onTap={() => setAbout(true)}>{words.about}</Button>
        </div>
      </nav>
    </div>
  );
}

function Picture({ each }: { each: WalkPhoto }) {
  const picture = usePicture(each.sha256, 'whole');
  const [broken, setBroken] = useState(false);
  const gone = picture && picture.address === undefined;
  if (gone || broken) return <p class={styles.fault}>{broken ? words.broken : words.gone}</p>;
  return (
    <ZoomFrame label={words.picture}>
      {picture?.address !== undefined && (
        <img
          class={styles.large}
          src={picture.address}
          alt={photoAlt(each.photo)}
          draggable={false}
          onError={() => setBroken(true)}
        />
      )}
    </ZoomFrame>
  );
}

/** Whether what is known of a picture is shown: at once, where taking it again was cut off. */
function useAbout(walk: string, sha256: string): readonly [boolean, (next: boolean) => void] {
  const [about, setAbout] = useState(false);
  useEffect(() => {
    void pendingPhotoNow(Date.now()).then((found) => {
      if (found?.walk === walk && found.step === photoStep(sha256) && found.run !== thisRun) setAbout(true);
    });
  }, [walk, sha256]);
  return [about, setAbout];
}
