import type { Call, Meanwhile } from '../core/calls.ts';
import type { Params } from '../core/reason.ts';
import type { ItemOutcome, Note } from '../core/score.ts';
import type { Source } from '../core/source.ts';
import type { ItemState } from '../core/states.ts';
import { placeName } from '../words/en/items.ts';
import { noteWords } from '../words/en/notes.ts';
import { openLine } from '../words/en/open.ts';
import { reasonSentence } from '../words/en/reasons.ts';
import type { Formatter } from '../words/format.ts';

/** What was read; only what the kind of item has. */
export interface ScoredReading {
  /** Looked at with its group and found fine. */
  readonly passed: boolean;
  readonly finding?: string;
  readonly count?: number;
  readonly share?: number;
  /** The worst spot in mm, how many spots were read, and their mean. */
  readonly mm?: number;
  readonly spots?: number;
  readonly meanMm?: number;
  readonly cracks?: readonly {
    readonly lengthMm: number;
    readonly depthMm: number;
    readonly cordVisible: boolean;
  }[];
}

export interface ScoredWear {
  readonly percent: number;
  /** Expanded uncertainty, k = 2. */
  readonly plusMinus: number;
  readonly newMm: number;
  readonly limitMm: number;
  readonly means: string;
  readonly source: { readonly new: Source | null; readonly limit: Source };
}

export interface ScoredSag {
  readonly state: string;
  readonly byMm: number;
  readonly valueMm: number;
  readonly lowMm: number;
  readonly highMm: number;
  readonly method: string;
  readonly source: Source;
}

/** One item at one place, scored; sentences are in the reader's language and units, all else in base units. */
export interface ScoredItem {
  readonly place: string;
  readonly item: string;
  readonly name: string;
  readonly known: boolean;
  readonly reading: ScoredReading | null;
  readonly worn: ScoredWear | null;
  readonly sag: ScoredSag | null;
  /** What is shown: `open` instead of `run` while something about it is not known. */
  readonly call: Call | 'open';
  /** What is certain from what is known. */
  readonly atLeast: Call;
  readonly meanwhile: Meanwhile;
  readonly couldPark: boolean;
  readonly reasons: readonly {
    readonly rule: string;
    readonly message: string;
    readonly params: Params;
    readonly source: Source | null;
    readonly sentence: string;
  }[];
  readonly open: readonly { readonly kind: string; readonly params: Params; readonly sentence: string }[];
  readonly notes: readonly { readonly kind: Note['kind']; readonly sentence: string }[];
}

const sourceOf = ({ mark, text }: Source): Source => ({ mark, text });

function readingOf(state: ItemState): ScoredReading | null {
  const { finding, count, share, sampled, cracks, passed } = state;
  if (!state.known) return null;
  return {
    passed,
    ...(finding !== undefined && { finding }),
    ...(count !== undefined && { count }),
    ...(share !== undefined && { share }),
    ...(sampled && { mm: sampled.worst.mm, spots: sampled.samples, meanMm: sampled.meanMm }),
    ...(cracks.length > 0 && { cracks }),
  };
}

function wornOf({ wear, limits }: ItemState): ScoredWear | null {
  if (!wear) return null;
  const { percent, expanded, newMm, limitMm, means, chosen } = wear;
  const source = {
    new: limits?.new ? sourceOf(limits.new.source) : null,
    limit: sourceOf(chosen.limit.source),
  };
  return { percent, plusMinus: expanded, newMm, limitMm, means, source };
}

function sagOf({ sag }: ItemState): ScoredSag | null {
  if (!sag) return null;
  const { state, byMm, valueMm, lowMm, highMm, spec } = sag;
  return { state, byMm, valueMm, lowMm, highMm, method: spec.method, source: sourceOf(spec.source) };
}

/** Puts an outcome into plain JSON. */
export function scoredItem(outcome: ItemOutcome, format: Formatter): ScoredItem {
  const { state, atLeast, meanwhile, canPark, reasons, open, notes } = outcome;
  const { side, item, number } = state;
  const where = placeName({ side, component: item.component, ...(number !== undefined && { number }) });
  return {
    place: state.place,
    item: item.id,
    name: `${where}: ${format.item(item.id)}`,
    known: state.known,
    reading: readingOf(state),
    worn: wornOf(state),
    sag: sagOf(state),
    call: atLeast === 'run' && open.length > 0 ? 'open' : atLeast,
    atLeast,
    meanwhile,
    couldPark: canPark,
    reasons: reasons.map((reason) => ({
      rule: reason.rule,
      message: reason.message,
      params: reason.params,
      source: reason.source ? sourceOf(reason.source) : null,
      sentence: reasonSentence(reason, format),
    })),
    open: open.map((each) => ({ kind: each.kind, params: each.params, sentence: openLine(each, format) })),
    notes: notes.map(({ kind }) => ({ kind, sentence: noteWords[kind] })),
  };
}
