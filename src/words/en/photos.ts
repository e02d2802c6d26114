import type { PhotoScale } from '../../core/photo.ts';
import type { PhotoDoubt } from '../../core/photo-measure.ts';
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
      return 'This file is not a photo. Choose a JPEG, PNG or WebP file.';
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
  title: 'Photos',
  link: (count: number | undefined): string => (count ? `Photos: ${count}` : 'Photos: none yet'),
  count: (count: number): string => (count === 1 ? '1 photo' : `${count} photos`),
  here: (count: number): string => (count === 0 ? 'Photos of this' : `Photos of this: ${count}`),
  none: 'There are no photos yet. Take them at each stop, or here of the whole machine.',
  ofMachine: 'The whole machine',
  camera: 'Camera',
  gallery: 'Gallery',
  again: { camera: 'Open the camera again', gallery: 'Open the gallery again' },
  retake: { camera: 'Take it again', gallery: 'Replace from gallery' },
  retakeTitle: 'Another photo in its place',
  faultOf: (at: number, line: string): string => `Photo ${at}: ${line}`,
  groupOf: (place: string, count: number): string =>
    `${place.charAt(0).toUpperCase()}${place.slice(1)} (${count})`,
  working: (at: number, of: number): string =>
    of === 1 ? 'Making the photo ready …' : `Making the photos ready: ${at} of ${of}`,
  scale: 'How near it was taken',
  scaleNext: (label: string): string => `How near; still missing: ${label.toLowerCase()}`,
  notArrived: (when: string): string =>
    `The camera was opened here at ${when}, and no photo arrived. Everything else is saved.`,
  notNeeded: 'Not needed',
  gone: 'The photo is not on this phone',
  broken: 'The photo is damaged and cannot be shown',
  nothingNamed: 'Not tied to a part',
  alt: (what: string, scale: string | undefined, note: string | undefined): string =>
    [`Photo: ${what}`, scale?.toLowerCase(), note].filter(Boolean).join(', '),
  position: 'Note where photos are taken',
  positionLine:
    'With photos from the camera only, rounded to about 11 m. It goes wherever the walk goes, never inside the photo.',
  positionRefused: 'The phone does not say where it is. Allow it in the phone’s settings, then try again.',
  picture: 'The photo; the buttons below change its size and move it',
  zoomTools: 'Size of the photo: + and − change it, 0 shows the whole, the arrow keys move it',
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
  aboutTitle: 'About this photo',
  toPicture: 'To the photo',
  showsTitle: 'What it shows',
  editTies: 'Change what it shows',
  part: 'Part',
  wholePart: 'The part as a whole',
  facts: 'How it came here',
  source: 'From',
  sourceOf: { camera: 'camera', gallery: 'gallery' },
  nth: (at: number, of: number): string => `Photo ${at} of ${of}`,
  all: 'All photos',
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
  remove: 'Remove this photo',
  removed: 'Photo removed',
  retaken: 'The new photo stands in its place',
} as const;

/** Why marks in a picture give no size, and how to mend it. */
export const photoDoubtLines: Readonly<Record<PhotoDoubt['kind'], string>> = {
  'too-few-marks': 'More marks are needed.',
  'scale-too-small':
    'What gives the scale is too small in this photo. Go nearer, or enlarge the photo and mark it again.',
  'corners-crossed': 'The corners cross. Mark them one after the other round the edge.',
  'corners-in-line':
    'Three corners lie nearly in one line. Mark the corners again, or take the photo from less aside.',
  'line-too-short': 'The line is too short in this photo. Set its two marks farther apart.',
  'behind-horizon': 'A mark lies too far off for the plane of the sheet. Keep all marks near it.',
};

/** Measuring in a picture. */
export const measuring = {
  title: 'Measure in the photo',
  open: 'Measure in this photo',
  openHere: 'Measure from a photo',
  caution:
    'A size from a photo is an aid: a gauge is better. Take the photo from where you are safe, and keep your hands off a raised or turning track.',
  picture: 'The photo with its marks: tap where the chosen mark goes',
  scale: 'What is of known size in the photo?',
  scales: {
    a4: { label: 'A4 sheet', line: 'Four corners; a photo taken from aside is put straight' },
    letter: { label: 'Letter sheet', line: 'Four corners; a photo taken from aside is put straight' },
    square: { label: 'A square', line: 'Four corners and its side' },
    rectangle: { label: 'A rectangle', line: 'Four corners and two sides' },
    length: { label: 'A length, as on a rule', line: 'Two marks. Hold the phone square to it' },
    links: { label: 'Track pitch over links', line: 'Two marks. Hold the phone square to it' },
  },
  flat: 'All marks must lie in one plane: lay the sheet or rule against what you measure.',
  tilt: 'With a length alone a photo taken from aside is not put straight. A tilt of about 4° either way is allowed for in the uncertainty (estimate); if you were farther aside, use a sheet.',
  side: 'Side',
  first: 'Side from corner 1 to 2',
  second: 'Side from corner 2 to 3',
  length: 'Length between the marks',
  links: 'Links between the marks',
  measure: 'What do you measure?',
  measures: {
    distance: { label: 'From mark to mark', line: 'Two marks' },
    'from-line': { label: 'Off a line', line: 'A straight edge, and what lies farthest from it' },
  },
  another: 'One more mark off the line',
  scaleMark: (n: number): string => `Scale mark ${n}`,
  sizeMark: (letter: string): string => `Mark ${letter}`,
  put: 'set',
  notPut: 'not set yet',
  keys: 'Enlarge the photo before you set a mark: the uncertainty shrinks with it. Arrow keys move the chosen mark by one pixel, with Shift by ten.',
  marks: 'Chosen mark',
  left: (left: number): string =>
    left === 1 ? '1 mark is still to be set' : `${left} marks are still to be set`,
  size: (size: string, half: string): string => `${size} ± ${half}`,
  how: 'The true size lies within this with 95 % probability. It comes from how surely marks can be set, from the size of the scale and, where only a length is known, from a tilt of the phone (all estimates).',
  result: 'Size in the photo',
  reading: 'Use it for',
  use: 'Use as reading',
} as const;
