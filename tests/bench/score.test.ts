import { expect, test } from 'vitest';
import { assert } from '../../src/core/result.ts';
import { score } from '../../src/core/score.ts';
import type { PlacedReading, ScoreInput } from '../../src/core/states.ts';
import { builtIn } from '../../src/reference/built-in.ts';
import { demoMachines } from '../../src/reference/demo-machines.ts';
import { makePlace } from '../../src/core/keys.ts';

const readings = 120;

/** The steel demo walk with every size read again until there are 120 readings. */
function longWalk(): ScoreInput {
  const demo = demoMachines.find(({ machine }) => machine.shape.track === 'steel');
  assert(demo, 'a steel demo machine');
  const sheet = builtIn.limits[demo.machine.sheet ?? ''];
  const all = Array.from({ length: readings }, (_, i): PlacedReading => {
    const each = demo.readings[i % demo.readings.length];
    assert(each, 'a reading');
    const n = each.n + Math.floor(i / demo.readings.length) * 10;
    return {
      place: makePlace(each.place),
      item: each.item,
      n,
      reading: { v: 1, what: each.what, spot: each.n },
    };
  });
  const rules = Object.values(builtIn.rules)[0];
  return {
    machine: demo.machine,
    walk: demo.walk,
    sheets: { left: sheet, right: sheet },
    rules,
    readings: all,
  };
}

function medianMs(run: () => unknown): number {
  const times = Array.from({ length: 60 }, () => {
    const start = performance.now();
    run();
    return performance.now() - start;
  });
  return times.sort((a, b) => a - b)[30] ?? NaN;
}

test('[BE1] a walk of 120 readings is scored in a few copies of itself', () => {
  const input = longWalk();
  for (let i = 0; i < 30; i += 1) score(input);
  const [floor, scored] = [medianMs(() => structuredClone(input)), medianMs(() => score(input))];
  const ratio = scored / floor;
  console.log(
    `score of ${readings} readings: ${ratio.toFixed(2)} × a copy of the same input (${scored.toFixed(2)} ms)`,
  );
  expect(ratio).toBeLessThan(30);
});
