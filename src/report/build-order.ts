import type { Machine } from '../core/machine.ts';
import type { PartFact } from '../core/part-facts.ts';
import type { OrderGroup, OrderLine, PartsToOrder } from '../core/parts-to-order.ts';
import type { Walk } from '../core/walk.ts';
import type { Dates } from '../words/dates.ts';
import { orderPage as words } from '../words/en/order-page.ts';
import { factWords, orderHeads as heads, ordering } from '../words/en/ordering.ts';
import { report } from '../words/en/report.ts';
import type { Formatter, Preferences } from '../words/format.ts';
import { countText, doubtTexts, factText, howText, partText, whyTexts } from '../words/order-text.ts';
import { capital } from '../words/outcome-text.ts';
import type { Block, Report } from './blocks.ts';
import { machineFacts } from './machine-section.ts';
import { page } from './page.ts';
import { facts, heading, text } from './parts.ts';

/** What the page for a parts desk is made of. */
export interface OrderPageInput {
  readonly machine: Machine;
  readonly walk: Walk;
  readonly order: PartsToOrder;
  /** When the parts of a group have to be there, in words. */
  readonly whenText: (when: OrderGroup['when']) => string;
  /** A demo machine: said on top. */
  readonly invented: boolean;
  readonly format: Formatter;
  readonly units: Pick<Preferences, 'length'>;
  readonly dates: Dates;
}

/** The parts to order for whoever sells them: the machine, the list by visit, and what is known of each part. */
export function orderPageOf(of: OrderPageInput): Report {
  const title = words.title(of.machine.name);
  const groups = of.order.groups.flatMap(({ when, lines }) => {
    const kept = lines.filter(({ out }) => !out);
    return kept.length === 0 ? [] : [{ when, lines: kept }];
  });
  const all = of.order.groups.flatMap(({ lines }) => lines);
  const out = all.filter((line) => line.out).length;
  const blocks: readonly Block[] = [
    heading(1, title),
    ...(of.invented ? [text(report.invented, 'caution')] : []),
    text(groups.length === 0 ? words.none : words.ask),
    ...machineBlocks(of),
    heading(2, words.summary),
    ...groups.map((group) => listOf(group, of)),
    ...(out === 0 ? [] : [text(words.leftOut(out), 'small')]),
    ...groups.flatMap(({ lines }) => lines.flatMap((line) => factsOf(line, of))),
    text(words.legend, 'small'),
  ];
  const day = of.walk.startedAt === undefined ? '' : of.dates.day(of.walk.startedAt);
  return page(title, blocks, report.running(title, day));
}

/** A PIN that is missing is said so; customer and notes are nobody's business at a parts desk. */
function machineBlocks({ machine, walk, format, dates }: OrderPageInput): readonly Block[] {
  const { note: _note, ...told } = machine;
  return [
    heading(2, report.machine),
    ...(machine.pin === undefined ? [text(words.noPin, 'caution')] : []),
    ...machineFacts({ input: { machine: told, walk, sheets: {}, readings: [] }, format }),
    ...facts([
      [words.day, walk.startedAt && dates.day(walk.startedAt)],
      [report.jobNumber, walk.jobNumber],
    ]),
  ];
}

function listOf({ when, lines }: OrderGroup, { whenText, format }: OrderPageInput): Block {
  return {
    kind: 'table',
    caption: whenText(when),
    head: [heads.part, heads.count, heads.partNumber],
    figures: [1],
    rows: lines.map((line) => [
      partText(line),
      countText(line, format),
      [line.partNumber, line.match ? ordering.match : undefined].filter(Boolean).join('. '),
    ]),
  };
}

/** Why a part is needed, and what is known of it and what is not, with room to write it in. */
function factsOf(line: OrderLine, of: OrderPageInput): readonly Block[] {
  const name = partText(line);
  return [
    heading(2, name),
    ...whyTexts(line, of.format).map((why) => text(why)),
    ...(line.goesWith ? [text(ordering.goesWith, 'small')] : []),
    ...(line.onWornSprocket ? [text(ordering.wornSprocket)] : []),
    ...(line.facts.length === 0 ? [] : [factTable(name, line.facts, of)]),
  ];
}

const factTable = (name: string, all: readonly PartFact[], of: OrderPageInput): Block => ({
  kind: 'table',
  caption: words.facts(name),
  head: [words.fact, words.value, words.how],
  figures: [],
  rows: all.map((fact) => factRow(fact, of)),
});

function factRow(fact: PartFact, { format, units }: OrderPageInput): readonly string[] {
  const how = [howText(fact), ...doubtTexts(fact)].join('. ');
  return [capital(factWords[fact.name].name), factText(fact, format, units.length !== 'mm') ?? '', how];
}
