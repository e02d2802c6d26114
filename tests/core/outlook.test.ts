import { describe, expect, test } from 'vitest';
import { assemble } from '../../src/core/assemble.ts';
import { learn, lessonOf } from '../../src/core/fleet.ts';
import { historiesOf } from '../../src/core/history.ts';
import { historyInput, isPlanned } from '../../src/core/outlook.ts';
import { assert } from '../../src/core/result.ts';
import { builtIn } from '../../src/reference/built-in.ts';
import { change, demoMap, mini, outlookAt, plannedOf, shelfWith, steel, type Records } from './ahead-made.ts';

const prices = 'price/starting-rubber-mini';

const lists = (change: (lines: { job: string; minor: number }[]) => unknown) => {
  const list = structuredClone(builtIn.prices[prices]) as unknown as {
    lines: { job: string; minor: number }[];
  };
  list.lines = change(list.lines) as typeof list.lines;
  return list;
};

/** The demo's rubber machine with a price list of its own. */
const withPrices = (list: object): Records =>
  change(demoMap(), 'demo/machine/mini', { prices: 'price/own' }).set('price/own', list);

const jobsAt = (visits: readonly { jobs: readonly { job: { id: string } }[] }[]): readonly string[] =>
  visits.flatMap(({ jobs }) => jobs.map(({ job }) => job.id)).sort();

describe('[N7] the outlook of a machine', () => {
  test('[O1] three walks give every measured part its hours, and the plan costs no more than the simple ways', () => {
    for (const walk of [mini, steel]) {
      const outlook = outlookAt(demoMap(), walk);
      expect(outlook.hours.parts.length).toBeGreaterThan(0);
      for (const { left, open } of outlook.hours.parts) {
        expect(open).toEqual([]);
        expect(left && left.low < left.middle && left.middle < left.high).toBe(true);
      }
      const plan = plannedOf(outlook);
      expect(plan.visits.length).toBeGreaterThan(0);
      expect(plan.costMinor).toBeLessThanOrEqual(plan.everythingNowMinor);
      expect(plan.costMinor).toBeLessThanOrEqual(plan.eachWhenDueMinor);
      expect(plan.exact).toBe(true);
    }
  });

  test('[O2] neither the order of the records nor another machine changes it', () => {
    const backwards = new Map([...demoMap()].reverse());
    const alone = new Map([...demoMap()].filter(([key]) => !key.includes('steel')));
    const [told, ...others] = [demoMap(), backwards, alone].map((records) => {
      const outlook = outlookAt(records, mini);
      return [
        plannedOf(outlook).chosen,
        plannedOf(outlook).costMinor,
        outlook.hours.parts.map(({ left }) => left),
      ];
    });
    expect(others).toEqual([told, told]);
  });

  test('[O3] a walk sees nothing of later ones', () => {
    const first = outlookAt(demoMap(), 'demo/walk/mini-first' as typeof mini);
    expect(first.hours.parts.map(({ history }) => history.points.length)).toEqual([1, 1]);
  });

  test('[SG6] a correction stands in for the walk that it corrects, for both of them and for later ones', () => {
    const first = 'demo/walk/mini-first' as typeof mini;
    const again = 'demo/walk/mini-again' as typeof mini;
    const records = demoMap();
    for (const [key, value] of demoMap())
      if (key.includes('/mini-first')) records.set(key.replace('mini-first', 'mini-again'), value);
    change(records, again, { corrects: first });
    const walksOf = (walk: typeof mini) =>
      outlookAt(records, walk).hours.parts[0]?.history.points.map(({ walk: each }) => each);
    const later = outlookAt(demoMap(), mini).hours.parts[0]?.history.points.map(({ walk }) => walk);
    expect(walksOf(first)).toEqual([first]);
    expect(walksOf(again)).toEqual([again]);
    expect(walksOf(mini)).toEqual(later?.map((each) => (each === first ? again : each)));
    expect(later).toContain(first);
  });

  test('[O4] hours a week come from the machine, else from walks three weeks apart, else from nothing', () => {
    expect(outlookAt(demoMap(), mini).week).toEqual({ hours: (350 * 7) / 224, from: 'walks' });
    const told = change(demoMap(), 'demo/machine/mini', { hoursPerWeek: 30 });
    expect(outlookAt(told, mini).week).toEqual({ hours: 30, from: 'machine' });
    expect(outlookAt(demoMap(), 'demo/walk/mini-first' as typeof mini).week).toBeUndefined();
  });
});

