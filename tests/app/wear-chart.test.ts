import { describe, expect, test } from 'vitest';
import { ticksBetween, tickStep, wearChart } from '../../src/app/data/wear-chart.ts';
import { assert } from '../../src/core/result.ts';
import { change, demoMap, mini, outlookAt, steel } from '../core/ahead-made.ts';

describe('the plot of a wear history', () => {
  test('[WC1] ticks are round and lie between the ends', () => {
    expect(ticksBetween(610, 1600, 3)).toEqual([1000, 1500]);
    expect(ticksBetween(1900, 7270, 3)).toEqual([2000, 4000, 6000]);
    expect(ticksBetween(0, 0, 3)).toEqual([0]);
    // One tick alone would be no scale.
    expect(ticksBetween(1900, 9400, 3).length).toBeGreaterThan(1);
    for (let to = 2000; to < 12_000; to += 130) expect(ticksBetween(1900, to, 3).length).toBeGreaterThan(1);
    expect([tickStep(1000, 4), tickStep(17, 3), tickStep(0.9, 3)]).toEqual([500, 10, 0.5]);
  });

  test('[WC2] holds every reading, starts the band at the last one and ends it past the limit, within the axes', () => {
    for (const walk of [mini, steel]) {
      const { hours, meterOffset } = outlookAt(demoMap(), walk);
      for (const part of hours.parts) {
        const chart = wearChart(part, meterOffset, hours.now ?? 0);
        assert(chart, 'a chart');
        expect(chart.points).toHaveLength(3);
        expect(chart.band[0]?.meter).toBe(chart.points.at(-1)?.meter);
        expect(chart.band.at(-1)?.high).toBeGreaterThan(100);
        expect(chart.from).toBe(
          Math.min(...chart.points.map(({ meter }) => meter), ...chart.marks.map(({ meter }) => meter)),
        );
        expect(chart.to).toBe(chart.band.at(-1)?.meter);
        expect(chart.most).toBeGreaterThanOrEqual(110);
      }
    }
  });

  test('[WC4] a part that was not read on the last walk is drawn on to where its hours left end, at round hours in the table', () => {
    const records = demoMap();
    for (const side of ['left', 'right']) records.delete(`demo/reading/steel-last/${side}.track/pitch/1`);
    const { hours, meterOffset } = outlookAt(records, steel);
    const parts = hours.parts.filter(({ history }) => history.item.id === 'pitch');
    expect(parts).toHaveLength(2);
    for (const part of parts) {
      const chart = wearChart(part, meterOffset, hours.now ?? 0);
      assert(chart && part.left && Number.isFinite(part.left.high), 'a chart');
      expect(chart.band[0]?.meter).toBe(4100);
      expect(chart.to).toBeCloseTo(4980 + Math.min(4000, part.left.high), 6);
      // The middle of the band meets the limit where the middle of the hours left lies.
      const near = chart.band.filter(({ meter }) => meter > 4980 + (part.left?.middle ?? 0));
      expect(near[0]?.middle).toBeGreaterThan(99);
      expect(chart.rows.length).toBeGreaterThan(3);
      expect(chart.rows.every(({ meter }) => meter % 100 === 0 && meter > 4100 && meter <= chart.to)).toBe(
        true,
      );
    }
  });

  test('[WC3] a part without a figure has its readings and no band', () => {
    const records = demoMap();
    for (const n of [1, 2])
      change(records, `demo/reading/mini-last/right.track/lug-depth/${n}`, {
        what: { kind: 'length', mm: 21, typed: '21', unit: 'mm' },
      });
    const { hours } = outlookAt(records, mini);
    const part = hours.parts.find(({ open }) => open.includes('improved'));
    assert(part, 'a part in doubt');
    expect(wearChart(part, 0, 1110)).toMatchObject({ band: [], points: [{}, {}, {}] });
    expect(wearChart({ ...part, history: { ...part.history, points: [] } }, 0, 1110)).toBeUndefined();
  });
});
