import type { LimitSheet } from '../core/limits.ts';
import { isPlanned } from '../core/outlook.ts';
import type { RuleSet } from '../core/rules.ts';
import { sideNames } from '../words/en/items.ts';
import { report as words } from '../words/en/report.ts';
import { sourceText } from '../words/source-text.ts';
import type { Block } from './blocks.ts';
import { facts, list, section, unique } from './parts.ts';
import type { ReportInput } from './report-input.ts';

interface Named {
  readonly name: string;
  readonly version?: string | undefined;
}

const named = ({ name, version }: Named): string =>
  version === undefined ? name : words.version(name, version);

function sheetFacts(
  left: LimitSheet | undefined,
  right: LimitSheet | undefined,
): readonly (readonly [string, string])[] {
  const say = (sheet: LimitSheet | undefined): string => (sheet ? named(sheet) : words.noSheet);
  if (say(left) === say(right)) return [[words.sheet, say(left)]];
  return [
    [words.sheetOf(sideNames.left), say(left)],
    [words.sheetOf(sideNames.right), say(right)],
  ];
}

const rulesText = (rules: RuleSet | undefined): string => (rules ? named(rules) : words.noRules);

/** The sheets, rules and prices by which everything was judged, and where their figures are from. */
export function sourceSection({ input, outlook }: Pick<ReportInput, 'input' | 'outlook'>): readonly Block[] {
  const { sheets, rules } = input;
  const { prices, rates } = outlook?.costs ?? {};
  return section(words.sources, [
    ...facts([
      ...sheetFacts(sheets.left, sheets.right),
      [words.rules, rulesText(rules)],
      [words.prices, prices && named(prices)],
      [words.rates, rates && named(rates)],
    ]),
    ...section(words.lifeSource, list(lifeSources(outlook)), 3),
    ...section(words.priceSource, list(priceSources(outlook)), 3),
  ]);
}

function lifeSources(outlook: ReportInput['outlook']): readonly string[] {
  if (!outlook) return [];
  const { kappa, readingError } = outlook.life;
  return unique([kappa.source, readingError.source].map(sourceText));
}

function priceSources(outlook: ReportInput['outlook']): readonly string[] {
  if (!outlook || !isPlanned(outlook.plan)) return [];
  const { visits, later } = outlook.plan;
  const jobs = [...visits.flatMap((visit) => visit.jobs), ...later];
  return unique(jobs.flatMap(({ cost }) => cost.sources.map(sourceText)));
}
