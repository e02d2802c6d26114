import { isRubberTrack, type OptionMachine } from './option-life.ts';
import { massDifference, type MassDifference } from './option-mass.ts';
import {
  familyOf,
  isSamePitch,
  matchOf,
  otherTeeth,
  type AnyField,
  type CurrentTrack,
  type Match,
  type Mismatch,
} from './option-match.ts';
import type { Figures, OptionTables } from './option-tables.ts';
import type { MachineKind } from './machine.ts';
import type { Option } from './option.ts';
import type { Source } from './source.ts';
import type { Use } from './use.ts';

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
      readonly of: 'machine' | 'option';
      readonly fields: readonly AnyField[];
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

const isFrom = (values: readonly number[], mm: number | undefined): boolean =>
  mm !== undefined && values.some((each) => Math.abs(each - mm) < 0.25);

type Matched = Pick<Fit, 'against' | 'toSettle'>;
const nothing: Matched = { against: [], toSettle: [] };

const asks = (kind: 'not-known' | 'assumed', by: Match['unknown']): readonly ToSettle[] =>
  (['machine', 'option'] as const).flatMap((of) => (by[of].length > 0 ? [{ kind, of, fields: by[of] }] : []));

/** A track of the kind that is on has to match it; one of another kind brings its own wheels, but not its hubs. */
function matched(current: CurrentTrack, option: Option): Matched {
  const { differing, width, unknown, assumed } = matchOf(current, option);
  return {
    against: differing
      .filter(({ sure }) => sure)
      .map(({ of, field, now, option: then }) => ({
        kind: of === 'sprocket' ? ('sprocket-differs' as const) : ('mismatch' as const),
        field,
        now,
        option: then,
      })),
    toSettle: [
      ...differing
        .filter(({ sure }) => !sure)
        .map(({ field, now, option: then }) => ({
          kind: 'may-not-match' as const,
          field,
          now,
          option: then,
        })),
      ...(width ? [{ kind: 'width-differs' as const, ...width }] : []),
      ...asks('not-known', unknown),
      ...asks('assumed', assumed),
    ],
  };
}

function frameAgainst(
  { shape }: OptionMachine,
  current: CurrentTrack | undefined,
  { track }: Option,
  { takesSteel }: Use,
  { rubberOnlyPitchMm }: OptionTables,
): readonly Against[] {
  const [from, to] = [current && familyOf(current.track), familyOf(track)];
  if (to === 'chain' && familyOf(current?.track ?? shape.track) !== 'chain') {
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
  { shape }: OptionMachine,
  current: CurrentTrack | undefined,
  { track }: Option,
  { takesSteel }: Use,
  { steelPitchMm }: OptionTables,
): readonly ToSettle[] {
  if (familyOf(track) !== 'chain' || takesSteel !== undefined) return [];
  if (familyOf(current?.track ?? shape.track) === 'chain') return [];
  return isFrom(steelPitchMm.values, current?.fit?.pitchMm?.value) ? [] : [{ kind: 'frame-not-known' }];
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

/** What has to be changed with the tracks; where old and new have one pitch the wheels may stay. */
function needsOf(current: CurrentTrack | undefined, option: Option): readonly ChangedPart[] {
  if (!current) return [];
  if (familyOf(current.track) === familyOf(option.track))
    return otherTeeth(current.fit, option.fit) ? ['sprocket'] : [];
  return isSamePitch(current.fit, option.fit) ? [] : changedParts;
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
      ...frameAgainst(machine, current, option, use, tables),
      ...rubberAgainst(machine, option, figures),
      ...match.against,
      ...pavingAgainst(option, use, tables),
      ...trailer.against,
    ],
    toSettle: [
      ...frameToSettle(machine, current, option, use, tables),
      ...match.toSettle,
      ...trailer.toSettle,
      ...(use.noMarks === true && scuffs ? [{ kind: 'scuffs-paving' } as const] : []),
    ],
    needs: needsOf(current, option),
  };
}
