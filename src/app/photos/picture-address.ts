import { useEffect, useState } from 'preact/hooks';
import { store } from '../data/phone.ts';
import { makeThumbnail } from './make-thumbnail.ts';

/** Where an image can be shown from; without an address its bytes are not on this phone. */
interface Picture {
  readonly address: string | undefined;
}

async function pictureBytes(sha256: string): Promise<Uint8Array | undefined> {
  const found = await store.photos.get(sha256);
  return found.ok ? found.value?.bytes : undefined;
}

/** The small picture of a list; made anew, and kept, where a picture came without one. */
async function thumbnailBytes(sha256: string): Promise<Uint8Array | undefined> {
  const found = await store.thumbnails.get(sha256);
  if (found.ok && found.value) return found.value.bytes;
  const bytes = await pictureBytes(sha256);
  const small = bytes && (await makeThumbnail(bytes));
  if (small) await store.thumbnails.put({ sha256, bytes: small });
  return small ?? bytes;
}

/** An image that is taken away may still be loading, and would complain. */
const loadsMs = 1000;

/** A picture that can be shown while the screen stands; undefined until it has been looked for. */
export function usePicture(sha256: string | undefined, size: 'whole' | 'small'): Picture | undefined {
  const [picture, setPicture] = useState<Picture & { readonly of: string }>();
  useEffect(() => {
    if (sha256 === undefined) return undefined;
    let current = true;
    let made: string | undefined;
    void (size === 'whole' ? pictureBytes : thumbnailBytes)(sha256).then((bytes) => {
      if (!current) return;
      if (bytes) made = URL.createObjectURL(new Blob([new Uint8Array(bytes)], { type: 'image/jpeg' }));
      setPicture({ of: sha256, address: made });
    });
    return () => {
      current = false;
      // Wanted again, it gets an address of its own: this one is about to go.
      setPicture(undefined);
      const gone = made;
      if (gone !== undefined) setTimeout(() => URL.revokeObjectURL(gone), loadsMs);
    };
  }, [sha256, size]);
  return picture?.of === sha256 ? picture : undefined;
}
