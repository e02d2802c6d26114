import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { appraise, type Appraisal } from '../../src/core/appraisal.ts';
import { worthTogether } from '../../src/core/appraisal-interval.ts';
import { leftOf } from '../../src/core/appraisal-parts.ts';
import { settingsOf, type AppraisalSettings } from '../../src/core/appraisal-settings.ts';
import { valueLeft } from '../../src/core/appraisal-value.ts';
import { workTo, type Found } from '../../src/core/appraisal-work.ts';
import { assemble } from '../../src/core/assemble.ts';
import type { Costs } from '../../src/core/costs.ts';
import { idSchema, isKind, makeKey, type RecordKey } from '../../src/core/keys.ts';
import { assert } from '../../src/core/result.ts';
import { score } from '../../src/core/score.ts';
import { builtIn } from '../../src/reference/built-in.ts';
import { randomOf } from '../checks/random.ts';
import { change, demoMap, mini, outlookAt, shelfWith, steel, type Records } from './ahead-made.ts';
import { chosen, costsOf, foundOf } from './appraisal-made.ts';
import { lawOfWalks } from './law.ts';
import { entryOf, finding, machineOf, mm, read, sheetOf } from './made.ts';

// Laws here score whole machines, twice each.
vi.setConfig({ testTimeout: 30_000 });

/** A record of work on the demo machine of that name. */
const workKey = (id: string): RecordKey =>
  makeKey({ kind: 'work', machine: idSchema.parse('mini'), id: idSchema.parse(id), demo: true });

const rubberSheet = sheetOf([entryOf('lug-depth', 25, 5)]);
const chainSheet = sheetOf([
  entryOf('link-height', 100, 80),
  entryOf('pitch', 170, 180),
  entryOf('bushing-od', 60, 50),
  entryOf('grouser', 50, 10),
  entryOf('roller-tread', 200, 160),
]);
const rules = Object.values(builtIn.rules)[0];

const rubberCosts = costsOf({
  'renew-track': [100_000, 2],
  'renew-sprocket': [20_000, 1],
  'mend-other': [5000, 1],
});
const chainCosts = costsOf({
  'renew-chain': [280_000, 3],
  'turn-bushings': [40_000, 12],
  'change-link': [18_000, 4],
  'renew-shoes': [200_000, 6],
  'renew-bottom-roller': [20_000, 0.75],
});

/** Both lugs at these percents left. */
const lugs = (left: number, right: number) => [
  read('left.track', 'lug-depth', mm(5 + left / 5)),
  read('left.track', 'lug-depth', mm(5 + left / 5), { n: 2 }),
  read('left.track', 'lug-depth', mm(5 + left / 5), { n: 3 }),
  read('right.track', 'lug-depth', mm(5 + right / 5)),
  read('right.track', 'lug-depth', mm(5 + right / 5), { n: 2 }),
  read('right.track', 'lug-depth', mm(5 + right / 5), { n: 3 }),
];

const rubber = (left: number, right: number, costs: Costs = rubberCosts): Found =>
  foundOf({ sheet: rubberSheet, readings: lugs(left, right) }, costs);

interface Chain {
  readonly link: number;
  readonly pitch: number;
  readonly bushing: number;
  readonly grouser: number;
}

/** One side of a chain machine at these percents left. */
const chainSide = (side: 'left' | 'right', { link, pitch, bushing, grouser }: Chain) => {
  const total = 4 * (180 - pitch / 10);
  return [
    read(`${side}.track`, 'link-height', mm(80 + link / 5)),
    read(`${side}.track`, 'link-height', mm(80 + link / 5), { n: 2 }),
    read(`${side}.track`, 'pitch', {
      kind: 'pitch',
      totalMm: total,
      typed: String(total),
      unit: 'mm',
      links: 4,
    }),
    read(`${side}.track`, 'bushing-od', mm(50 + bushing / 10)),
    read(`${side}.track`, 'bushing-od', mm(50 + bushing / 10), { n: 2 }),
    read(`${side}.track`, 'grouser', mm(10 + (grouser * 2) / 5)),
  ];
};

const chain = (left: Chain, right: Chain, more: ReturnType<typeof read>[] = [], costs = chainCosts): Found =>
  foundOf(
    {
      machine: machineOf('steel'),
      sheet: chainSheet,
      rules,
      readings: [...chainSide('left', left), ...chainSide('right', right), ...more],
    },
    costs,
  );

