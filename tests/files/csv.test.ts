import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import { demoFile } from '../../src/cli/demo.ts';
import { isPlanned } from '../../src/core/outlook.ts';
import { csvOf, csvStyleOf, guarded, type Cell, type CsvStyle } from '../../src/files/csv-cells.ts';
import { itemsCsv, type CsvReader } from '../../src/files/csv.ts';
import { planCsv } from '../../src/files/csv-plan.ts';
import { readingsCsv } from '../../src/files/csv-readings.ts';
import { csvHeads as heads, csvWords } from '../../src/words/en/csv.ts';
import { reasonSentence } from '../../src/words/en/reasons.ts';
import { makeFormatter } from '../../src/words/formatter.ts';
import { fileOf, machine, machineKey } from './samples.ts';
import { walksOf } from './scored-walks.ts';

const styles: readonly CsvStyle[] = ['comma-point', 'semicolon-comma'];
const format = makeFormatter({ locale: 'en', depth: 'mm', length: 'mm', mass: 'kg' });
const readerOf = (style: CsvStyle): CsvReader => ({
  style,
  format,
  reasonText: (reason) => reasonSentence(reason, format),
});

const marks = { 'comma-point': [',', '.'], 'semicolon-comma': [';', ','] } as const;

/** As a general reader of CSV takes the file: by its delimiter, in UTF-8, without the byte order mark. */
function cellsOf(csv: string, delimiter: string): string[][] {
  const bytes = new TextEncoder().encode(csv);
  const { data, errors } = Papa.parse<string[]>(new TextDecoder().decode(bytes), { delimiter });
  expect(errors).toEqual([]);
  // After the last line end nothing follows.
  expect(data.at(-1)).toEqual(['']);
  return data.slice(0, -1);
}

const numberOf = (cell: string, decimal: string): number => Number(cell.replace(decimal, '.'));

function rowsOf(csv: string, style: CsvStyle): ReadonlyMap<string, string>[] {
  const [head = [], ...rows] = cellsOf(csv, marks[style][0]);
  return rows.map((row) => new Map(row.map((cell, at) => [head[at] ?? '', cell])));
}

const triggers = /^(?:\s|\p{Cc}|[\u200b-\u200f\u2060])*(?:[=+\-@\uff1d\uff0b\uff0d\uff20]|[\t\r\0])/u;
const nasty = fc.array(
  fc.constantFrom(...'=+-@\t\r\n\0＝＋－＠ ;,"\'|a5ä語'.split(''), '\u200b', '\u00a0', '\u3000', 'DDE', '😀'),
  { maxLength: 8 },
);
const cellLaw = fc.oneof(
  nasty.map((parts) => parts.join('')),
  fc.string({ unit: 'grapheme', maxLength: 12 }),
  fc.double({ min: -1e6, max: 1e6, noNaN: true }),
  fc.double({ noNaN: true, noDefaultInfinity: true }),
  fc.constant(undefined),
);

const table = (cells: readonly Cell[], style: CsvStyle): string =>
  csvOf(
    [
      { head: 'A', cell: () => 'first' },
      { head: 'B', cell: (cell: Cell) => cell },
    ],
    cells,
    style,
  );

