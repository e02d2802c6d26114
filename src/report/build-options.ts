import { optionAnswer as words, options, optionPaper } from '../words/en/options.ts';
import type { AnswerText } from '../words/option-answer.ts';
import type { OptionLine } from '../words/option-lines.ts';
import { capital } from '../words/outcome-text.ts';
import { sourceText } from '../words/source-text.ts';
import type { Block, Report } from './blocks.ts';
import { page } from './page.ts';
import { facts, heading, list, section, text, unique } from './parts.ts';

/** One option as the page says it. */
export interface PaperOption {
  readonly name: string;
  readonly standing: string;
  /** Why it cannot go on; none where it can. */
  readonly against: readonly string[];
  readonly toSettle: readonly string[];
  readonly lines: readonly OptionLine[];
}

/** A comparison of tracks as it goes on paper. */
export interface OptionsPaper {
  readonly title: string;
  /** What was asked: the machine and the work. */
  readonly asked: readonly (readonly [name: string, value: string])[];
  readonly answer: AnswerText;
  readonly options: readonly PaperOption[];
}

/** Which tracks to put on, as a page to print or to write as a PDF. */
export function optionsReport({ title, asked, answer, options: all }: OptionsPaper): Report {
  const blocks: readonly Block[] = [
    heading(1, title),
    text(answer.answer, 'lead'),
    ...list(answer.why),
    ...answer.usual.map((line) => text(line, 'small')),
    text(words.estimates, 'small'),
    ...section(words.decides, list(answer.decides)),
    ...section(words.flips, list(answer.flips)),
    ...section(optionPaper.asked, facts(asked)),
    ...section(words.all, [sideBySide(all), ...all.flatMap(optionBlocks)]),
    text(optionPaper.aid, 'small'),
  ];
  return page(title, blocks);
}

const columns = [words.costPerHour, words.costYear, words.atOnce, words.payBack, words.life];

/** What is compared first, one row an option. */
function sideBySide(all: readonly PaperOption[]): Block {
  return {
    kind: 'table',
    caption: words.table,
    head: [words.option, ...columns],
    figures: [],
    rows: all.map(({ name, lines }) => [
      name,
      ...columns.map((column) => lines.find((line) => line.name === column)?.text ?? words.notKnown),
    ]),
  };
}

function optionBlocks({ name, standing, against, toSettle, lines }: PaperOption): readonly Block[] {
  const sources = unique(
    lines.flatMap((line) => line.sources.map((each) => sourceText(each).replace(/\.$/, ''))),
  );
  return [
    heading(3, name),
    text(capital(standing)),
    ...against.map((line) => text(line, 'caution')),
    ...facts(lines.map((line) => [line.name, line.text])),
    ...(toSettle.length > 0 ? [text(`${words.settle}:`), ...list(toSettle)] : []),
    ...(sources.length > 0 ? [text(optionPaper.from(sources), 'small')] : []),
  ];
}

/** The title of the page of a machine, or of the question asked alone. */
export const paperTitle = (machine: string | undefined): string =>
  machine === undefined ? options.aloneTitle : optionPaper.title(machine);