const good: Chain = { link: 80, pitch: 80, bushing: 80, grouser: 80 };

const shortOf =
  (percent: number) =>
  (outcome: Found['outcomes'][number]): boolean =>
    (leftOf(outcome) ?? Infinity) < percent;

const deducted = (found: Found, settings: AppraisalSettings = chosen()) =>
  workTo(found, settings, shortOf(settings.saleable));

const valued = (found: Found, settings: AppraisalSettings = chosen()) =>
  valueLeft(found, settings, deducted(found, settings));

const jobs = (found: Found, settings?: AppraisalSettings) =>
  deducted(found, settings).lines.map(({ job, minor }) => [job.id, job.count, minor]);

/** A demo machine appraised, its records changed by a test. */
function demo(
  walk: RecordKey,
  settings: Partial<AppraisalSettings> = {},
  records: Records = demoMap(),
): Appraisal {
  const made = assemble(shelfWith(records), builtIn, walk);
  assert(made.ok, 'a walk');
  return appraise({
    shape: made.value.input.machine.shape,
    scored: score(made.value.input),
    outlook: outlookAt(records, walk),
    settings: chosen(settings),
  });
}

describe('[N10] what is deducted', () => {
  test('[AP1] a part with less left than can be sold is deducted as new and fitted, set-up once, and worth nothing', () => {
    const found = rubber(20, 60);
    const { lines, setUpMinor, minor, isWhole } = deducted(found);
    expect(lines.map(({ job, minor: sum }) => [job.id, sum])).toEqual([['left.renew-track', 112_000]]);
    expect([setUpMinor, minor, isWhole]).toEqual([17_000, 129_000, true]);
    expect(valued(found).lines.map(({ side, minor: { middle } }) => [side, middle])).toEqual([
      ['right', 67_200],
    ]);
    // Both sides need one call-out.
    expect(deducted(rubber(20, 20)).setUpMinor).toBe(10_000 + 2 * 7000);
  });

  test('[AP2] the line where a part can be sold is the person’s: at it a part counts, below it does not', () => {
    expect(jobs(rubber(25, 60))).toEqual([]);
    expect(jobs(rubber(25, 60), chosen({ saleable: 26 }))).toHaveLength(1);
    expect(jobs(rubber(0, 60), chosen({ saleable: 0 }))).toEqual([]);
    expect(valued(rubber(25, 60)).lines.map(({ isClose }) => isClose)).toEqual([true, false]);
  });

  test('[AP3] one worn part drags its row, unless each is chosen to count by itself', () => {
    const tread = (n: number, left: number) =>
      read(`left.bottom-roller.${n}`, 'roller-tread', {
        kind: 'tread',
        centreMm: 192 + left / 5,
        linkMm: 112,
        typed: [String(192 + left / 5), '112'],
        unit: 'mm',
      });
    const found = chain(good, good, [tread(1, 10), tread(2, 70), tread(3, 90)]);
    assert(
      found.outcomes.some(({ state }) => state.item.id === 'roller-tread' && state.wear),
      'rollers are measured',
    );
    expect(jobs(found)).toEqual([['left.renew-bottom-roller', 3, 73_500]]);
    expect(jobs(found, chosen({ sets: 'each' }))).toEqual([['left.renew-bottom-roller', 1, 24_500]]);
    // What goes with its row is neither worth anything nor open.
    const ofRow = ({ kind, side }: { kind: string; side: string }) =>
      kind === 'renew-bottom-roller' && side === 'left';
    expect([valued(found).lines.filter(ofRow), valued(found).open.filter(ofRow)]).toEqual([[], []]);
    const rollers = (sets: 'worst' | 'each', at: readonly number[]) =>
      valued(
        chain(
          good,
          good,
          at.map((left, n) => tread(n + 1, left)),
        ),
        chosen({ sets }),
      ).lines.find(({ kind }) => kind === 'renew-bottom-roller');
    expect(rollers('worst', [50, 70, 90])).toMatchObject({ count: 3, isDragged: true });
    expect(rollers('worst', [50, 70, 90])?.minor.middle).toBe(36_750);
    expect(rollers('each', [50, 70, 90])?.minor.middle).toBe(Math.round(24_500 * 2.1));
  });

  test('[AP4] pins and bushings that can be turned are turned; links worn with them take the chain', () => {
    const turned = (finds: string) =>
      (['left', 'right'] as const).map((side) => read(`${side}.track`, 'bushing-turned', finding(finds)));
    const worn = { ...good, pitch: 15, bushing: 15 };
    expect(jobs(chain(worn, good, turned('no')))).toEqual([['left.turn-bushings', 1, 112_000]]);
    expect(jobs(chain(worn, good, turned('yes')))).toEqual([['left.renew-chain', 1, 298_000]]);
    expect(jobs(chain({ ...worn, link: 15 }, good, turned('no')))).toEqual([
      ['left.renew-chain', 1, 298_000],
    ]);
  });

  test('[AP5] renewing stands in for mending in pieces where it costs less', () => {
    const cracked = [read('left.track', 'links-cracked', finding('one', { count: 1 }))];
    const link = chain(good, good, cracked);
    const kinds = (costs: Costs) =>
      deducted(chain(good, good, cracked, costs)).lines.map(({ job, isInstead }) => [job.kind, isInstead]);
    expect(deducted(link).lines.length).toBeGreaterThan(0);
    expect(kinds(costsOf({ 'change-link': [18_000, 4], 'renew-chain': [280_000, 3] }))).not.toContainEqual([
      'renew-chain',
      true,
    ]);
    expect(kinds(costsOf({ 'change-link': [400_000, 4], 'renew-chain': [280_000, 3] }))).toEqual([
      ['renew-chain', expect.any(Boolean)],
    ]);
  });

  test('[AP6] what has no price or no reading stays open, and the sum says that it is the least', () => {
    const unpriced = rubber(20, 60, costsOf({ 'mend-other': [5000, 1] }));
    expect(deducted(unpriced)).toMatchObject({ minor: 0, isWhole: false });
    expect(deducted(unpriced).lines.map(({ minor, cost }) => [minor, cost.ok])).toEqual([[undefined, false]]);
    const { sum, open } = valued(unpriced);
    expect(sum).toBeUndefined();
    expect(open.map(({ kind, side, why }) => [kind, side, why.kind])).toContainEqual([
      'renew-track',
      'right',
      'no-price',
    ]);
    const unread = foundOf({ sheet: rubberSheet, readings: [] }, rubberCosts);
    expect(valued(unread).sum).toBeUndefined();
    // Nothing read is no sum, and not a sum of nothing.
    expect(deducted(unread)).toMatchObject({ lines: [], minor: undefined });
    const blank = new Map([...demoMap()].filter(([key]) => !key.includes('/reading/')));
    const { spend, deduction } = demo(mini, {}, blank);
    expect([deduction.minor, 'minor' in spend]).toEqual([undefined, false]);
    expect(valued(unread).open).toContainEqual({
      kind: 'renew-track',
      side: 'left',
      count: 1,
      why: { kind: 'no-reading', items: ['lug-depth'] },
    });
    // A chain with a measure missing may be worse than what was read of it.
    const half = foundOf(
      {
        machine: machineOf('steel'),
        sheet: chainSheet,
        readings: chainSide('left', good).filter(({ item }) => item !== 'pitch'),
      },
      chainCosts,
    );
    expect(valued(half).open).toContainEqual({
      kind: 'renew-chain',
      side: 'left',
      count: 1,
      why: { kind: 'no-reading', items: ['pitch'] },
    });
  });

  test('[AP7] two currencies are never added: there is no sum at all', () => {
    const mixed = rubber(20, 60, costsOf({ 'renew-track': [100_000, 2] }, { rateCurrency: 'USD' }));
    expect(deducted(mixed)).toMatchObject({ minor: undefined, setUpMinor: 0, isWhole: false });
    expect(valued(mixed).sum).toBeUndefined();
    const { currency, closed, spend } = demo(
      mini,
      {},
      change(demoMap(), 'demo/machine/mini', { prices: 'price/own' }).set('price/own', {
        ...Object.values(builtIn.prices)[0],
        currency: 'USD',
      }),
    );
    expect([currency, closed?.kind, 'minor' in spend]).toEqual([undefined, 'two-currencies', false]);
  });
});

