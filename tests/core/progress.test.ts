import { describe, expect, test } from 'vitest';
import { byState, nextStep, outcomesOfStep, progressOf, readingsAtSpot } from '../../src/core/progress.ts';
import { score } from '../../src/core/score.ts';
import { assert } from '../../src/core/result.ts';
import type { PlacedReading } from '../../src/core/states.ts';
import { stepsOf, type Step } from '../../src/core/steps.ts';
import {
  entryOf,
  finding,
  inputOf,
  machineOf,
  mm,
  pass,
  read,
  ruleOf,
  rulesOf,
  sag,
  sheetOf,
  bandOf,
  unseen,
  walkOf,
} from './made.ts';

const sheet = sheetOf([entryOf('lug-depth', 20, 10)], [bandOf(10, 20)]);
const machine = machineOf('rubber-cored');
const steps = () => stepsOf(machine, walkOf(), 'ground');

function stepOf(id: string): Step {
  const found = steps().find((step) => step.id === id);
  assert(found, `no step ${id}`);
  return found;
}

const rules = rulesOf([
  ruleOf('cut', 'cord', { finding: 'cord', is: ['cut'] }, 'park', 'nothing'),
  ruleOf('edge', 'edges', { finding: 'edges', is: ['cut'] }, 'repair', 'work'),
]);

function progress(id: string, readings: PlacedReading[], more: Parameters<typeof inputOf>[0] = {}) {
  const { outcomes } = score(inputOf({ machine, sheet, rules, readings, ...more }));
  return progressOf(stepOf(id), byState(outcomes), readings);
}
const stateOf = (...given: Parameters<typeof progress>) => progress(...given).state;

describe('[K] how far a look is', () => {
  const look = 'side-left.tread';
  const all = stepOf(look).items.map(({ id }) => id);
  const passed = (items: readonly string[], more = {}) =>
    read('left.track', 'pass-tread', pass([...items], more));

  test('[K40] nothing, some or all of it read or passed', () => {
    expect(stateOf(look, [])).toBe('todo');
    expect(stateOf(look, [read('left.track', 'cord', finding('none'))])).toBe('partly');
    expect(stateOf(look, [passed(all.slice(1))])).toBe('partly');
    expect(stateOf(look, [passed(all)])).toBe('done');
    expect(stateOf(look, [passed(all.slice(1)), read('left.track', all[0] ?? '', finding('none'))])).toBe(
      'done',
    );
  });

  test('[K41] all of it, with something that could not be seen, is open', () => {
    expect(stateOf(look, [passed(all.slice(1)), read('left.track', all[0] ?? '', unseen())])).toBe('open');
    expect(stateOf(look, [passed(all.slice(2)), read('left.track', all[0] ?? '', unseen())])).toBe('partly');
  });

  test('[K42] a reading that was taken back is to be read again', () => {
    const [{ place }] = [passed(all)];
    const takenBack = [{ place, item: 'cord', n: 1 }];
    expect(stateOf(look, [], { takenBack })).toBe('todo');
    expect(stateOf(look, [passed(all)], { takenBack })).toBe('partly');
  });

  test('[K43] what a newer version wrote is answered', () => {
    const newer = [{ place: passed(all).place, item: 'cord', n: 1 }];
    expect(stateOf(look, [passed(all)], { newer })).toBe('done');
  });

  test('[K44] of counted parts needs every part', () => {
    const rollers = 'side-left.bottom-roller';
    const items = stepOf(rollers).items.map(({ id }) => id);
    const row = (except: number[]) =>
      read('left.bottom-roller', 'pass-bottom-roller', pass(items, { except }));
    expect([stateOf(rollers, [row([])]), stateOf(rollers, [row([2])])]).toEqual(['done', 'partly']);
  });

  test('[K45] the call is the worst of what it has read', () => {
    const readings = [
      read('left.track', 'cord', finding('cut')),
      read('left.track', 'edges', finding('cut')),
    ];
    expect(progress(look, readings).call).toBe('park');
    expect(progress(look, readings.slice(1)).call).toBe('repair');
    expect(progress(look, []).call).toBe('run');
    expect(progress('side-right.tread', readings).call).toBe('run');
  });
});