describe('cells of CSV', () => {
  test.each(styles)('[HO11] %s: a cell is the number it was, or a text that starts no formula', (style) => {
    const [delimiter, decimal] = marks[style];
    fc.assert(
      fc.property(fc.array(cellLaw, { maxLength: 6 }), (cells) => {
        const rows = cellsOf(table(cells, style), delimiter).slice(1);
        expect(rows.length).toBe(cells.length);
        for (const [at, [, read = '']] of rows.entries()) {
          const cell = cells[at];
          if (cell === undefined) expect(read).toBe('');
          else if (typeof cell === 'number') {
            const off = Math.abs(numberOf(read, decimal) - cell);
            expect(off, `${cell} as ${read}`).toBeLessThanOrEqual(Math.max(5.1e-7, Math.abs(cell) * 1e-15));
          } else expect(read).not.toMatch(triggers);
        }
      }),
      { numRuns: 1000 },
    );
  });

  test.each(styles)('[HO11] %s: opened by the other pair no cell starts a formula either', (style) => {
    const other = style === 'comma-point' ? ';' : ',';
    fc.assert(
      fc.property(nasty, (parts) => {
        const csv = table([parts.join('')], style);
        // The crudest reading there is: no quotes, a cell at each mark and line end.
        for (const cell of csv.split(/\r\n|\r|\n/).flatMap((line) => line.split(other)))
          expect(cell).not.toMatch(triggers);
      }),
      { numRuns: 1000 },
    );
  });

  test.each([
    ['plain text', 'plain text'],
    ['-5 mm', "'-5 mm"],
    ['  =1+1', "'  =1+1"],
    ['＝1+1', "'＝1+1"],
    ['@SUM(A1)', "'@SUM(A1)"],
    ['\tx', "'\tx"],
    ['a, -5', 'a, -5'],
    ['a;=1', "a;'=1"],
    ['a\n=1', "a\n'=1"],
    ['5 - 3', '5 - 3'],
  ])('[HO11] %j is written as %j', (text, written) => {
    expect(guarded(text, 'comma-point')).toBe(written);
  });

  test.each([
    [-5, '-5', '-5'],
    [-0, '0', '0'],
    [12.5, '12.5', '12,5'],
    [1e-9, '0', '0'],
    [100, '100', '100'],
    [0.1 + 0.2, '0.3', '0,3'],
    [1_234_567.5, '1234567.5', '1234567,5'],
    [Infinity, '', ''],
    [NaN, '', ''],
  ])('[HO11] the number %d is written %s or %s', (value, point, comma) => {
    expect(cellsOf(table([value], 'comma-point'), ',')[1]?.[1]).toBe(point);
    expect(cellsOf(table([value], 'semicolon-comma'), ';')[1]?.[1]).toBe(comma);
  });

  test('[HO11] a file has its byte order mark and CRLF, and quotes what RFC 4180 wants quoted', () => {
    expect(table(['say "no", twice', undefined], 'comma-point')).toBe(
      '\ufeffA,B\r\nfirst,"say ""no"", twice"\r\nfirst,\r\n',
    );
  });

  test.each([
    ['en', 'comma-point'],
    ['de', 'semicolon-comma'],
    ['fr-CA', 'semicolon-comma'],
    ['ar-EG', 'comma-point'],
    ['no locale at all', 'comma-point'],
  ] as const)('[HO12] the pair of %s is %s', (locale, style) => {
    expect(csvStyleOf(locale)).toBe(style);
  });
});

