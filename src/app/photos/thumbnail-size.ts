/** Pixels of a list's picture, on screens with three pixels to the point. */
export const thumbnailSide = 320;
export const thumbnailQuality = 0.7;
