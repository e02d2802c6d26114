import { describe, expect, test } from 'vitest';
import type { Choice } from '../../src/core/mend.ts';
import type { RecordKey } from '../../src/core/keys.ts';
import { assert } from '../../src/core/result.ts';
import { change, demoMap, mini, outlookAt, plannedOf, steel, type Records } from './ahead-made.ts';

const reading = (records: Records, walk: string, place: string, item: string, finding: string): Records =>
  records.set(`demo/reading/${walk}/${place}/${item}/1`, { v: 1, what: { kind: 'finding', finding } });

function choice(records: Records, walk: RecordKey, id: string): Choice {
  const found = outlookAt(records, walk).choices.find(({ job }) => job.id === id);
  assert(found, id);
  return found;
}

/** The steel machine so far on that its right chain is due, with its pins and bushings still to be turned. */
function turnable(): Records {
  const records = demoMap();
  for (const walk of ['steel-first', 'steel-second', 'steel-last'])
    for (const n of [1, 2]) {
      const key = `demo/reading/${walk}/right.track/link-height/${n}`;
      change(records, key, { what: { kind: 'length', mm: 83, typed: '83', unit: 'mm' } });
    }
  return reading(records, 'steel-last', 'right.track', 'bushing-turned', 'no');
}

const kinds = ({ ways }: Choice): readonly string[] => ways.map(({ kind }) => kind);

describe('[N8] mend or renew', () => {
  test('[M1] ways stand by their cost for each hour gained, which is cost over hours', () => {
    for (const walk of [mini, steel])
      for (const { ways } of outlookAt(demoMap(), walk).choices) {
        const rates = ways.map(({ perHour }) => perHour);
        expect([...rates].sort((a, b) => a - b)).toEqual(rates);
        for (const { minor, hoursGained, perHour } of ways)
          expect(perHour).toBeCloseTo(minor / hoursGained, 6);
      }
  });

  test('[M2] worn sprockets shorten the life of a new track, and it says so', () => {
    const sound = choice(demoMap(), mini, 'right.renew-track').ways.find(
      ({ kind }) => kind === 'renew-track',
    );
    const hooked = reading(demoMap(), 'mini-last', 'right.sprocket', 'sprocket-teeth', 'worn');
    const [way] = choice(hooked, mini, 'right.renew-track').ways.filter(({ kind }) => kind === 'renew-track');
    expect(way?.effects).toEqual(['worn-sprocket-eats-track']);
    expect(sound?.effects).toEqual([]);
    expect(way?.hoursGained).toBeLessThan(sound?.hoursGained ?? 0);
  });

  test('[M3] pins and bushings are turned where the links outlast it, and never a second time', () => {
    const plan = plannedOf(outlookAt(turnable(), steel));
    const all = [...plan.visits.flatMap(({ jobs }) => jobs), ...plan.later].map(({ job }) => job.id);
    expect(all).toContain('right.turn-bushings');
    const again = reading(turnable(), 'steel-last', 'right.track', 'bushing-turned', 'yes');
    const after = outlookAt(again, steel);
    const ids = [...plannedOf(after).visits.flatMap(({ jobs }) => jobs), ...plannedOf(after).later];
    expect(ids.map(({ job }) => job.id)).not.toContain('right.turn-bushings');
    const closed = after.choices.flatMap((each) => each.closed).map(({ kind, why }) => [kind, why]);
    expect(closed).toContainEqual(['turn-bushings', 'turned-before']);
  });

  test.each([
    ['joints', 'dry', 'joints-dry'],
    ['bushing-crack', 'cracked', 'bushing-cracked'],
  ])('[M4] nor with %s %s', (item, finding, why) => {
    const records = reading(turnable(), 'steel-last', 'right.track', item, finding);
    const { closed } = choice(records, steel, 'right.renew-chain');
    expect(closed).toContainEqual({ kind: 'turn-bushings', why });
  });

  test('[M5] swapping sides is offered only where it gains hours, and says what it does to the tread', () => {
    const right = choice(demoMap(), mini, 'right.renew-track');
    const swap = right.ways.find(({ kind }) => kind === 'swap-sides');
    expect(swap?.effects).toEqual(['tread-runs-backwards']);
    expect(swap?.side).toBe('whole');
    expect(choice(demoMap(), mini, 'left.renew-track').closed).toContainEqual({
      kind: 'swap-sides',
      why: 'buys-nothing',
    });
  });

  test('[M6] what no list prices is closed and says so', () => {
    const records = demoMap();
    const { costs } = outlookAt(records, mini);
    assert(costs.prices, 'prices');
    const lines = costs.prices.lines.filter(({ job }) => job !== 'swap-sides');
    change(records, 'demo/machine/mini', { prices: 'price/own' }).set('price/own', {
      ...costs.prices,
      lines,
    });
    const right = choice(records, mini, 'right.renew-track');
    expect(kinds(right)).toEqual(['renew-track']);
    expect(right.closed).toContainEqual({ kind: 'swap-sides', why: 'no-price' });
  });
});

describe('[N8] the cost of being wrong', () => {
  test('[M7] left too long costs the breakdown, done too early the life thrown away', () => {
    const outlook = outlookAt(demoMap(), steel);
    const plan = plannedOf(outlook);
    const all = [...plan.visits.flatMap(({ jobs }) => jobs), ...plan.later];
    const nowIds = plan.visits
      .filter(({ inHours }) => inHours === 0)
      .flatMap(({ jobs }) => jobs.map(({ job }) => job.id));
    expect(outlook.wrong.map(({ id }) => id).sort()).toEqual(all.map(({ job }) => job.id).sort());
    for (const { id, if: when, chance, minor } of outlook.wrong) {
      const each = all.find(({ job }) => job.id === id);
      assert(each, id);
      expect(when).toBe(nowIds.includes(id) ? 'early' : 'late');
      expect(chance).toBeGreaterThanOrEqual(0);
      expect(chance).toBeLessThanOrEqual(1);
      if (when === 'late') expect(minor).toBe(each.breakdownMinor - each.plannedMinor);
    }
  });

  test('[M8] a reading is worth what it can save: never less than nothing, and most first', () => {
    for (const walk of [mini, steel]) {
      const { worth } = outlookAt(demoMap(), walk);
      const saved = worth.map(({ minor }) => minor);
      expect(saved.every((minor) => minor > 0)).toBe(true);
      expect([...saved].sort((a, b) => b - a)).toEqual(saved);
    }
  });

  test('[M9] where the parts are far from any limit no reading is worth taking again', () => {
    const { worth, plan } = outlookAt(demoMap(), 'demo/walk/steel-first' as RecordKey);
    expect(worth).toEqual([]);
    expect(plan.open).toEqual([]);
  });
});