describe('walks as tables', () => {
  test.each(styles)(
    '[HO13] %s: every item of the demo has a row, and its values are read back',
    async (style) => {
      const decimal = marks[style][1];
      const walks = walksOf(await demoFile());
      const csv = itemsCsv(
        walks.map(({ key, walk, machine: of, scored, outlook }) => ({
          key,
          walk,
          machine: of,
          outcomes: scored.outcomes,
          ...(outlook && { parts: outlook.hours.parts }),
        })),
        readerOf(style),
      );
      const rows = rowsOf(csv, style);
      const outcomes = walks.flatMap((each) => each.scored.outcomes.map((outcome) => ({ each, outcome })));
      expect(rows.length).toBe(outcomes.length);
      let hours = 0;
      for (const [at, { each, outcome }] of outcomes.entries()) {
        const row = rows[at];
        const number = (head: string): number | undefined => {
          const cell = row?.get(head) ?? '';
          return cell === '' ? undefined : numberOf(cell, decimal);
        };
        const { state } = outcome;
        const near = (head: string, value: number | undefined): void => {
          if (value === undefined || !Number.isFinite(value)) expect(row?.get(head), head).toBe('');
          else expect(number(head), head).toBeCloseTo(value, 5);
        };
        expect(row?.get(heads.machine)).toBe(each.machine.name);
        expect(row?.get(heads.item)).toBe(format.item(state.item.id));
        near(heads.size, state.sampled?.worst.mm);
        near(heads.limit, state.wear?.limitMm);
        near(heads.worn, state.wear?.percent);
        near(heads.wornWithin, state.wear?.expanded);
        near(heads.sag, state.sag?.valueMm);
        near(heads.count, state.count);
        near(heads.meter, each.walk.meterHours);
        const part = each.outlook?.hours.parts.find(
          ({ history }) => history.place === state.place && history.item.id === state.item.id,
        );
        near(heads.leftLow, part?.left?.low);
        near(heads.leftHigh, part?.left?.high);
        if (part?.left && Number.isFinite(part.left.low)) hours += 1;
      }
      expect(hours).toBeGreaterThan(0);
    },
  );

  const seenAt = { utc: '2026-03-01T23:30:00.000Z', offsetMinutes: 60 };
  const small = fileOf([
    { key: machineKey, value: { ...machine, name: '=Digger', pin: '-1234' } },
    {
      key: 'walk/w1',
      value: {
        v: 1,
        machine: machineKey,
        purpose: 'appraisal',
        depth: 'full',
        start: 'walk',
        corner: 'rear-left',
        startedAt: seenAt,
        meterHours: 1234.5,
      },
    },
    {
      key: 'reading/w1/left.track/lug-depth/1',
      value: {
        v: 1,
        what: { kind: 'length', mm: -5.5, typed: '-5.5', unit: 'mm' },
        at: { ...seenAt, offsetMinutes: -210 },
        tool: 'caliper',
        note: '+CMD|calc',
      },
    },
    { key: 'reading/w1/right.track/lug-depth/1', value: { v: 1, what: { kind: 'unseen', why: 'mud' } } },
    {
      key: 'reading/w1/left.track/crack/1',
      value: { v: 1, what: { kind: 'crack', lengthMm: 35, depthMm: 9, cordVisible: true } },
    },
  ]);

  test('[HO13] a walk that began in another day in Greenwich has its own day, and its moment the offset', () => {
    const [row] = rowsOf(
      itemsCsv(
        walksOf(small).map((each) => ({ ...each, outcomes: each.scored.outcomes })),
        readerOf('comma-point'),
      ),
      'comma-point',
    );
    expect(row?.get(heads.started)).toBe('2026-03-02T00:30+01:00');
    expect(row?.get(heads.day)).toBe('2026-03-02');
    expect(row?.get(heads.meter)).toBe('1234.5');
    expect(row?.get(heads.machine)).toBe("'=Digger");
    expect(row?.get(heads.pin)).toBe("'-1234");
  });

  test('[HO13] readings stand as they were made, with what was typed as text', () => {
    const rows = rowsOf(readingsCsv(walksOf(small), readerOf('semicolon-comma')), 'semicolon-comma');
    const row = (item: string, side: string) =>
      rows.find((each) => each.get(heads.item) === item && each.get(heads.place)?.startsWith(side));
    const lug = row('lug depth', 'left');
    expect(lug?.get(heads.sizeRead)).toBe('-5,5');
    expect(lug?.get(heads.typed)).toBe("'-5.5");
    expect(lug?.get(heads.readAt)).toBe('2026-03-01T20:00-03:30');
    expect(lug?.get(heads.note)).toBe("'+CMD|calc");
    expect(lug?.get(heads.tool)).toBe('caliper');
    expect(row('lug depth', 'right')?.get(heads.notSeen)).toBe('under mud');
    expect(row(format.item('crack'), 'left')?.get(heads.crackLengthRead)).toBe('35');
    expect(row(format.item('crack'), 'left')?.get(heads.cord)).toBe('yes');
  });

  test.each([itemsCsv, readingsCsv])('[HO13] no two headings of a table are the same', (make) => {
    const [head = []] = cellsOf(make([], readerOf('comma-point')), ',');
    expect(head.length).toBeGreaterThan(15);
    expect(new Set(head).size).toBe(head.length);
  });
});

describe('the job plan as a table', () => {
  test.each(styles)(
    '[HO20] %s: every job has a row with its visit, and its money is read back',
    async (style) => {
      const [, decimal] = marks[style];
      let rowsSeen = 0;
      for (const { outlook, ...each } of walksOf(await demoFile())) {
        if (!outlook || !isPlanned(outlook.plan)) continue;
        const { plan } = outlook;
        const rows = rowsOf(planCsv({ ...each, plan, outlook }, readerOf(style)), style);
        const jobs = plan.visits.flatMap((visit) => visit.jobs.map((job) => ({ job, visit })));
        const all = [...jobs, ...plan.later.map((job) => ({ job, visit: undefined }))];
        expect(rows.length).toBe(all.length);
        rowsSeen += rows.length;
        for (const [at, { job, visit }] of all.entries()) {
          const row = rows[at];
          const number = (head: string) => numberOf(row?.get(head) ?? '', decimal);
          expect(number(csvWords.parts(plan.currency))).toBeCloseTo(job.cost.partsMinor / 100, 6);
          expect(number(csvWords.downtime(plan.currency))).toBeCloseTo(job.cost.downtimeMinor / 100, 6);
          expect(number(heads.count)).toBe(job.job.count);
          if (!visit) expect(row?.get(heads.visitDay)).toBe('');
          else {
            expect(number(heads.visitIn)).toBeCloseTo(visit.inHours, 5);
            expect(number(heads.visitMeter)).toBeCloseTo(visit.hours - outlook.meterOffset, 5);
            expect(row?.get(heads.visitDay)).toMatch(/^\d{4}-\d\d-\d\d$/);
          }
        }
      }
      expect(rowsSeen).toBeGreaterThan(0);
    },
  );
});
