import type { Appraisal } from '../core/appraisal.ts';
import type { Outlook } from '../core/outlook.ts';
import { isSoft } from '../core/source.ts';
import type { TextLine } from '../words/appraisal-lines.ts';
import { appraisalText, type AppraisalText } from '../words/appraisal-text.ts';
import { appraisal as words } from '../words/en/appraisal.ts';
import type { Formatter } from '../words/format.ts';
import { capital } from '../words/outcome-text.ts';
import { sourceText } from '../words/source-text.ts';
import type { Block } from './blocks.ts';
import { facts, heading, list, section, text, unique } from './parts.ts';

/** What the sections of an appraisal are made of. */
export interface AppraisalSectionInput {
  readonly appraisal: Appraisal;
  readonly outlook: Pick<Outlook, 'rubber'>;
  readonly format: Formatter;
}

/** The sums of an appraisal with every line, for its own page and for the report of the walk. */
export function appraisalSection(of: AppraisalSectionInput, title: string = words.title): readonly Block[] {
  const { appraisal, outlook, format } = of;
  const told = appraisalText({ appraisal, rubber: outlook.rubber, format });
  return [
    heading(2, title),
    ...facts([...told.answers.map(({ ask, say }) => [ask, say] as const), ...told.worst]),
    ...list(told.answers.map(({ ask, more }) => `${ask}. ${more.join(' ')}`)),
    text(words.estimate, 'small'),
    ...sums(told, words.amounts(appraisal.currency ?? '')),
    ...section(words.meter, [...list(told.meter)], 3),
    ...section(words.signs, told.signs.length > 0 ? list(told.signs) : [text(words.signsNone)], 3),
    ...section(
      words.notVerified,
      told.notVerified.length > 0 ? list(told.notVerified) : [text(words.allVerified)],
      3,
    ),
    ...section(words.basis, [...list(words.basisLines), ...choices(of)], 3),
  ];
}

function sums(told: AppraisalText, amounts: string): readonly Block[] {
  return [
    heading(3, words.deductLines),
    ...(told.deduction.length > 0 ? lines(amounts, told.deduction) : [text(words.deductNone)]),
    heading(3, words.spendLines),
    ...lines(amounts, told.spend),
    ...told.spendMore.map((line) => text(line, 'small')),
    heading(3, words.valueLines),
    ...(told.value.length > 0 ? lines(amounts, told.value) : [text(words.valueNone)]),
    ...section(words.valueOpen, list(told.valueOpen), 3),
    heading(3, words.stated),
    ...told.stated.map((line) => text(line)),
    ...lines(amounts, told.statedLines),
  ];
}

/** Where prices are from, said once under the lines. */
const sourcesOf = (all: readonly TextLine[]): readonly Block[] =>
  unique(all.flatMap(({ sources }) => sources.map(sourceText))).map((line) => text(capital(line), 'small'));

function lines(caption: string, all: readonly TextLine[]): readonly Block[] {
  if (all.length === 0) return [];
  return [
    {
      kind: 'table',
      caption,
      head: [words.what, words.why, words.sum],
      figures: [2],
      rows: all.map(({ title, because, amount, sources }) => [
        title,
        because.join(' · '),
        sources.some(isSoft) ? words.estimated(amount) : amount,
      ]),
    },
    ...sourcesOf(all),
  ];
}

/** The choices that the sums lean on. */
function choices({ appraisal: { settings }, format }: AppraisalSectionInput): readonly Block[] {
  return facts([
    [words.saleable, format.percent(settings.saleable)],
    [words.sets, settings.sets === 'worst' ? words.setsWorst : words.setsEach],
    [words.hours, format.hours(settings.hours)],
    [words.priceSpread, format.percent(settings.priceSpread)],
  ]);
}