describe('[K] how far a measure is', () => {
  const lug = (value: number, more = {}) => read('left.track', 'lug-depth', mm(value), more);

  test('[K46] its own spot read or not, whatever the others are', () => {
    const readings = [lug(12), lug(13, { n: 2, spot: 1 }), lug(14, { n: 3, spot: 3 })];
    expect(['s1', 's2', 's3'].map((spot) => stateOf(`side-left.lug-depth.${spot}`, readings))).toEqual([
      'done',
      'todo',
      'done',
    ]);
    expect(stateOf('side-right.lug-depth.s1', readings)).toBe('todo');
  });

  test('[K47] not seen at its spot, or not seen at all, is open', () => {
    const hidden = read('left.track', 'lug-depth', unseen());
    expect(['s1', 's2'].map((spot) => stateOf(`side-left.lug-depth.${spot}`, [hidden]))).toEqual([
      'open',
      'open',
    ]);
    expect(stateOf('side-left.lug-depth.s1', [hidden, lug(12, { n: 2, spot: 1 })])).toBe('done');
  });

  test('[K48] readings of a spot are those of its place, item and spot, and no passes', () => {
    const step = stepOf('side-left.lug-depth.s2');
    const readings = [
      lug(1),
      lug(2, { n: 2 }),
      lug(3, { n: 9, spot: 2 }),
      read('right.track', 'lug-depth', mm(4), { n: 2 }),
      read('left.track', 'cord', finding('cut'), { n: 2 }),
      read('left.track', 'lug-depth', pass([]), { n: 2 }),
    ];
    expect(readingsAtSpot(step, readings)).toEqual([readings[1], readings[2]]);
  });
});

describe('[K] how far sag is', () => {
  test('[K49] measured, judged by eye, not seen or to be done', () => {
    const id = 'side-left.sag';
    expect(stateOf(id, [])).toBe('todo');
    expect(stateOf(id, [read('left.track', 'sag', sag(15))])).toBe('done');
    expect(stateOf(id, [read('left.track', 'sag', sag(15, { method: 'string' }))])).toBe('done');
    expect(stateOf(id, [read('left.track', 'sag-by-eye', finding('right'))])).toBe('done');
    expect(stateOf(id, [read('right.track', 'sag-by-eye', finding('right'))])).toBe('todo');
    expect(stateOf(id, [read('left.track', 'sag', unseen())])).toBe('open');
    expect(stateOf('side-left.tread', [read('left.track', 'sag-by-eye', finding('right'))])).toBe('todo');
  });

  test('[K53] judged by eye is enough on a short walk, for its own side', () => {
    const short = { walk: walkOf({ depth: 'short' }) };
    const byEye = (side: string) => [read(`${side}.track`, 'sag-by-eye', finding('slack'))];
    expect(stateOf('side-left.sag', byEye('left'), short)).toBe('done');
    expect(stateOf('side-left.sag', byEye('right'), short)).toBe('todo');
    expect(stateOf('side-left.sag', [read('left.track', 'cord', finding('cut'))], short)).toBe('todo');
  });

  test('[K54] a look that waits beside other things is to be done', () => {
    const takenBack = [{ place: read('left.track', 'cord', finding('cut')).place, item: 'cord', n: 1 }];
    expect(stateOf('side-left.tread', [], { takenBack, newer: takenBack })).toBe('partly');
  });
});

test('[K50] a step leads to the outcomes of its items at its parts', () => {
  const { outcomes } = score(inputOf({ machine }));
  const places = (id: string) =>
    new Set(outcomesOfStep(stepOf(id), byState(outcomes)).map(({ state }) => state.place));
  expect([...places('side-left.bottom-roller')]).toEqual([
    'left.bottom-roller.1',
    'left.bottom-roller.2',
    'left.bottom-roller.3',
  ]);
  expect([...places('side-left.tread')]).toEqual(['left.track']);
  expect(
    outcomesOfStep(stepOf('side-left.lug-depth.s1'), byState(outcomes)).map(({ state }) => state.item.id),
  ).toEqual(['lug-depth']);
});

describe('[K] the next step', () => {
  const left =
    (...ids: string[]) =>
    (step: Step) =>
      ids.includes(step.id);
  const [first, second, third] = steps();
  const next = (after: string | undefined, isLeft: (step: Step) => boolean) =>
    nextStep(steps(), after, isLeft)?.id;

  test('[K51] is the one after, else the first that is left, else none', () => {
    expect(next(first?.id, () => true)).toBe(second?.id);
    expect(next(second?.id, left(first?.id ?? ''))).toBe(first?.id);
    expect(next(undefined, left(third?.id ?? ''))).toBe(third?.id);
    expect(next(undefined, () => true)).toBe(first?.id);
    expect(next(first?.id, left())).toBeUndefined();
  });

  test('[K52] is not the step at hand, and a step that is not there counts as none', () => {
    expect(next(second?.id, left(second?.id ?? ''))).toBeUndefined();
    expect(next('nowhere', () => true)).toBe(first?.id);
  });
});