describe('[N7] what keeps it open', () => {
  test('[O5] a meter that goes back leaves every part without a figure, and the plan to what was found', () => {
    const records = change(demoMap(), mini, { meterHours: 900 });
    const { hours, plan } = outlookAt(records, mini);
    expect(hours.parts.map(({ open }) => open)).toEqual([['meter-back'], ['meter-back']]);
    expect(hours.parts.every(({ left }) => left === undefined)).toBe(true);
    expect(isPlanned(plan) && plan.visits).toEqual([]);
  });

  test('[O6] without any hours there is no figure', () => {
    const records = demoMap();
    for (const key of ['mini-first', 'mini-second', 'mini-last'])
      change(records, `demo/walk/${key}`, { meterHours: undefined });
    const { hours, week } = outlookAt(records, mini);
    expect(hours.parts.map(({ open }) => open)).toEqual([['no-hours'], ['no-hours']]);
    expect(week).toBeUndefined();
  });

  test('[O7] a job without a price is open with its name, and the others are planned', () => {
    const records = withPrices(lists((lines) => lines.filter(({ job }) => job !== 'renew-track')));
    const { plan } = outlookAt(records, mini);
    expect(plan.open.map(({ job, why }) => [job.id, why])).toEqual([
      ['right.renew-track', { kind: 'no-price', job: 'renew-track' }],
      ['left.renew-track', { kind: 'no-price', job: 'renew-track' }],
    ]);
  });

  test('[O8] two currencies are never added: every job is open', () => {
    const records = withPrices({ ...lists((lines) => lines), currency: 'USD' });
    const { plan, choices, wrong, worth } = outlookAt(records, mini);
    expect(isPlanned(plan)).toBe(false);
    expect(plan.open.map(({ why }) => why.kind)).toEqual(['two-currencies', 'two-currencies']);
    expect([choices, wrong, worth]).toEqual([[], [], []]);
  });

  test('[O9] prices that are not here keep the jobs open, and hours left stay', () => {
    const records = change(demoMap(), 'demo/machine/mini', { prices: 'price/gone' });
    const { plan, hours } = outlookAt(records, mini);
    expect(plan.open.map(({ why }) => why)).toEqual([
      { kind: 'not-here', key: 'price/gone' },
      { kind: 'not-here', key: 'price/gone' },
    ]);
    expect(hours.parts[0]?.left).toBeDefined();
  });

  test('[O10] a life of zero or backwards gives no figure and no plan of it', () => {
    for (const [lowHours, highHours] of [
      [0, 0],
      [0, 1000],
      [1000, 1000],
      [2000, 1000],
    ] as const) {
      const figures = builtIn.life.figures.map((each) => ({ ...each, lowHours, highHours }));
      const { hours } = outlookAt(demoMap(), mini, {}, { ...builtIn, life: { ...builtIn.life, figures } });
      expect(hours.parts.map(({ open }) => open)).toEqual([['life-zero'], ['life-zero']]);
    }
  });
});

describe('[N7] what the person fixes', () => {
  const hold = (records: Records, job: string, value: object): Records =>
    records.set(`demo/hold/mini/${job}`, { v: 1, ...value });

  test('[O11] a job that is left out has no visit, and says who left it out', () => {
    const plan = plannedOf(outlookAt(hold(demoMap(), 'right.renew-track', { skip: true }), mini));
    expect(jobsAt(plan.visits)).not.toContain('right.renew-track');
    expect(plan.open.map(({ job, why }) => [job.id, why.kind])).toEqual([['right.renew-track', 'held-off']]);
  });

  test('[O12] a job held between two meter readings is done there', () => {
    const plan = plannedOf(outlookAt(hold(demoMap(), 'right.renew-track', { from: 1110, to: 1110 }), mini));
    const [first] = plan.visits;
    expect([first?.inHours, first?.jobs.map(({ job }) => job.id)]).toEqual([
      0,
      expect.arrayContaining(['right.renew-track']),
    ]);
    const late = plannedOf(outlookAt(hold(demoMap(), 'right.renew-track', { from: 2000, to: 2100 }), mini));
    expect(late.visits.find(({ hours }) => hours === 2000)?.jobs.map(({ job }) => job.id)).toEqual([
      'right.renew-track',
    ]);
    expect(late.costMinor).toBeGreaterThanOrEqual(plannedOf(outlookAt(demoMap(), mini)).costMinor);
  });

  test('[O13] a hold between two visits leaves the job without one, and says so', () => {
    const plan = plannedOf(outlookAt(hold(demoMap(), 'right.renew-track', { from: 1260, to: 1300 }), mini));
    expect(plan.open.map(({ job, why }) => [job.id, why.kind])).toEqual([['right.renew-track', 'no-visit']]);
  });

  test('[O14] the earlier plan stands while another saves 1 % or less', () => {
    const before = plannedOf(outlookAt(demoMap(), mini));
    const dearer = withPrices(lists((lines) => lines.map((line) => ({ ...line, minor: line.minor + 1 }))));
    const after = plannedOf(outlookAt(dearer, mini, { earlier: before.chosen }));
    expect(after.chosen).toEqual(before.chosen);
  });
});

describe('[N6] the own fleet', () => {
  /** The demo's small machine so many times over, each with its own name. */
  function fleet(count: number): Records {
    const records: Records = new Map();
    for (let n = 0; n < count; n += 1)
      for (const [key, value] of demoMap()) {
        if (key.includes('steel')) continue;
        const own = (text: string): string => text.replace('demo/', '').replace('mini', `mini-${n}`);
        const walk = 'machine' in value ? { machine: own(String(value.machine)) } : {};
        records.set(own(key), { ...value, ...walk });
      }
    return records;
  }
  const taught = (count: number) => {
    const records = fleet(count);
    const shelf = shelfWith(records);
    return learn(
      Array.from({ length: count }, (_, n) => {
        const walk = `walk/mini-${n}-last`;
        const made = assemble(shelf, builtIn, walk);
        assert(made.ok, 'a walk');
        const { parts } = historiesOf(historyInput(shelf, builtIn, walk, made.value));
        return lessonOf({ parts }, builtIn.life.kappa.value);
      }),
    );
  };

  test('[O15] is used from ten histories of a kind on, and said so; alike machines narrow the interval', () => {
    expect(taught(4).rates.size).toBe(0);
    const learnt = taught(5);
    expect([...learnt.counts]).toEqual([['rubber-excavator', 10]]);
    const [book, own] = [{}, { learnt }].map(
      (options) => outlookAt(fleet(1), 'walk/mini-0-last' as typeof mini, options).hours.parts[0],
    );
    expect([book?.history.isLearnt, own?.history.isLearnt]).toEqual([false, true]);
    const width = (part: typeof book): number => (part?.left?.high ?? 0) - (part?.left?.low ?? 0);
    expect(width(own)).toBeLessThan(width(book));
  });
});
