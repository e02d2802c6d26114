const longSide = 320;
const quality = 0.7;

/** A small JPEG of a picture that came from another phone; undefined where it cannot be opened. */
export async function makeThumbnail(bytes: Uint8Array): Promise<Uint8Array<ArrayBuffer> | undefined> {
  try {
    const whole = await createImageBitmap(new Blob([new Uint8Array(bytes)], { type: 'image/jpeg' }));
    const shrink = Math.min(1, longSide / Math.max(whole.width, whole.height));
    const canvas = new OffscreenCanvas(
      Math.max(1, Math.round(whole.width * shrink)),
      Math.max(1, Math.round(whole.height * shrink)),
    );
    canvas.getContext('2d')?.drawImage(whole, 0, 0, canvas.width, canvas.height);
    whole.close();
    const blob = await canvas.convertToBlob({ type: 'image/jpeg', quality });
    return new Uint8Array(await blob.arrayBuffer());
  } catch {
    return undefined;
  }
}
