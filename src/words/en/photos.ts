import type { PhotoScale } from '../../core/photo.ts';
import { unreachable } from '../../core/result.ts';

/** Why a file did not become a photo. */
export type PhotoFault =
  | {
      readonly kind:
        | 'unreadable' // the phone gave no bytes
        | 'not-an-image' // by its content, whatever its name says
        | 'truncated' // it breaks off before its end
        | 'heic' // in a form that this browser cannot open
        | 'undecodable' // an image by its head, but the browser refuses it
        | 'blank' // nothing was drawn
        | 'failed' // the phone gave up, as when memory is short
        | 'cancelled'; // the person went on
    }
  | { readonly kind: 'too-many-pixels'; readonly megapixels: number; readonly most: number }
  | { readonly kind: 'file-too-large'; readonly megabytes: number; readonly most: number };

/** One sentence on what is wrong and how to mend it. */
export function photoFaultLine(fault: PhotoFault): string {
  switch (fault.kind) {
    case 'unreadable':
      return 'The phone could not read this photo. Take it with the camera instead, or copy it to this phone first.';
    case 'not-an-image':
      return 'This file is not a photo. Choose a JPEG, PNG or WebP picture.';
    case 'truncated':
      return 'The photo breaks off before its end. Take it again, or have it sent again.';
    case 'heic':
      return 'This browser cannot open HEIC photos. Take it with the camera from here, or save it as JPEG and choose that.';
    case 'undecodable':
      return 'The photo is damaged and cannot be opened. Take it again, or choose another one.';
    case 'blank':
      return 'Nothing is to be seen in this photo. Take it again; if that does not help, close other apps first.';
    case 'failed':
      return 'The phone could not make the photo ready. Close other apps, then take or choose it again.';
    case 'cancelled':
      return 'The photo was not taken over.';
    case 'too-many-pixels':
      return `The photo has ${fault.megapixels} megapixels, and ${fault.most} are the most that a phone can open safely. Set the camera to a smaller size; 12 are plenty.`;
    case 'file-too-large':
      return `The file has ${fault.megabytes} MB, and ${fault.most} are the most for a photo. Choose a smaller one, or take it with the camera.`;
    default:
      return unreachable(fault);
  }
}

/** How near a picture is taken, and what for. */
export const scaleWords: Readonly<Record<PhotoScale, { readonly label: string; readonly line: string }>> = {
  wide: { label: 'Wide', line: 'The whole part, so that one sees where it is' },
  mid: { label: 'Mid', line: 'The damage and what is around it' },
  close: { label: 'Close', line: 'The damage alone, a rule or coin beside it' },
};

/** Pictures of a walk. */
export const photos = {
  title: 'Pictures',
  link: (count: number | undefined): string => (count ? `Pictures: ${count}` : 'Pictures: none yet'),
  count: (count: number): string => (count === 1 ? '1 picture' : `${count} pictures`),
  here: (count: number): string => (count === 0 ? 'Pictures of this' : `Pictures of this: ${count}`),
  none: 'There are no pictures yet. Take them at each stop, or here of the whole machine.',
  ofMachine: 'The whole machine',
  camera: 'Camera',
  gallery: 'Gallery',
  again: { camera: 'Open the camera again', gallery: 'Open the gallery again' },
  retake: { camera: 'Take it again', gallery: 'Replace from gallery' },
  retakeTitle: 'Another picture in its place',
  faultOf: (at: number, line: string): string => `Picture ${at}: ${line}`,
  groupOf: (place: string, count: number): string =>
    `${place.charAt(0).toUpperCase()}${place.slice(1)} (${count})`,
  working: (at: number, of: number): string =>
    of === 1 ? 'Making the picture ready …' : `Making the pictures ready: ${at} of ${of}`,
  scale: 'How near it was taken',
  scaleNext: (label: string): string => `How near; still missing: ${label.toLowerCase()}`,
  notArrived: (when: string): string =>
    `The camera was opened here at ${when}, and no picture arrived. Everything else is saved.`,
  notNeeded: 'Not needed',
  gone: 'The picture is not on this phone',
  broken: 'The picture is damaged and cannot be shown',
  nothingNamed: 'Not tied to a part',
  alt: (what: string, scale: string | undefined, note: string | undefined): string =>
    [`Picture: ${what}`, scale?.toLowerCase(), note].filter(Boolean).join(', '),
  position: 'Note where pictures are taken',
  positionLine:
    'With pictures from the camera only, rounded to about 11 m. It goes wherever the walk goes, never inside the picture.',
  positionRefused: 'The phone does not say where it is. Allow it in the phone’s settings, then try again.',
  picture: 'The picture; the buttons below change its size and move it',
  zoomTools: 'Size of the picture: + and − change it, 0 shows the whole, the arrow keys move it',
  larger: 'Larger',
  smaller: 'Smaller',
  whole: 'Whole',
  moves: {
    ArrowLeft: 'Show more of the left',
    ArrowRight: 'Show more of the right',
    ArrowUp: 'Show more of the top',
    ArrowDown: 'Show more of the bottom',
  },
  arrows: { ArrowLeft: '←', ArrowRight: '→', ArrowUp: '↑', ArrowDown: '↓' },
  about: 'About',
  aboutTitle: 'About this picture',
  toPicture: 'To the picture',
  showsTitle: 'What it shows',
  editTies: 'Change what it shows',
  part: 'Part',
  wholePart: 'The part as a whole',
  facts: 'How it came here',
  source: 'From',
  sourceOf: { camera: 'camera', gallery: 'gallery' },
  nth: (at: number, of: number): string => `Picture ${at} of ${of}`,
  all: 'All pictures',
  before: 'Previous',
  after: 'Next',
  taken: 'Taken in',
  cameraTime: 'By the camera’s clock',
  where: 'Where',
  position5: (lat: number, lon: number, withinM: number | undefined): string =>
    `${lat.toFixed(4)}, ${lon.toFixed(4)}, rounded to about 11 m${withinM === undefined ? '' : `; the phone says within ${withinM} m`}`,
  pixels: 'Size',
  size: (width: number, height: number): string => `${width} × ${height} pixels`,
  note: 'Note',
  remove: 'Remove this picture',
  removed: 'Picture removed',
  retaken: 'The new picture stands in its place',
} as const;
