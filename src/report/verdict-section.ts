import { factsOf } from '../core/score.ts';
import { flipsOf } from '../core/flips.ts';
import { shownCall } from '../core/verdict.ts';
import { callWords, meanwhileWords, openCall } from '../words/en/calls.ts';
import { reasonLine } from '../words/en/reason-line.ts';
import { report as words } from '../words/en/report.ts';
import { verdict } from '../words/en/verdict.ts';
import { capital, outcomePlace } from '../words/outcome-text.ts';
import { answersOf } from '../words/purpose-answers.ts';
import { sizeOf } from '../words/size-of.ts';
import type { Block } from './blocks.ts';
import { facts, heading, text } from './parts.ts';
import type { ReportInput } from './report-input.ts';

/** The call of the machine, what it may do meanwhile, and the answers that the purpose asks for. */
export function verdictSection(of: ReportInput): readonly Block[] {
  const { verdict: found } = of.scored;
  const call = shownCall(found);
  const { word, line } = call === 'open' ? openCall : callWords[call];
  const meanwhile = meanwhileWords[found.meanwhile];
  return [
    heading(2, words.verdict),
    { kind: 'call', call, word, text: words.needs(line, meanwhile.word, meanwhile.line) },
    ...(!found.settled && call !== 'open' ? [text(verdict.openLine)] : []),
    heading(3, words.answers),
    ...answers(of),
    ...flip(of),
  ];
}

function answers({ input, scored, format, reasonTexts, rental }: ReportInput): readonly Block[] {
  const { walk, machine } = input;
  const given = answersOf({
    walk,
    machine,
    scored,
    format,
    rental,
    reasonText: ({ message, params }) => reasonLine(message, params, format, reasonTexts),
  });
  const rows = given.map(({ ask, say, more }) => {
    const said = typeof say === 'string' ? say : say.join('; ');
    return [ask, capital(more === undefined ? said : `${said}. ${more}`)] as const;
  });
  const asked = rows.filter(([ask]) => ask !== '');
  const loose = rows.filter(([ask]) => ask === '');
  return [...facts(asked), ...loose.map(([, line]) => text(line))];
}

/** The one reading that, taken again, could turn the verdict. */
function flip({ input, scored, format }: ReportInput): readonly Block[] {
  const [first] = input.rules ? flipsOf(factsOf(input), input.rules, scored) : [];
  if (!first) return [text(verdict.noFlip, 'small')];
  const { state, byMm, call } = first;
  const { item } = state;
  const size = `${byMm < 0 ? '−' : '+'}${sizeOf(item.id, Math.abs(byMm), format)}`;
  const word = call === 'open' ? openCall.word : callWords[call].word;
  return [text(verdict.flipBy(format.item(item.id), outcomePlace({ state }), `${size} (${word})`))];
}
