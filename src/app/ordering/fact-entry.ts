import type { FittedFact } from '../../core/machine.ts';
import type { PartFact } from '../../core/part-facts.ts';
import { factAsk, type FactName } from '../../core/part-kinds.ts';
import type { LengthUnit } from '../../core/quantity.ts';
import { parseCount } from '../../core/typed.ts';
import { unreachable } from '../../core/result.ts';
import { ordering as words } from '../../words/en/ordering.ts';
import { typedErrorLines, wholeNumber } from '../../words/en/typed.ts';
import { formatter } from '../data/format.ts';
import { readPad, type Meant } from '../data/pad-text.ts';

export type How = FittedFact['how'];

/** What is typed or chosen for a fact, as it is kept while it is half done. */
export interface FactDraft {
  readonly texts: readonly string[];
  readonly spaces: number;
  readonly how: How;
}

/** What a fact comes to, without how it is known. */
interface Value {
  readonly value: string | number;
  readonly typed?: string;
  readonly unit?: LengthUnit;
  readonly spaces?: number;
  readonly again?: number;
}

/** A fact, or why it is none yet; what could be meant is asked. */
export type Entered =
  | { readonly kind: 'fact'; readonly fact: Value }
  | { readonly kind: 'asked'; readonly line: string; readonly choices: readonly Meant[] };

/** Counted spaces that a pitch is usually measured over. */
const usualSpaces = 4;

const isSeen = (name: FactName): boolean => {
  const { kind } = factAsk(name);
  return kind === 'text' || kind === 'choice' || name === 'pitch-new' || name === 'bushing-new';
};

/** What the controls begin with: what was entered before, else nothing. */
export function draftOf({ name, value, from, how, spaces, again }: PartFact, unit: LengthUnit): FactDraft {
  const isOwn = from === 'entered' || (name === 'moulding' && from === 'machine');
  const usual = isSeen(name) ? 'read' : 'measured';
  if (!isOwn || how === 'missing' || value === undefined)
    return { texts: [], spaces: usualSpaces, how: usual };
  const { kind } = factAsk(name);
  const first =
    typeof value === 'number' && (kind === 'length' || kind === 'spaces')
      ? formatter.value.field(value * (spaces ?? 1), unit)
      : String(value);
  return {
    texts: [first, ...(again === undefined ? [] : [String(again)])],
    spaces: spaces ?? usualSpaces,
    how,
  };
}

/** As long as a record keeps; the moulding stands there as the size of the machine's track. */
const longestOf = (name: FactName): number => (name === 'moulding' ? 120 : 160);

const asked = (line: string, choices: readonly Meant[] = []): Entered => ({ kind: 'asked', line, choices });

function enteredText(name: FactName, text: string, line: string): Entered {
  const value = text.trim().slice(0, longestOf(name));
  return value === '' ? asked(line) : { kind: 'fact', fact: { value } };
}

function enteredLength(typed: string, unit: LengthUnit, spaces: number | undefined, meant?: Meant): Entered {
  const read = meant ? { kind: 'length' as const, mm: meant.mm } : readPad(typed, unit);
  if (read.kind === 'fault') return asked(read.line);
  if (read.kind === 'doubt')
    return asked(
      read.line,
      read.choices.filter(({ mm }) => mm > 0),
    );
  if (read.mm <= 0) return asked(typedErrorLines.empty);
  const value = read.mm / (spaces ?? 1);
  return {
    kind: 'fact',
    fact: { value, typed: typed.trim(), unit, ...(spaces !== undefined && { spaces }) },
  };
}

function countFault(text: string): string | undefined {
  const read = parseCount(text);
  if (read.ok || read.error.kind === 'ambiguous') return undefined;
  return read.error.kind === 'fraction' ? wholeNumber : typedErrorLines[read.error.kind];
}

function enteredCount([first = '', second = '']: readonly string[]): Entered {
  const [value, again] = [parseCount(first), parseCount(second)];
  const fault = countFault(first) ?? (second.trim() === '' ? undefined : countFault(second));
  if (fault !== undefined || !value.ok) return asked(fault ?? wholeNumber);
  return { kind: 'fact', fact: { value: value.value, ...(again.ok && { again: again.value }) } };
}

/** The fact that a draft makes, or what is asked about it; `meant` is the answer to a length with two readings. */
export function factFrom(name: FactName, draft: FactDraft, unit: LengthUnit, meant?: Meant): Entered {
  const ask = factAsk(name);
  const [first = ''] = draft.texts;
  switch (ask.kind) {
    case 'text':
      return enteredText(name, first, words.typeText);
    case 'choice':
      return enteredText(name, first, words.noneThere);
    case 'length':
      return enteredLength(first, unit, undefined, meant);
    case 'spaces':
      return enteredLength(first, unit, draft.spaces, meant);
    case 'count':
    case 'twice':
      return enteredCount(draft.texts);
    default:
      return unreachable(ask);
  }
}
