import { assemble } from '../../src/core/assemble.ts';
import { isDemo, type RecordKey } from '../../src/core/keys.ts';
import { assert } from '../../src/core/result.ts';
import { score } from '../../src/core/score.ts';
import type { ScoreInput } from '../../src/core/states.ts';
import { builtIn } from '../../src/reference/built-in.ts';
import type { Block, Report } from '../../src/report/blocks.ts';
import { buildReport } from '../../src/report/build-report.ts';
import type { ReportInput } from '../../src/report/report-input.ts';
import { makeDates } from '../../src/words/dates.ts';
import { reasonTexts } from '../../src/words/en/reason-texts.ts';
import type { Preferences } from '../../src/words/format.ts';
import { makeFormatter } from '../../src/words/formatter.ts';
import { demoMap, outlookAt, shelfWith, type Records } from '../core/ahead-made.ts';
import { seenTextsOf } from './model-text.ts';

const metric: Preferences = { locale: 'en', depth: 'mm', length: 'mm', mass: 'kg' };

/** What a report is made of, from what scoring needs alone. */
export function inputOf(input: ScoreInput, preferences = metric): ReportInput {
  return {
    input,
    scored: score(input),
    outlook: undefined,
    invented: false,
    photos: [],
    people: [],
    seals: [],
    format: makeFormatter(preferences),
    units: preferences,
    dates: makeDates(preferences.locale),
    reasonTexts,
  };
}

/** The same for a walk of the demo machines, with what lies ahead of it. */
export function demoInput(walk: RecordKey, preferences = metric, records: Records = demoMap()): ReportInput {
  const made = assemble(shelfWith(records), builtIn, walk);
  assert(made.ok, 'a walk');
  return {
    ...inputOf(made.value.input, preferences),
    outlook: outlookAt(records, walk),
    invented: isDemo(walk),
  };
}

/** Every text of a block, also what a reader is told of a picture and what a QR code holds. */
export const textsOf = (block: Block): readonly string[] => [
  ...seenTextsOf(block),
  ...('alt' in block ? [block.alt] : []),
  ...(block.kind === 'code' ? [block.content] : []),
];

export const linesOf = ({ title, running, blocks }: Report): readonly string[] => [
  title,
  running,
  ...blocks.flatMap(textsOf),
];

export const reportOf = (input: ReportInput): string => linesOf(buildReport(input)).join('\n');
