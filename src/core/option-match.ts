import { isRubberTrack } from './option-life.ts';
import type { TrackKind } from './machine.ts';
import type { FitFacts, How, Option } from './option.ts';

/** What is on the machine now, as far as it is known; absent for a machine that has yet to get tracks. */
export interface CurrentTrack {
  readonly track: TrackKind;
  readonly fit?: FitFacts | undefined;
  /** Mass of one side. */
  readonly massKg?: number | undefined;
}

export type FitField = keyof typeof fitFields;

/**
 * Whether a field belongs to every track, to rubber ones alone or to the sprocket, and how far two of a size may
 * lie apart (our estimate: what a tape and a worn part leave open).
 */
const fitFields = {
  pitchMm: { of: 'track', mm: 0.5 },
  links: { of: 'track', mm: 0 },
  guide: { of: 'rubber', mm: 0 },
  hornWidthMm: { of: 'rubber', mm: 3 },
  hornHeightMm: { of: 'rubber', mm: 5 },
  rollersOn: { of: 'rubber', mm: 0 },
  sprocketBolts: { of: 'sprocket', mm: 0 },
  boltCircleMm: { of: 'sprocket', mm: 1 },
  boreMm: { of: 'sprocket', mm: 1 },
  offsetMm: { of: 'sprocket', mm: 1 },
} as const;

/** Two values of one field that do not go together. */
export interface Mismatch {
  readonly field: FitField;
  readonly now: string | number;
  readonly option: string | number;
}

export type AnyField = FitField | 'widthMm';

type Family = 'cored' | 'belt' | 'chain';

/** Tracks of one family go on one frame. */
export function familyOf(track: TrackKind): Family {
  if (track === 'rubber-cored') return 'cored';
  return track === 'rubber-coreless' ? 'belt' : 'chain';
}

interface Known {
  readonly value: string | number;
  readonly how: How;
}

/** How two values of one field go together; `unknown` while one is missing. */
type Matched = 'same' | 'differs' | 'unknown';

const valueIn = (fit: FitFacts | undefined, field: AnyField): Known | undefined => fit?.[field];

function matchedBy(a: Known | undefined, b: Known | undefined, mm: number): Matched {
  if (!a || !b) return 'unknown';
  const isNear =
    typeof a.value === 'number' && typeof b.value === 'number'
      ? Math.abs(a.value - b.value) <= mm
      : a.value === b.value;
  return isNear ? 'same' : 'differs';
}

/** True where both pitches are known and one; what is assumed of either makes no wheels fit. */
export const isSamePitch = (now: FitFacts | undefined, option: FitFacts | undefined): boolean =>
  [now, option].every((fit) => fit?.pitchMm?.how !== 'assumed') &&
  matchedBy(now?.pitchMm, option?.pitchMm, fitFields.pitchMm.mm) === 'same';

/** True where both numbers of teeth are known and differ. */
export const otherTeeth = (now: FitFacts | undefined, option: FitFacts | undefined): boolean =>
  matchedBy(now?.sprocketTeeth, option?.sprocketTeeth, 0) === 'differs';

/** What two sets of facts say of each other. */
export interface Match {
  readonly differing: readonly (Mismatch & { readonly of: 'track' | 'sprocket'; readonly sure: boolean })[];
  readonly width: { readonly now: number; readonly option: number } | undefined;
  readonly unknown: Readonly<Record<'machine' | 'option', readonly AnyField[]>>;
  readonly assumed: Readonly<Record<'machine' | 'option', readonly AnyField[]>>;
}

/** The fields that count: all where a track of one family follows another, the sprocket's hub alone where it does not. */
function fieldsFor(current: CurrentTrack, { track }: Option): readonly FitField[] {
  const isSame = familyOf(current.track) === familyOf(track);
  const isRubber = isRubberTrack(track);
  return (Object.keys(fitFields) as FitField[]).filter((field) => {
    const { of } = fitFields[field];
    return of === 'sprocket' || (isSame && (of === 'track' || isRubber));
  });
}

function differingOf(field: FitField, now: Known | undefined, option: Known | undefined): Match['differing'] {
  const { of, mm } = fitFields[field];
  if (!now || !option || matchedBy(now, option, mm) !== 'differs') return [];
  const sure = now.how !== 'assumed' && option.how !== 'assumed';
  const pair = { field, now: now.value, option: option.value };
  return [{ ...pair, of: of === 'sprocket' ? 'sprocket' : 'track', sure }];
}

/** How a track goes with what is on the machine. Nobody is asked about the sprocket while its track has to match anyway. */
export function matchOf(current: CurrentTrack, option: Option): Match {
  const fields = fieldsFor(current, option);
  const [now, then] = [current.fit, option.fit];
  const isSame = familyOf(current.track) === familyOf(option.track);
  const width =
    isSame && now?.widthMm && then?.widthMm
      ? { now: now.widthMm.value, option: then.widthMm.value }
      : undefined;
  const askable: readonly AnyField[] = isSame
    ? [...fields.filter((field) => fitFields[field].of !== 'sprocket'), 'widthMm']
    : [];
  const where = (fit: FitFacts | undefined, is: (known: Known | undefined) => boolean) =>
    askable.filter((field) => is(valueIn(fit, field)));
  const both = (is: (known: Known | undefined) => boolean) => ({
    machine: where(now, is),
    option: where(then, is),
  });
  return {
    differing: fields.flatMap((field) => differingOf(field, valueIn(now, field), valueIn(then, field))),
    width: width && width.now !== width.option ? width : undefined,
    unknown: both((known) => known === undefined),
    assumed: both((known) => known?.how === 'assumed'),
  };
}
