import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import { demoFile } from '../../src/cli/demo.ts';
import type { Machine } from '../../src/core/machine.ts';
import { partsToOrder, type PartsToOrder } from '../../src/core/parts-to-order.ts';
import { assert } from '../../src/core/result.ts';
import type { CsvStyle } from '../../src/files/csv-cells.ts';
import { orderCsv, type OrderedWalkOf } from '../../src/files/order-csv.ts';
import { csvHeads } from '../../src/words/en/csv.ts';
import { factWords, orderHeads as heads, partNames } from '../../src/words/en/ordering.ts';
import { makeFormatter } from '../../src/words/formatter.ts';
import { walksOf } from './scored-walks.ts';

const format = makeFormatter({ locale: 'en', depth: 'mm', length: 'mm', mass: 'kg' });

/** The last walk of each demo machine with its parts, its machine changed as a test wants it. */
async function demoOrders(more: Partial<Machine> = {}): Promise<readonly OrderedWalkOf[]> {
  return walksOf(await demoFile()).flatMap(({ key, walk, machine: of, scored, outlook }) => {
    if (!outlook) return [];
    const machine = { ...of, ...more };
    const { outcomes } = scored;
    const input = { machine, outcomes, sheets: {}, work: [], tools: { tape: 0.5 }, plan: outlook.plan };
    return [{ key, walk, machine, outlook, order: partsToOrder({ ...input, walk: key }) }];
  });
}

/** As a general reader of CSV takes the file. */
function rowsOf(of: OrderedWalkOf, style: CsvStyle): readonly Record<string, string>[] {
  const csv = orderCsv(of, { style, format, reasonText: () => '' });
  expect(csv.startsWith('\ufeff')).toBe(true);
  const delimiter = style === 'comma-point' ? ',' : ';';
  const { data, errors, meta } = Papa.parse<Record<string, string>>(csv.slice(1), {
    header: true,
    delimiter,
    newline: '\r\n',
    skipEmptyLines: true,
  });
  expect(errors).toEqual([]);
  expect(new Set(meta.fields).size).toBe(meta.fields?.length);
  return data;
}

const linesOf = ({ groups }: PartsToOrder) =>
  groups.flatMap(({ when, lines }) => lines.map((line) => ({ when, line })));

const marks = { 'comma-point': '.', 'semicolon-comma': ',' } as const;

describe('the parts to order as a table', () => {
  test.each(['comma-point', 'semicolon-comma'] as const)(
    '[PO20] %s: every fact of every part has a row, and its values are read back',
    async (style) => {
      const number = (cell: string | undefined): number | undefined =>
        cell === undefined || cell === '' ? undefined : Number(cell.replace(marks[style], '.'));
      const fitted: Machine['fitted'] = (['left', 'right'] as const).map((side) => ({
        side,
        component: 'track',
        facts: {
          pitch: { value: 154.25, how: 'measured', typed: '617', unit: 'mm', spaces: 4 },
          links: { value: 44, again: 45, how: 'measured' },
        },
      }));
      const orders = await demoOrders({ fitted });
      expect(orders.length).toBeGreaterThan(1);
      for (const of of orders) {
        const rows = rowsOf(of, style);
        const facts = linesOf(of.order).flatMap(({ when, line }) =>
          line.facts.map((fact) => ({ when, line, fact })),
        );
        expect(rows.length).toBe(facts.length);
        for (const [at, { when, line, fact }] of facts.entries()) {
          const row = rows[at];
          assert(row, 'a row');
          expect(row[heads.part]).toBe(partNames[line.kind]);
          expect(number(row[heads.count])).toBe(line.count);
          expect(row[heads.fact]).toBe(factWords[fact.name].name);
          expect(number(row[heads.again])).toBe(fact.again);
          if (when.kind === 'visit') expect(number(row[heads.inHours])).toBeCloseTo(when.inHours, 5);
          expect(row[heads.day]).toMatch(/^(?:\d{4}-\d{2}-\d{2})?$/);
          if (fact.name === 'pitch') {
            expect(number(row[heads.valueMm])).toBe(154.25);
            expect(number(row[heads.within])).toBeCloseTo(2 * (fact.uMm ?? NaN), 5);
          }
          if (fact.name === 'links') expect(number(row[heads.value])).toBe(fact.value);
        }
      }
    },
  );

  test('[PO21] what a person typed starts no formula and breaks no row', async () => {
    const nasty = '=HYPERLINK("x");+1,\r\n-2';
    const [first] = await demoOrders();
    assert(first, 'an order');
    const [line] = linesOf(first.order);
    assert(line, 'a line');
    const ordered = [{ line: line.line.id, partNumber: nasty, match: true }];
    const [of] = await demoOrders({ ordered, pin: nasty });
    assert(of, 'an order');
    const [row] = rowsOf(of, 'comma-point');
    assert(row, 'a row');
    for (const head of [heads.partNumber, csvHeads.pin]) {
      expect(row[head]).toContain('HYPERLINK("x")');
      expect(row[head]?.split(/[\r\n;,]+/).join('|')).not.toMatch(/(?:^|\|)[=+-]/);
    }
    expect(row[heads.match]).toBe('yes');
  });

  test('[PO22] what is left out has no row', async () => {
    const [first] = await demoOrders();
    assert(first, 'an order');
    const out = linesOf(first.order).map(({ line }) => ({ line: line.id, walk: first.key, out: true }));
    const [of] = await demoOrders({ ordered: out });
    assert(of, 'an order');
    expect(rowsOf(of, 'comma-point')).toEqual([]);
  });
});
