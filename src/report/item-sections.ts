import { callRank } from '../core/calls.ts';
import type { ItemOutcome } from '../core/score.ts';
import type { Wear } from '../core/wear.ts';
import { callWords, meanwhileWords, openCall } from '../words/en/calls.ts';
import { noteWords } from '../words/en/notes.ts';
import { openLine } from '../words/en/open.ts';
import { reasonLine } from '../words/en/reason-line.ts';
import { report as words } from '../words/en/report.ts';
import { verdict } from '../words/en/verdict.ts';
import { capital, outcomePlace, wearText } from '../words/outcome-text.ts';
import { sourceText } from '../words/source-text.ts';
import type { Block } from './blocks.ts';
import { facts, heading, list, section, text } from './parts.ts';
import { picturesOf } from './photo-section.ts';
import { againstText, howText, notesText, readText, valuesText } from './reading-text.ts';
import type { ReportInput } from './report-input.ts';

/** Every item with what was read of it: first what needs doing, then what was measured, then what was passed. */
export function itemSections(of: ReportInput): readonly Block[] {
  const known = of.scored.outcomes.filter(({ state }) => state.known);
  const needing = known
    .filter(({ atLeast }) => atLeast !== 'run')
    .sort((a, b) => callRank(b.atLeast) - callRank(a.atLeast));
  const running = known.filter(({ atLeast }) => atLeast === 'run');
  const hasFigures = ({ state }: ItemOutcome): boolean =>
    state.sampled !== undefined || state.sag !== undefined || !state.passed;
  const measured = running.filter(hasFigures);
  const passed = running.filter((each) => !hasFigures(each));
  const none = needing.length === 0 && known.length > 0;
  return [
    ...section(words.doing, none ? [text(words.doingNone)] : needing.flatMap((each) => entryOf(each, of))),
    ...section(
      words.measured,
      measured.flatMap((each) => entryOf(each, of)),
    ),
    ...section(words.fine, list(byPlace(passed, of))),
  ];
}

/** One item of the running column: its bar, its call, and what they rest on. */
function entryOf(outcome: ItemOutcome, of: ReportInput): readonly Block[] {
  const { state } = outcome;
  const { format } = of;
  const worn = wearText(state, format);
  const title = `${capital(format.item(state.item.id))}, ${outcomePlace(outcome)}`;
  const mine = of.input.readings.filter(({ place, item }) => place === state.place && item === state.item.id);
  return [
    heading(3, title),
    ...(state.wear && worn !== undefined ? [barOf(state.wear, worn)] : []),
    callBlock(outcome),
    ...facts([
      [words.read, readText(state, format)],
      [words.how, [howText(mine, state, format), valuesText(mine, state, format)].filter(Boolean).join('; ')],
      [words.against, againstText(state, format)],
      ...reasonFacts(outcome, of),
      ...outcome.notes.map(({ kind }) => [words.leansOn, noteWords[kind]] as const),
      ...outcome.open.map((open) => [words.notKnown, openLine(open, format)] as const),
      [words.said, notesText(mine)],
      [words.pictures, picturesOf(state, of)],
    ]),
  ];
}

const barOf = ({ percent, expanded }: Wear, text: string): Block => ({
  kind: 'bar',
  percent,
  expanded,
  text,
});

function callBlock({ atLeast, open, meanwhile }: ItemOutcome): Block {
  if (atLeast === 'run' && open.length > 0) {
    return { kind: 'call', call: 'open', word: openCall.word, text: '' };
  }
  const say = atLeast === 'run' ? '' : verdict.meanwhile(meanwhileWords[meanwhile].word);
  return { kind: 'call', call: atLeast, word: callWords[atLeast].word, text: say };
}

function reasonFacts({ reasons }: ItemOutcome, of: ReportInput): readonly (readonly [string, string])[] {
  return reasons.map(({ message, params, rule, source }) => {
    const because = reasonLine(message, params, of.format, of.reasonTexts);
    const from = source ? `${verdict.rule(rule)}; ${sourceText(source)}` : verdict.rule(rule);
    return [words.why, words.ruled(because, from)];
  });
}

/** What was passed, by part. */
function byPlace(outcomes: readonly ItemOutcome[], { format }: ReportInput): readonly string[] {
  const places = new Map<string, string[]>();
  for (const outcome of outcomes) {
    const place = outcomePlace(outcome);
    places.set(place, [...(places.get(place) ?? []), format.item(outcome.state.item.id)]);
  }
  return [...places].map(([place, items]) => words.fineAt(capital(place), items.join(', ')));
}