describe('[N10] laws', () => {
  const left = fc.integer({ min: -20, max: 110 });
  const side = fc.record({ link: left, pitch: left, bushing: left, grouser: left });
  const settings = fc.record({
    saleable: fc.integer({ min: 0, max: 60 }),
    sets: fc.constantFrom<'worst' | 'each'>('worst', 'each'),
  });
  const amount = fc.tuple(fc.integer({ min: 0, max: 500_000 }), fc.integer({ min: 0, max: 20 }));
  const anyCosts = fc
    .record({
      'renew-chain': amount,
      'turn-bushings': amount,
      'change-link': amount,
      'renew-shoes': amount,
      regrouser: amount,
      'renew-bottom-roller': amount,
      'mend-other': amount,
      'adjust-sag': amount,
    })
    .map((prices) => costsOf(prices));
  const turned = fc.constantFrom('no', 'yes');
  const more = (finds: string) =>
    (['left', 'right'] as const).map((each) => read(`${each}.track`, 'bushing-turned', finding(finds)));

  test('[AP8] more wear never raises what is left, nor lowers what is deducted, at any prices', () => {
    lawOfWalks(
      fc.property(
        side,
        side,
        fc.constantFrom<keyof Chain>('link', 'pitch', 'bushing', 'grouser'),
        fc.integer({ min: 1, max: 60 }),
        settings,
        anyCosts,
        turned,
        (one, other, part, by, choice, costs, finds) => {
          // Below this a size is no size any more.
          const worn = { ...one, [part]: Math.max(-20, one[part] - by) };
          const [before, after] = [one, worn].map((each) => chain(each, other, more(finds), costs));
          assert(before && after, 'two machines');
          const choices = chosen(choice);
          expect(deducted(after, choices).minor).toBeGreaterThanOrEqual(deducted(before, choices).minor ?? 0);
          const [was, is] = [before, after].map((each) => valued(each, choices).sum?.middle ?? 0);
          // What turning costs and what a chain was worth can both be in play; the parts left are never worth more.
          expect(is).toBeLessThanOrEqual(was ?? 0);
        },
      ),
      100,
    );
  });

  test('[AP9] each part is deducted as new or has a value, never both; the range holds the middle and no more than the price', () => {
    lawOfWalks(
      fc.property(side, side, settings, anyCosts, turned, (one, other, choice, costs, finds) => {
        const choices = chosen(choice);
        const found = chain(one, other, more(finds), costs);
        const work = deducted(found, choices);
        const renewed = new Set(work.lines.map(({ job }) => job.id));
        const { lines, sum } = valued(found, choices);
        for (const line of lines) {
          expect(renewed.has(`${line.side}.${line.kind}`)).toBe(false);
          const { low, middle, high } = line.minor;
          expect(low >= 0 && low <= middle && middle <= high).toBe(true);
          expect(high).toBeLessThanOrEqual(line.installedMinor + 1);
        }
        if (!sum) return;
        for (const { low, middle, high } of [sum, sum.fromWear, sum.fromPrice])
          expect(low <= middle && middle <= high).toBe(true);
        const added = lines.reduce((all, { minor }) => all + minor.middle, 0);
        expect(Math.abs(added - sum.middle)).toBeLessThanOrEqual(lines.length);
        expect(Number.isInteger(sum.low) && Number.isInteger(sum.middle) && Number.isInteger(sum.high)).toBe(
          true,
        );
      }),
      100,
    );
  });

  test('[AP10] swapping the sides swaps the lines and leaves every sum', () => {
    const swap = { left: 'right', right: 'left', whole: 'whole' } as const;
    lawOfWalks(
      fc.property(side, side, settings, anyCosts, turned, (one, other, choice, costs, finds) => {
        const choices = chosen(choice);
        const [a, b] = [chain(one, other, more(finds), costs), chain(other, one, more(finds), costs)];
        const [here, there] = [deducted(a, choices), deducted(b, choices)];
        expect([there.minor, there.setUpMinor]).toEqual([here.minor, here.setUpMinor]);
        const told = ({ lines }: typeof here, as: (of: 'left' | 'right' | 'whole') => string) =>
          lines.map(({ job, minor }) => `${as(job.side)} ${job.kind} ${minor}`).sort();
        expect(told(there, (of) => swap[of])).toEqual(told(here, (of) => of));
        expect(valued(b, choices).sum).toEqual(valued(a, choices).sum);
      }),
      80,
    );
  });

  test('[AP11] eight of ten such machines lie in the range, with wear and prices drawn as they are believed', () => {
    const { normal } = randomOf(7);
    const cases = [
      [70, 60, 80, 55],
      [40, 45, 35, 60],
      [30, 28, 27, 26],
    ];
    for (const lefts of cases) {
      const stakes = lefts.map((each, n) => ({ amount: 100_000 * (n + 1), left: each, u: 6, soft: true }));
      const { low, high } = worthTogether(stakes, 25, 30);
      let inside = 0;
      const rounds = 4000;
      for (let n = 0; n < rounds; n += 1) {
        const factor = Math.max(0, 1 + (0.3 * normal()) / 1.2816);
        const truth = stakes.reduce((sum, stake) => {
          const real = stake.left + stake.u * normal();
          return sum + (real < 25 ? 0 : (stake.amount * Math.min(100, real)) / 100);
        }, 0);
        if (truth * factor >= low && truth * factor <= high) inside += 1;
      }
      expect(inside / rounds).toBeGreaterThan(0.78);
      expect(inside / rounds).toBeLessThan(0.82);
    }
  });
});

