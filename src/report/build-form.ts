import { isNeeded, numbersOf, samplesNeeded } from '../core/groups.ts';
import { components, itemsOf, partsASide, type Component, type Item } from '../core/items.ts';
import type { PlaceSide } from '../core/keys.ts';
import { limitsFor, chooseLimit } from '../core/limits.ts';
import { toMm } from '../core/quantity.ts';
import { unreachable } from '../core/result.ts';
import type { Caution } from '../core/walk.ts';
import { unitShort } from '../words/en/choices.ts';
import { componentNames, findingLabel, sideNames } from '../words/en/items.ts';
import { pad } from '../words/en/pad.ts';
import { paperForm as words, report } from '../words/en/report.ts';
import { roleWords } from '../words/en/sealing.ts';
import { capital } from '../words/outcome-text.ts';
import { isTaped } from '../words/size-of.ts';
import type { Block, Report } from './blocks.ts';
import { cautionBlocks } from './caution-section.ts';
import { machineFacts } from './machine-section.ts';
import { blankSignature, page } from './page.ts';
import { heading, text } from './parts.ts';
import type { ReportInput } from './report-input.ts';

/** What a form is made of: the machine, how thorough the walk is, and the units of whoever fills it in. */
export type FormInput = Pick<ReportInput, 'input' | 'format' | 'units'>;

/** More columns than these are too narrow to write in on upright paper. */
const mostColumns = 6;

/** A form with the same items as a walk of this depth, empty cells to write in, and the cautions. */
export function formOf(of: FormInput): Report {
  const { machine } = of.input;
  const title = words.title(machine.name);
  const { tensioner } = machine.shape;
  const cautions: readonly Caution[] = ['ground', 'raised', 'track-turning', tensioner, 'track-down'];
  const blocks: readonly Block[] = [
    heading(1, title),
    text(words.line),
    ...cautionBlocks(cautions),
    heading(2, report.machine),
    ...machineFacts(of),
    heading(2, report.walk),
    blank(report.walk, [
      words.date,
      report.meter,
      report.inspector,
      report.customer,
      report.site,
      report.clean,
    ]),
    ...components.flatMap((component) => componentBlocks(component, of)),
    blank(words.remarks, ['1', '2', '3']),
    blankSignature(roleWords.inspector),
  ];
  return page(title, blocks);
}

const blank = (caption: string, names: readonly string[]): Block => ({
  kind: 'table',
  caption,
  head: [words.field, words.value],
  figures: [],
  blank: true,
  rows: names.map((name) => [name, '']),
});

function componentBlocks(component: Component, of: FormInput): readonly Block[] {
  const { machine, walk } = of.input;
  const items = itemsOf(component, machine.shape).filter((item) => isNeeded(item, walk));
  if (items.length === 0) return [];
  const sides: readonly PlaceSide[] = component === 'machine' ? ['whole'] : ['left', 'right'];
  const parts = partsASide(component, machine.shape);
  const name = componentNames[component][parts === 1 ? 'one' : 'many'];
  const title = component === 'machine' ? words.whole : capital(name);
  return [heading(2, title), ...sides.flatMap((side) => sideTables(side, name, items, parts, of))];
}

function sideTables(
  side: PlaceSide,
  name: string,
  items: readonly Item[],
  parts: number,
  of: FormInput,
): readonly Block[] {
  const [first] = items;
  const numbers = first ? numbersOf(first.component, parts).flatMap((number) => number ?? []) : [];
  const caption = side === 'whole' ? words.whole : words.partsOf(capital(sideNames[side]), name);
  const tells = items.map((item) => [capital(of.format.item(item.id)), tellText(item, side, of)]);
  const table = (said: string, columns: readonly string[]): Block => ({
    kind: 'table',
    caption: said,
    head: [words.item, words.tell, ...columns],
    figures: [],
    blank: true,
    rows: tells.map((cells) => [...cells, ...columns.map(() => '')]),
  });
  if (numbers.length <= 1) return [table(caption, [words.read])];
  const runs = Array.from({ length: Math.ceil(numbers.length / mostColumns) }, (_, at) =>
    numbers.slice(at * mostColumns, (at + 1) * mostColumns),
  );
  return runs.map((run) =>
    table(
      runs.length === 1 ? caption : words.numbers(caption, run[0] ?? 0, run.at(-1) ?? 0),
      run.map(String),
    ),
  );
}

/** What is to be read of an item, in the unit of the person, with new and limit where they are known. */
function tellText(item: Item, side: PlaceSide, of: FormInput): string {
  const asked = askText(item, of);
  const limit = limitText(item, side, of);
  return limit === undefined ? asked : `${asked} (${limit})`;
}

function askText(item: Item, { input, units }: FormInput): string {
  const { ask } = item;
  const unit = unitShort[isTaped(item.id) ? units.length : units.depth];
  switch (ask.kind) {
    case 'finding': {
      const choices = words.choose(ask.findings.map((finding) => findingLabel(item.id, finding)));
      return ask.counted ? words.perPart(choices) : choices;
    }
    case 'length':
      return `${words.inUnit(unit)}; ${words.spots(samplesNeeded(item, input.walk))}`;
    case 'crack':
    case 'sag':
    case 'pitch':
    case 'tread':
    case 'pair':
      return words[ask.kind](unit);
    default:
      return unreachable(ask);
  }
}

function limitText(item: Item, side: PlaceSide, { input, format }: FormInput): string | undefined {
  const sheet = side === 'right' ? input.sheets.right : input.sheets.left;
  const limits = sheet && limitsFor(sheet, item.id);
  const chosen = limits && chooseLimit(limits, 'hundred', input.walk.load);
  if (!limits?.new || !chosen) return undefined;
  const at = (value: number): string =>
    format.inUnit(toMm(value, limits.unit), limits.unit, limits.resolution);
  return pad.newAndLimit(at(limits.new.at), at(chosen.at));
}
