import { makePhoto } from './make-photo.ts';

addEventListener('message', ({ data }: MessageEvent<ArrayBuffer>) => {
  void makePhoto(new Uint8Array(data)).then((made) => {
    const transfer = made.ok ? [made.value.bytes.buffer, made.value.thumbnail.buffer] : [];
    postMessage(made, { transfer });
  });
});
