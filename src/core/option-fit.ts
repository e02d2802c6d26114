import { isRubberTrack, type OptionMachine } from './option-life.ts';
import type { Figures, OptionTables } from './option-tables.ts';
import type { FitFacts, How, Option } from './option.ts';
import type { MachineKind, TrackKind } from './machine.ts';
import type { Source } from './source.ts';
import type { Use } from './use.ts';

/** What is on the machine now, as far as it is known; absent for a machine that has yet to get tracks. */
export interface CurrentTrack {
  readonly track: TrackKind;
  readonly fit?: FitFacts | undefined;
  /** Mass of one side. */
  readonly massKg?: number | undefined;
}

export type FitField = keyof typeof fitFields;

/** Whether a field belongs to the track itself or to its sprocket, and how far two of a size may lie apart. */
const fitFields = {
  pitchMm: { of: 'track', mm: 0.5 },
  links: { of: 'track', mm: 0 },
  guide: { of: 'track', mm: 0 },
  hornWidthMm: { of: 'track', mm: 3 },
  hornHeightMm: { of: 'track', mm: 5 },
  rollersOn: { of: 'track', mm: 0 },
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

/** Why a track cannot go on this machine for this work. */
export type Against =
  | {
      readonly kind: 'frame-takes-no-steel';
      readonly why: 'said' | 'pitch' | 'belt';
      readonly source?: Source;
    }
  | { readonly kind: 'belt-needs-its-frame' }
  | {
      readonly kind: 'whole-rubber-not-made';
      readonly machine: MachineKind;
      readonly massKg: number;
      readonly mostKg: number;
      readonly source: Source;
    }
  | ({ readonly kind: 'mismatch' } & Mismatch)
  | ({ readonly kind: 'sprocket-differs' } & Mismatch)
  | { readonly kind: 'marks-paving'; readonly source: Source }
  | { readonly kind: 'over-trailer'; readonly massKg: number; readonly mostKg: number };

/** What has to be settled before it is bought. */
export type ToSettle =
  | {
      readonly kind: 'not-known' | 'assumed';
      readonly field: FitField | 'widthMm';
      readonly of: 'machine' | 'option';
    }
  | ({ readonly kind: 'may-not-match' } & Mismatch)
  | { readonly kind: 'width-differs'; readonly now: number; readonly option: number }
  | { readonly kind: 'frame-not-known' }
  | { readonly kind: 'mass-not-known' }
  | { readonly kind: 'near-trailer'; readonly massKg: number; readonly mostKg: number }
  | { readonly kind: 'scuffs-paving' };

export const changedParts = ['sprocket', 'bottom-roller', 'idler'] as const;
export type ChangedPart = (typeof changedParts)[number];

export interface Fit {
  readonly against: readonly Against[];
  readonly toSettle: readonly ToSettle[];
  /** Parts that have to be changed with the tracks because the kind of track changes. */
  readonly needs: readonly ChangedPart[];
}

type Family = 'cored' | 'belt' | 'chain';

function familyOf(track: TrackKind): Family {
  if (track === 'rubber-cored') return 'cored';
  return track === 'rubber-coreless' ? 'belt' : 'chain';
}

const isFrom = (values: readonly number[], mm: number | undefined): boolean =>
  mm !== undefined && values.some((each) => Math.abs(each - mm) < 0.25);

interface Known {
  readonly value: string | number;
  readonly how: How;
}

const valueIn = (fit: FitFacts | undefined, field: FitField | 'widthMm'): Known | undefined => fit?.[field];

function differs(a: Known, b: Known, mm: number): boolean {
  if (typeof a.value === 'number' && typeof b.value === 'number') return Math.abs(a.value - b.value) > mm;
  return a.value !== b.value;
}

type Matched = { readonly against: readonly Against[]; readonly toSettle: readonly ToSettle[] };
const nothing: Matched = { against: [], toSettle: [] };

const unsure = (
  field: FitField | 'widthMm',
  of: 'machine' | 'option',
  known: Known | undefined,
): readonly ToSettle[] => {
  if (!known) return [{ kind: 'not-known', field, of }];
  return known.how === 'assumed' ? [{ kind: 'assumed', field, of }] : [];
};

function matchField(field: FitField, now: FitFacts | undefined, option: FitFacts | undefined): Matched {
  const [a, b] = [valueIn(now, field), valueIn(option, field)];
  const { of, mm } = fitFields[field];
  if (!a || !b || !differs(a, b, mm)) {
    // Nobody is asked about the sprocket while its track has to match anyway.
    if (of === 'sprocket') return nothing;
    return { against: [], toSettle: [...unsure(field, 'machine', a), ...unsure(field, 'option', b)] };
  }
  const pair: Mismatch = { field, now: a.value, option: b.value };
  if (a.how === 'assumed' || b.how === 'assumed')
    return { against: [], toSettle: [{ kind: 'may-not-match', ...pair }] };
  return { against: [{ kind: of === 'track' ? 'mismatch' : 'sprocket-differs', ...pair }], toSettle: [] };
}

function matchWidth(now: FitFacts | undefined, option: FitFacts | undefined): readonly ToSettle[] {
  const [a, b] = [now?.widthMm, option?.widthMm];
  if (a && b && a.value !== b.value) return [{ kind: 'width-differs', now: a.value, option: b.value }];
  return [...unsure('widthMm', 'machine', a), ...unsure('widthMm', 'option', b)];
}

/** A track of the kind that is on has to match it; one of another kind brings its own wheels, but not its hubs. */
function matched(current: CurrentTrack, option: Option): Matched {
  const isSame = familyOf(current.track) === familyOf(option.track);
  const fields = (Object.keys(fitFields) as FitField[]).filter(
    (field) => isSame || fitFields[field].of === 'sprocket',
  );
  const each = fields.map((field) => matchField(field, current.fit, option.fit));
  return {
    against: each.flatMap(({ against }) => against),
    toSettle: [
      ...each.flatMap(({ toSettle }) => toSettle),
      ...(isSame ? matchWidth(current.fit, option.fit) : []),
    ],
  };
}

function frameAgainst(
  current: CurrentTrack | undefined,
  { track }: Option,
  { takesSteel }: Use,
  { rubberOnlyPitchMm }: OptionTables,
): readonly Against[] {
  const [from, to] = [current && familyOf(current.track), familyOf(track)];
  if (to === 'chain' && from !== 'chain') {
    if (takesSteel === true) return [];
    if (takesSteel === false) return [{ kind: 'frame-takes-no-steel', why: 'said' }];
    if (from === 'belt') return [{ kind: 'frame-takes-no-steel', why: 'belt' }];
    const pitch = current?.fit?.pitchMm;
    const { values, source } = rubberOnlyPitchMm;
    if (pitch && pitch.how !== 'assumed' && isFrom(values, pitch.value))
      return [{ kind: 'frame-takes-no-steel', why: 'pitch', source }];
  }
  return from !== undefined && from !== to && (from === 'belt' || to === 'belt')
    ? [{ kind: 'belt-needs-its-frame' }]
    : [];
}

/** Whether it has to be asked if steel goes on at all. */
function frameToSettle(
  current: CurrentTrack | undefined,
  { track }: Option,
  { takesSteel }: Use,
  { steelPitchMm }: OptionTables,
): readonly ToSettle[] {
  if (familyOf(track) !== 'chain' || takesSteel !== undefined) return [];
  if (
    current &&
    (familyOf(current.track) === 'chain' || isFrom(steelPitchMm.values, current.fit?.pitchMm?.value))
  )
    return [];
  return [{ kind: 'frame-not-known' }];
}

function rubberAgainst(
  { kind, massKg }: OptionMachine,
  { track }: Option,
  figures: Figures,
): readonly Against[] {
  const { value: mostKg, source } = figures.wholeRubberMostKg;
  if (!isRubberTrack(track) || massKg === undefined || massKg <= mostKg) return [];
  return [{ kind: 'whole-rubber-not-made', machine: kind, massKg, mostKg, source }];
}

function pavingAgainst({ track }: Option, { noMarks }: Use, { facts }: OptionTables): readonly Against[] {
  const spoils = facts[track].find(({ fact }) => fact === 'spoils-paving');
  return noMarks === true && spoils ? [{ kind: 'marks-paving', source: spoils.source }] : [];
}

/** What a change of kind needs besides the tracks; where both have one pitch the wheels may stay. */
function needsOf(current: CurrentTrack | undefined, option: Option): readonly ChangedPart[] {
  if (!current || familyOf(current.track) === familyOf(option.track)) return [];
  const [from, to] = [current.fit?.pitchMm, option.fit?.pitchMm];
  const isSamePitch = from && to && !differs(from, to, fitFields.pitchMm.mm);
  return isSamePitch ? [] : changedParts;
}

/** How much more or less the machine weighs with an option than now, both sides, in kg. */
export interface MassDifference {
  readonly lowKg: number;
  readonly highKg: number;
  readonly from: 'own' | 'starting';
}

/** The mass that counts as mid-size, from which the starting difference grows and shrinks with the machine. */
const midSizeKg = { least: 5000, most: 10_000 };

/** From the masses of both tracks; else from what a steel outfit commonly weighs more. */
export function massDifference(
  { massKg }: OptionMachine,
  current: CurrentTrack | undefined,
  option: Option,
  figures: Figures,
): MassDifference | undefined {
  if (!current) return undefined;
  if (current.massKg !== undefined && option.massKg) {
    const kg = 2 * (option.massKg.value - current.massKg);
    return { lowKg: kg, highKg: kg, from: 'own' };
  }
  const [from, to] = [isRubberTrack(current.track), isRubberTrack(option.track)];
  if (from === to) return { lowKg: 0, highKg: 0, from: 'starting' };
  if (massKg === undefined) return undefined;
  const scale = massKg / Math.min(Math.max(massKg, midSizeKg.least), midSizeKg.most);
  const [low, high] = [figures.steelHeavierLowKg.value * scale, figures.steelHeavierHighKg.value * scale];
  return from
    ? { lowKg: low, highKg: high, from: 'starting' }
    : { lowKg: -high, highKg: -low, from: 'starting' };
}

function onTrailer(
  { massKg }: OptionMachine,
  difference: MassDifference | undefined,
  { mostMassKg }: Use,
): Matched {
  if (mostMassKg === undefined) return nothing;
  if (massKg === undefined || !difference) return { against: [], toSettle: [{ kind: 'mass-not-known' }] };
  const [low, high] = [massKg + difference.lowKg, massKg + difference.highKg];
  if (low > mostMassKg)
    return { against: [{ kind: 'over-trailer', massKg: low, mostKg: mostMassKg }], toSettle: [] };
  return high > mostMassKg
    ? { against: [], toSettle: [{ kind: 'near-trailer', massKg: high, mostKg: mostMassKg }] }
    : nothing;
}

/** Whether a track can go on this machine for this work, what is to be settled first, and what it needs besides. */
export function fitOf(
  machine: OptionMachine,
  current: CurrentTrack | undefined,
  option: Option,
  use: Use,
  tables: OptionTables,
  figures: Figures,
): Fit {
  const match = current ? matched(current, option) : nothing;
  const trailer = onTrailer(machine, massDifference(machine, current, option, figures), use);
  const scuffs = tables.facts[option.track].some(({ fact }) => fact === 'scuffs-hot-asphalt');
  return {
    against: [
      ...frameAgainst(current, option, use, tables),
      ...rubberAgainst(machine, option, figures),
      ...match.against,
      ...pavingAgainst(option, use, tables),
      ...trailer.against,
    ],
    toSettle: [
      ...frameToSettle(current, option, use, tables),
      ...match.toSettle,
      ...trailer.toSettle,
      ...(use.noMarks === true && scuffs ? [{ kind: 'scuffs-paving' } as const] : []),
    ],
    needs: needsOf(current, option),
  };
}
