import { rmSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import type { RentalFile } from '../../src/cli/rental.ts';
import { charge as words } from '../../src/words/en/charge.ts';
import { contractOf, tenthSheet } from '../core/rental-made.ts';
import { machineOf, walkOf } from '../core/made.ts';
import { bundleCommand, bundlePath, sagline } from './command.ts';

// Every case starts a process or two, on a machine that may have other things to do.
vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

beforeAll(() => bundleCommand());
afterAll(() => rmSync(bundlePath));

type Row = readonly [key: string, value: object];

const machine: Row = ['machine/m1', { ...machineOf('rubber-cored'), sheet: 'limits/tenth' }];
const sheet: Row = ['limits/tenth', tenthSheet];
const contract: Row = ['contract/c1', contractOf({ machine: 'machine/m1', replyDays: 14, keptDays: 30 })];

const at = (utc: string) => ({ utc, offsetMinutes: 0 });

const walk = (id: string, purpose: 'hand-out' | 'rental-return', utc: string, more: object = {}): Row => [
  `walk/${id}`,
  {
    ...walkOf({ machine: 'machine/m1', purpose, depth: 'short', startedAt: at(utc), finishedAt: at(utc) }),
    ...more,
  },
];

/** Two lugs of the left track, percent worn, read without error. */
const lugs = (id: string, percent: number): readonly Row[] =>
  [1, 2].map((n) => [
    `reading/${id}/left.track/lug-depth/${n}`,
    {
      v: 1,
      what: { kind: 'length', mm: 20 - percent / 10, typed: '', unit: 'mm' },
      spot: n,
      uMm: 0,
    },
  ]);

const out: readonly Row[] = [walk('out', 'hand-out', '2026-03-01T08:00:00Z'), ...lugs('out', 20)];
const back: readonly Row[] = [
  walk('back', 'rental-return', '2026-03-09T08:00:00Z', { contract: 'contract/c1' }),
  ...lugs('back', 35),
];

const fileOf = (rows: readonly Row[]): string =>
  JSON.stringify({
    format: 'sagline-walk',
    version: 1,
    records: rows.map(([key, value]) => ({ key, value })),
    seals: [],
  });

const common: readonly Row[] = [machine, sheet, contract];

async function listOf(rows: readonly Row[]): Promise<RentalFile['returns'][number]> {
  const { code, out: text, err } = await sagline(['rental', '-'], fileOf(rows));
  expect({ code, err }).toEqual({ code: 0, err: '' });
  const file = JSON.parse(text) as RentalFile;
  expect(file).toMatchObject({ format: 'sagline-rental', version: 1 });
  const [first] = file.returns;
  if (!first) throw new Error('no return');
  return first;
}

describe('sagline rental', () => {
  test('[RC60] pairs hand-out and return, and prints each line with readings, error, excess and amount', async () => {
    const list = await listOf([...common, ...out, ...back]);
    expect(list).toMatchObject({
      machine: { key: 'machine/m1', name: 'made up', pin: null },
      handOut: { walk: 'walk/out' },
      returned: { walk: 'walk/back' },
      hours: { basis: 'billed', count: 180 },
      currency: 'EUR',
      netMinor: 54_000,
      taxMinor: 0,
      grossMinor: 54_000,
      notes: [],
      replyBy: '2026-03-23',
      keptUntil: '2026-04-08',
    });
    expect(list.lines).toMatchObject([
      {
        id: 'wear.renew-track.left',
        standing: 'charged',
        used: { usedPercent: 15, plusMinus: 0, handOutPercent: 20, returnedPercent: 35 },
        excess: { allowedPercent: 6, excessPercent: 9 },
        priceMinor: 600_000,
        partMinor: 54_000,
      },
    ]);
  });

  test('[RC61] without a hand-out walk nothing is charged, and it says what that means', async () => {
    const list = await listOf([...common, ...back]);
    expect(list).toMatchObject({ handOut: null, grossMinor: 0, notes: [words.noHandOutInFile] });
    expect(list.lines).toMatchObject([{ standing: 'open', why: 'no-hand-out' }]);
  });

  test('[RC69] a return that names none of the hand-outs has none', async () => {
    const none = walk('back', 'rental-return', '2026-03-09T08:00:00Z', { handOut: '' });
    const list = await listOf([...common, ...out, none, ...lugs('back', 35)]);
    expect(list).toMatchObject({ handOut: null, grossMinor: 0 });
  });

  test('[RC62] of several hand-outs the named one counts, else the last before the return', async () => {
    const early = [walk('a-out', 'hand-out', '2026-01-01T08:00:00Z'), ...lugs('a-out', 5)];
    const late = [walk('z-out', 'hand-out', '2026-05-01T08:00:00Z'), ...lugs('z-out', 1)];
    const other = [
      walk('other', 'hand-out', '2026-03-08T08:00:00Z', { machine: 'machine/m2' }),
      ['machine/m2', machine[1]] as const,
    ];
    const rows = [...common, ...early, ...out, ...late, ...other];
    const named = walk('back', 'rental-return', '2026-03-09T08:00:00Z', { handOut: 'walk/a-out' });
    const [by, last] = [
      await listOf([...rows, named, ...lugs('back', 35)]),
      await listOf([...rows, ...back]),
    ];
    expect([by.handOut?.walk, last.handOut?.walk]).toEqual(['walk/a-out', 'walk/out']);
  });

  test('[HR4] a hand-out that another return has, or that was not finished, is not the last', async () => {
    const earlier = [
      walk('a-out', 'hand-out', '2026-01-01T08:00:00Z'),
      walk('a-back', 'rental-return', '2026-01-20T08:00:00Z', { handOut: 'walk/a-out' }),
    ];
    const begun = walk('begun', 'hand-out', '2026-03-02T08:00:00Z', { finishedAt: undefined });
    const rows = [...common, ...earlier, begun, ...back];
    const { out: text } = await sagline(['rental', '-'], fileOf(rows));
    const { returns } = JSON.parse(text) as RentalFile;
    const handOuts = returns.map(({ returned, handOut }) => [returned.walk, handOut?.walk]);
    expect(handOuts).toEqual([
      ['walk/a-back', 'walk/a-out'],
      ['walk/back', undefined],
    ]);
  });

  test('[RC63] of several contracts the named one counts, else the last that had begun', async () => {
    const dated = (id: string, from: string, hoursCount: number): Row => [
      `contract/${id}`,
      contractOf({ machine: 'machine/m1', from, hoursCount }),
    ];
    const unnamed = [walk('back', 'rental-return', '2026-03-09T08:00:00Z'), ...lugs('back', 35)];
    const contracts = [
      dated('a', '2026-03-01', 120),
      dated('b', '2026-01-01', 60),
      dated('c', '2026-04-01', 30),
    ];
    const list = await listOf([machine, sheet, ...contracts, ...out, ...unnamed]);
    expect(list.hours.count).toBe(120);
  });

  test.each<[string, readonly Row[], string]>([
    ['no return', [...common, ...out], 'no rental return'],
    [
      'no contract',
      [machine, sheet, ...out, walk('back', 'rental-return', '2026-03-09T08:00:00Z')],
      'no contract for the return “walk/back” of the machine “machine/m1”',
    ],
    ['a contract that is not there', [machine, sheet, ...out, ...back], '“contract/c1”'],
    [
      'a contract of another machine',
      [machine, sheet, ['contract/c1', contractOf({ machine: 'machine/m2' })], ...out, ...back],
      '“contract/c1”, which is not in the file or is of another machine',
    ],
    [
      'a hand-out that is not there',
      [...common, walk('back', 'rental-return', '2026-03-09T08:00:00Z', { handOut: 'walk/gone' })],
      '“walk/gone”, which is not in the file',
    ],
    [
      'a machine that is not there',
      [sheet, contract, ...out, ...back],
      '“machine/m1”, which is not in the file',
    ],
  ])('[RC64] %s is said in one sentence, with exit code 2', async (_, rows, part) => {
    const { code, out: text, err } = await sagline(['rental', '-'], fileOf(rows));
    expect({ code, text }).toEqual({ code: 2, text: '' });
    expect(err).toMatch(/^sagline: [^\n]+\.\n$/);
    expect(err).toContain(part);
  });

  test('[RC65] help names it', async () => {
    expect((await sagline(['--help'])).out).toContain('sagline rental FILE');
  });
});
