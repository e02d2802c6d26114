import { limitsFor } from '../../core/limits.ts';
import type { PhotoEvidence, PictureMeasure, PictureScale } from '../../core/photo-evidence.ts';
import { markSd, type PhotoMarks } from '../../core/photo-measure.ts';
import { sideRatio, type Mark, type PictureSize } from '../../core/photo-plane.ts';
import { knownSheets, linksLength, typedU } from '../../core/photo-scales.ts';
import { toMm } from '../../core/quantity.ts';
import type { Step } from '../../core/steps.ts';
import { formatter } from '../data/format.ts';
import { readPad } from '../data/pad-text.ts';
import { preferences } from '../data/preferences.ts';
import type { WalkModel } from '../data/walk-model.ts';

export type ScaleChoice = 'a4' | 'letter' | 'square' | 'rectangle' | 'length' | 'links';

/** A mark in pixels of the picture, and how large the picture was shown when it was set; 0 while it is not set. */
export interface Put {
  readonly at: Mark;
  readonly zoom: number;
}

/** What stands on the screen of a measurement. */
export interface MeasureDraft {
  readonly scale: ScaleChoice;
  readonly texts: readonly [string, string];
  readonly links: number;
  readonly measure: PictureMeasure;
  readonly four: readonly Put[];
  readonly two: readonly Put[];
  readonly marks: readonly Put[];
}

const unset = ({ width, height }: PictureSize, shares: readonly Mark[]): readonly Put[] =>
  shares.map(([x, y]) => ({ at: [Math.round(x * width), Math.round(y * height)], zoom: 0 }));

/** The marks of a measure before they are set. */
export const freshMarks = (measure: PictureMeasure, size: PictureSize): readonly Put[] =>
  unset(size, measure === 'distance' ? [[0.4, 0.5], [0.6, 0.5]] : [[0.2, 0.85], [0.8, 0.85], [0.5, 0.92]]); // prettier-ignore

/** What the screen begins with: the marks of a reading that was taken from this picture, else none set. */
export function freshDraft(size: PictureSize, measure: PictureMeasure, made?: PhotoEvidence): MeasureDraft {
  const four = unset(size, [[0.3, 0.3], [0.7, 0.3], [0.7, 0.7], [0.3, 0.7]]); // prettier-ignore
  const two = unset(size, [[0.3, 0.2], [0.7, 0.2]]); // prettier-ignore
  const fresh = { scale: 'a4', texts: ['', ''], links: 4, measure, four, two } as const;
  if (!made) return { ...fresh, marks: freshMarks(measure, size) };
  const zoom = 1 / Math.sqrt(Math.max(1e-4, made.uPx * made.uPx - 1));
  const put = (at: Mark): Put => ({ at, zoom });
  const { scale } = made;
  const inUnit = (mm: number): string => formatter.value.field(mm, preferences.value.length);
  const texts = scale.kind === 'length' ? [inUnit(scale.mm), ''] : scale.mm.map(inUnit);
  // How many links the length went over is not kept: it comes back as the length that it was.
  const of = scale.of === 'links' ? 'length' : (scale.of as ScaleChoice | undefined);
  return {
    ...fresh,
    scale: of ?? scale.kind,
    texts: [texts[0] ?? '', texts[1] ?? ''],
    measure: made.measure,
    [scale.kind === 'length' ? 'two' : 'four']: scale.marks.map(put),
    marks: made.marks.map(put),
  };
}

export const isLength = (scale: ScaleChoice): boolean => scale === 'length' || scale === 'links';
export const scaleMarks = (draft: MeasureDraft): readonly Put[] =>
  isLength(draft.scale) ? draft.two : draft.four;

/** All marks in one row, those of the scale first. */
export const allMarks = (draft: MeasureDraft): readonly Put[] => [...scaleMarks(draft), ...draft.marks];

/** The draft with one of its marks elsewhere. */
export function withMark(draft: MeasureDraft, n: number, put: Put): MeasureDraft {
  const scale = scaleMarks(draft);
  const swap = (list: readonly Put[], at: number): readonly Put[] =>
    list.map((each, i) => (i === at ? put : each));
  if (n >= scale.length) return { ...draft, marks: swap(draft.marks, n - scale.length) };
  return isLength(draft.scale) ? { ...draft, two: swap(scale, n) } : { ...draft, four: swap(scale, n) };
}

/** Pitch when new and at its limit in mm, by the sheet of a step's side; undefined where it has none. */
export function pitchOf(model: WalkModel, step: Step | undefined): readonly [number, number] | undefined {
  const { left, right } = model.assembled.input.sheets;
  const sheet = step?.side === 'right' ? right : left;
  const entry = sheet && limitsFor(sheet, 'pitch', undefined);
  const limit = entry?.limits[0];
  return entry?.new && limit && [toMm(entry.new.at, entry.unit), toMm(limit.at, entry.unit)];
}

type Sized = { readonly mm: readonly [number, number]; readonly uMm: readonly [number, number] };

function lengthTyped(text: string): number | undefined {
  const read = readPad(text, preferences.value.length);
  return read.kind === 'length' && read.mm > 0 ? read.mm : undefined;
}

function sidesOf({ scale, texts }: MeasureDraft, corners: Corners, size: PictureSize): Sized | undefined {
  if (scale === 'a4' || scale === 'letter') {
    const { mm, uMm } = knownSheets[scale];
    return sideRatio(corners, size) > 1 ? { mm, uMm } : { mm: [mm[1], mm[0]], uMm: [uMm[1], uMm[0]] };
  }
  const first = lengthTyped(texts[0]);
  const second = scale === 'square' ? first : lengthTyped(texts[1]);
  if (first === undefined || second === undefined) return undefined;
  return { mm: [first, second], uMm: [typedU, typedU] };
}

type Corners = readonly [Mark, Mark, Mark, Mark];
const copied = ([x, y]: Mark): [number, number] => [x, y];

function scaleOf(
  draft: MeasureDraft,
  size: PictureSize,
  pitch: readonly [number, number] | undefined,
): PictureScale | undefined {
  const [p, q, r, s] = scaleMarks(draft).map(({ at }) => copied(at));
  if (!p || !q) return undefined;
  const of = draft.scale;
  if (isLength(of)) {
    const mm = lengthTyped(draft.texts[0]);
    const typed = mm === undefined ? undefined : { mm, uMm: typedU };
    const known = of === 'links' && pitch ? linksLength(...pitch, draft.links) : typed;
    return known && { kind: 'length', ...known, marks: [p, q], of };
  }
  if (!r || !s) return undefined;
  const sides = sidesOf(draft, [p, q, r, s], size);
  return (
    sides && { kind: 'rectangle', mm: copied(sides.mm), uMm: copied(sides.uMm), marks: [p, q, r, s], of }
  );
}

/** The marks as they are measured; undefined while one is not set or a size is not typed. */
export function marksOf(
  draft: MeasureDraft,
  size: PictureSize,
  pitch: readonly [number, number] | undefined,
): PhotoMarks | undefined {
  const zoom = Math.min(...allMarks(draft).map((each) => each.zoom));
  const scale = zoom > 0 ? scaleOf(draft, size, pitch) : undefined;
  if (!scale) return undefined;
  const uPx = Math.round(markSd(zoom) * 100) / 100;
  return { scale, measure: draft.measure, marks: draft.marks.map(({ at }) => copied(at)), uPx };
}