describe('[N10] a stated condition, spend, meter and signs', () => {
  test('[AP12] the work to a stated condition holds what is deducted; a kind may have a percent of its own', () => {
    const kinds = (stated: AppraisalSettings['stated']) =>
      demo(steel, { stated }).stated.lines.map(({ job }) => job.id);
    expect(kinds({ kind: 'percent', percent: 0 })).toEqual(['right.adjust-sag']);
    expect(kinds({ kind: 'percent', percent: 35 })).toContain('right.renew-chain');
    const own = kinds({ kind: 'percent', percent: 35, of: { 'renew-chain': 0, 'renew-shoes': 40 } });
    expect(own).not.toContain('right.renew-chain');
    expect(own).toContain('right.renew-shoes');
  });

  test('[AP13] nothing due within hours renews what is due by its middle, and names what no new one lasts', () => {
    const at = (hours: number) => demo(mini, { stated: { kind: 'hours', hours } }).stated;
    expect(at(100).lines).toEqual([]);
    expect(at(400).lines.map(({ job }) => job.id)).toEqual(['right.renew-track']);
    expect(at(2000).lines).toHaveLength(2);
    expect([at(400).never.length, at(2000).never.length]).toEqual([0, 2]);
  });

  test('[AP14] spend grows with the hours, is planned work and breakdowns, and stays open without prices', () => {
    const spend = (hours: number) => {
      const found = demo(mini, { hours }).spend;
      assert('minor' in found, 'a spend');
      return found;
    };
    const all = [50, 140, 250, 500, 1000, 2000].map(spend);
    const sums = all.map(({ minor }) => minor);
    expect([...sums].sort((a, b) => a - b)).toEqual(sums);
    for (const { minor, plannedMinor, breakdownMinor } of all)
      expect(minor).toBe(plannedMinor + breakdownMinor);
    // Before the first visit only a breakdown costs.
    expect(spend(50)).toMatchObject({ plannedMinor: 0, setUpMinor: 0 });
    expect(spend(50).minor).toBeLessThan(spend(250).minor / 20);
    expect(spend(500).lines.filter(({ inHours }) => inHours !== undefined)).toHaveLength(2);
    const gone = demo(mini, {}, change(demoMap(), 'demo/machine/mini', { prices: 'price/gone' }));
    expect('minor' in gone.spend).toBe(false);
    const unmetered = demoMap();
    for (const key of ['mini-first', 'mini-second', 'mini-last'])
      change(unmetered, `demo/walk/${key}`, { meterHours: undefined });
    expect(all.map(({ isWhole }) => isWhole)).not.toContain(false);
    expect('minor' in demo(mini, {}, unmetered).spend).toBe(false);
  });

  test('[AP15] much wear after few hours makes the meter seem low; little after many, high or renewed', () => {
    const at = (hours: number, fitted: number | undefined, size: string) => {
      const records = demoMap();
      for (const key of [...records.keys()])
        if (/mini-(?:first|second)|\/work\//.test(key)) records.delete(key);
      for (const side of ['left', 'right'])
        for (const n of [1, 2])
          change(records, `demo/reading/mini-last/${side}.track/lug-depth/${n}`, {
            what: { kind: 'length', mm: Number(size), typed: size, unit: 'mm' },
          });
      change(records, mini, { meterHours: hours });
      const track = fitted === undefined ? {} : { fittedAtHours: fitted };
      change(records, 'demo/machine/mini', { left: track, right: track, meterHours: hours });
      return demo(mini, {}, records).meter;
    };
    expect(at(1000, 0, '12').says).toBe('plausible');
    expect(at(120, undefined, '6').says).toBe('low');
    expect(at(9000, 0, '20').says).toBe('high');
    expect(at(9000, undefined, '20').says).toBe('renewed');
    const { parts, share } = at(120, undefined, '6');
    expect(share).toBeLessThan(0.05);
    for (const { takes, ranHours } of parts) expect(takes.low).toBeGreaterThan(ranHours);
  });

  test('[AP16] without a meter reading nothing is said of it', () => {
    const records = demoMap();
    for (const key of ['mini-first', 'mini-second', 'mini-last'])
      change(records, `demo/walk/${key}`, { meterHours: undefined });
    expect(demo(mini, {}, records).meter).toMatchObject({ says: 'open', hours: undefined, parts: [] });
  });

  test('[AP17] signs come from readings that speak together, and from what somebody says to have seen', () => {
    const withFindings = (finds: readonly (readonly [place: string, item: string, is: string])[]) => {
      const records = demoMap();
      for (const [place, item, is] of finds)
        records.set(`demo/reading/mini-last/${place}/${item}/1`, {
          v: 1,
          what: { kind: 'finding', finding: is },
        });
      return records;
    };
    const kinds = (records: Records, settings: Partial<AppraisalSettings> = {}) =>
      demo(mini, settings, records).signs.map(({ kind }) => kind);
    expect(kinds(demoMap())).toEqual([]);
    expect(kinds(withFindings([['left.adjuster', 'adjuster-travel', 'end']]))).toEqual(['adjuster-pumped']);
    expect(kinds(demoMap(), { seen: { 'fresh-paint': 'yes', 'fresh-oil': 'no' } })).toEqual(['fresh-paint']);
    const newer = withFindings([['left.sprocket', 'sprocket-teeth', 'hooked']]);
    for (const n of [1, 2])
      change(newer, `demo/reading/mini-last/left.track/lug-depth/${n}`, {
        what: { kind: 'length', mm: 21, typed: '21', unit: 'mm' },
      });
    expect(kinds(newer)).toEqual(expect.arrayContaining(['tracks-on-worn-sprocket', 'sides-differ']));
    // A link that is on record as taken out need not be looked for.
    const removed = (more: Records) =>
      more.set(workKey('link'), { v: 1, kind: 'link-removed', side: 'left' });
    expect(kinds(removed(demoMap()))).toEqual([]);
    const old = [...demoMap()].filter(([key]) => !isKind(key as RecordKey, 'work'));
    expect(kinds(removed(new Map(old)))).toEqual(['removed-link']);
    expect(demo(mini, {}, removed(new Map(old))).notLooked).not.toContain('removed-link');
    const aged = new Map(old);
    for (const [side, on] of [
      ['left', '2021-03-01'],
      ['right', '2024-03-01'],
    ] as const)
      aged.set(workKey(side), { v: 1, kind: 'fitted', component: 'track', side, on });
    expect(kinds(aged)).toEqual(['ages-differ']);
  });

  test('[AP18] choices that cannot be read stand as they start, each by itself', () => {
    const start = settingsOf({});
    expect(start).toEqual({
      saleable: 25,
      sets: 'worst',
      hours: 1000,
      priceSpread: 30,
      stated: { kind: 'percent', percent: 50 },
      seen: {},
    });
    const strange = { saleable: '30', sets: 'all', hours: 1e9, stated: { kind: 'percent' }, seen: [1] };
    expect(settingsOf({ appraisal: strange })).toEqual(start);
    expect(settingsOf({ appraisal: { ...strange, saleable: 30 } })).toEqual({ ...start, saleable: 30 });
  });

  test('[AP19] what was not verified and what nobody looked for is named', () => {
    const { notVerified, notLooked, worst } = demo(steel, { seen: { 'removed-link': 'no' } });
    expect(notVerified).toEqual([]);
    expect(notLooked).toEqual(['fresh-paint', 'built-up-teeth', 'unknown-tracks', 'fresh-oil']);
    expect(worst.right?.state.item.id).toBe('sag');
  });
});
