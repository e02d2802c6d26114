import { describe, expect, test } from 'vitest';
import { ticksBetween, tickStep, wearChart } from '../../src/app/data/wear-chart.ts';
import { assert } from '../../src/core/result.ts';
import { change, demoMap, mini, outlookAt, steel } from '../core/ahead-made.ts';

describe('the plot of a wear history', () => {
  test('[WC1] ticks are round and lie between the ends', () => {
    expect(ticksBetween(610, 1600, 3)).toEqual([1000, 1500]);
    expect(ticksBetween(1900, 7270, 3)).toEqual([2000, 4000, 6000]);
    expect(ticksBetween(0, 0, 3)).toEqual([0]);
    expect([tickStep(1000, 4), tickStep(17, 3), tickStep(0.9, 3)]).toEqual([500, 10, 0.5]);
  });

  test('[WC2] holds every reading, starts the band at the last one and ends it past the limit, within the axes', () => {
    for (const walk of [mini, steel]) {
      const { hours, meterOffset } = outlookAt(demoMap(), walk);
      for (const part of hours.parts) {
        const chart = wearChart(part, meterOffset);
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

  test('[WC3] a part without a figure has its readings and no band', () => {
    const records = demoMap();
    for (const n of [1, 2])
      change(records, `demo/reading/mini-last/right.track/lug-depth/${n}`, {
        what: { kind: 'length', mm: 21, typed: '21', unit: 'mm' },
      });
    const { hours } = outlookAt(records, mini);
    const part = hours.parts.find(({ open }) => open.includes('improved'));
    assert(part, 'a part in doubt');
    expect(wearChart(part, 0)).toMatchObject({ band: [], points: [{}, {}, {}] });
    expect(wearChart({ ...part, history: { ...part.history, points: [] } }, 0)).toBeUndefined();
  });
});
