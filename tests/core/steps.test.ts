import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { groupOf, isNeeded, isPassable, samplesNeeded } from '../../src/core/groups.ts';
import { postures } from '../../src/core/limits.ts';
import { slotsOf } from '../../src/core/slots.ts';
import { stepsOf, stopIds, type Step, type StopId } from '../../src/core/steps.ts';
import { corners } from '../../src/core/walk.ts';
import { law } from './law.ts';
import { machineOf, walkOf } from './made.ts';
import { machines, walks } from './random-walks.ts';

const anyWalk = fc.tuple(machines, walks, fc.constantFrom(...postures));
const stopsIn = (steps: readonly Step[]): readonly StopId[] => [...new Set(steps.map(({ stop }) => stop))];
/** The stops as they come, one that is come back to again. */
const runsOf = (steps: readonly Step[]): readonly StopId[] =>
  steps.filter(({ stop }, i) => steps[i - 1]?.stop !== stop).map(({ stop }) => stop);
const raised: readonly StopId[] = ['raised-left', 'raised-right'];

/** What a step asks: the place of each item that its reading or pass is about, and which sample of it. */
const askedBy = (step: Step): readonly string[] =>
  step.items.flatMap(({ id }) => {
    const places =
      step.numbers.length > 0
        ? step.numbers.map((number) => `${step.side}.${step.component}.${number}`)
        : [`${step.side}.${step.component}`];
    return places.map((place) => `${place}|${id}|${step.spot}`);
  });

describe('[K] every question of a walk', () => {
  test('[K20] every needed item of every part and sample is asked exactly once, and nothing else', () => {
    law(
      fc.property(anyWalk, ([machine, walk, posture]) => {
        const wanted = slotsOf(machine)
          .filter(({ item }) => isNeeded(item, walk))
          .flatMap(({ item, place }) =>
            Array.from(
              { length: isPassable(item) ? 1 : samplesNeeded(item, walk) },
              (_, i) => `${place}|${item.id}|${i + 1}`,
            ),
          );
        expect(stepsOf(machine, walk, posture).flatMap(askedBy).sort()).toEqual(wanted.sort());
      }),
      500,
    );
  });

  test('[K21] ids are unique, and the same each time', () => {
    law(
      fc.property(anyWalk, ([machine, walk, posture]) => {
        const ids = stepsOf(machine, walk, posture).map(({ id }) => id);
        expect(new Set(ids).size).toBe(ids.length);
        expect(stepsOf(machine, walk, posture).map(({ id }) => id)).toEqual(ids);
        for (const id of ids) expect(id).toMatch(/^[a-z0-9.-]{3,80}$/);
      }),
    );
  });

  test('[K22] the stops come in walking order, each once', () => {
    law(
      fc.property(anyWalk, ([machine, walk, posture]) => {
        const steps = stepsOf(machine, walk, posture);
        const runs = runsOf(steps);
        expect(runs).toEqual(stopsIn(steps));
        for (const stop of runs) expect(stopIds).toContain(stop);
      }),
    );
  });

  test('[K23] never a third raise: each side is raised at most once, the left before the right, both after the ground', () => {
    law(
      fc.property(anyWalk, ([machine, walk, posture]) => {
        const stops = runsOf(stepsOf(machine, walk, posture));
        const up = stops.filter((stop) => raised.includes(stop));
        expect(raised.filter((stop) => up.includes(stop))).toEqual(up);
        const first = stops.findIndex((stop) => raised.includes(stop));
        if (first >= 0)
          expect(stops.slice(first).filter((stop) => !raised.includes(stop) && stop !== 'end')).toEqual([]);
      }),
    );
  });

  test('[K24] a dozer is never raised', () => {
    law(
      fc.property(anyWalk, ([machine, walk, posture]) => {
        if (machine.kind === 'dozer')
          expect(stopsIn(stepsOf(machine, walk, posture)).filter((stop) => raised.includes(stop))).toEqual(
            [],
          );
      }),
    );
  });

  test('[K25] two people where the machine drives or a track turns, else the engine is off', () => {
    law(
      fc.property(anyWalk, ([machine, walk, posture]) => {
        for (const { stop, mode } of stepsOf(machine, walk, posture))
          expect(mode).toBe(stop === 'drive' || raised.includes(stop) ? 'two-people' : 'engine-off');
      }),
    );
  });

  test('[K26] a step that looks passes one group of one side, a measuring one asks one item', () => {
    law(
      fc.property(anyWalk, ([machine, walk, posture]) => {
        for (const step of stepsOf(machine, walk, posture)) {
          expect(
            step.items.every(
              (item) => item.component === step.component && groupOf(item, machine.shape) === step.group,
            ),
          ).toBe(true);
          expect(step.items.every(isPassable)).toBe(step.kind === 'look');
          if (step.kind !== 'look') expect(step.items).toHaveLength(1);
          expect(step.kind === 'sag').toBe(step.items[0]?.ask.kind === 'sag');
          expect(step.place.startsWith(`${step.side}.${step.component}`)).toBe(true);
        }
      }),
    );
  });
});

describe('[K] the way round', () => {
  const ground = (corner: (typeof corners)[number]) =>
    stopsIn(stepsOf(machineOf('rubber-cored'), walkOf({ corner, depth: 'short' }), 'ground'));

  test.each([
    ['front-left', ['front-left', 'side-left', 'rear-left', 'rear-right', 'side-right', 'front-right']],
    ['rear-left', ['rear-left', 'rear-right', 'side-right', 'front-right', 'front-left', 'side-left']],
    ['rear-right', ['rear-right', 'side-right', 'front-right', 'front-left', 'side-left', 'rear-left']],
    ['front-right', ['front-right', 'front-left', 'side-left', 'rear-left', 'rear-right', 'side-right']],
  ] as const)('[K27] from the %s corner: %j', (corner, stops) => {
    expect(ground(corner)).toEqual(stops);
  });

  test('[K28] a drive comes first, then a track that is off, and the machine as a whole last', () => {
    const walk = walkOf({ start: 'track-off', opened: ['drift'] });
    const stops = stopsIn(stepsOf(machineOf('rubber-cored'), walk, 'raised'));
    expect(stops.slice(0, 3)).toEqual(['drive', 'off', 'front-left']);
    expect(stops.slice(-3)).toEqual(['raised-left', 'raised-right', 'end']);
  });

  test('[K29] a short walk on the ground raises nothing', () => {
    expect(stopsIn(stepsOf(machineOf('steel'), walkOf({ depth: 'short' }), 'ground'))).not.toEqual(
      expect.arrayContaining([...raised]),
    );
  });

  test('[K30] sag is read where its posture says', () => {
    const at = (posture: 'ground' | 'raised', kind: 'excavator' | 'dozer' = 'excavator') =>
      stepsOf(machineOf('steel', {}, kind), walkOf({ depth: 'short' }), posture)
        .filter((step) => step.kind === 'sag')
        .map(({ stop }) => stop);
    expect(at('ground')).toEqual(['side-left', 'side-right']);
    expect(at('raised')).toEqual(['raised-left', 'raised-right']);
    expect(at('raised', 'dozer')).toEqual(['side-left', 'side-right']);
  });
});

describe('[K] the steps of a stop', () => {
  const machine = machineOf('steel', { bottomRollers: 2 });
  const steps = () => stepsOf(machine, walkOf({ opened: ['roller-tread', 'track-off'] }), 'raised');
  const at = (stop: StopId) => steps().filter((step) => step.stop === stop);

  test('[K31] sizes come before looks, sample by sample and part by part', () => {
    expect(at('side-left').map(({ id }) => id)).toEqual([
      'side-left.link-height.s1',
      'side-left.link-height.s2',
      'side-left.pitch',
      'side-left.bushing-od.s1',
      'side-left.bushing-od.s2',
      'side-left.grouser.s1',
      'side-left.links',
      'side-left.shoes',
      'side-left.carrier-roller',
      'side-left.roller-tread.1',
      'side-left.roller-tread.2',
      'side-left.bottom-roller',
      'side-left.frame',
    ]);
  });

  test('[K32] a look at counted parts covers them all, a measure one of them', () => {
    const look = steps().find(({ id }) => id === 'side-left.bottom-roller');
    expect(look).toMatchObject({
      kind: 'look',
      place: 'left.bottom-roller',
      numbers: [1, 2],
      pass: 'pass-bottom-roller',
      spot: 1,
      side: 'left',
    });
    const measure = steps().find(({ id }) => id === 'side-left.roller-tread.2');
    expect(measure).toMatchObject({
      kind: 'measure',
      place: 'left.bottom-roller.2',
      numbers: [2],
      pass: 'pass-bottom-roller',
      spot: 1,
      group: 'bottom-roller',
    });
    expect(steps().find(({ id }) => id === 'side-left.link-height.s2')).toMatchObject({
      place: 'left.track',
      numbers: [],
      spot: 2,
    });
  });

  test('[K33] a raised look is passed apart from the one on the ground', () => {
    expect(at('raised-right').map(({ id, pass }) => [id, pass])).toEqual([
      ['raised-right.sag', 'pass-links'],
      ['raised-right.bottom-roller', 'pass-bottom-roller-raised'],
    ]);
  });

  test('[K34] a track that is off is looked at on both sides', () => {
    expect(at('off').map(({ id, place, pass }) => [id, place, pass])).toEqual([
      ['off.off.left', 'left.track', 'pass-off'],
      ['off.off.right', 'right.track', 'pass-off'],
    ]);
  });

  test('[K35] the front has idler and adjuster, the rear sprocket and motor', () => {
    expect(at('front-right').map(({ group }) => group)).toEqual(['idler', 'adjuster']);
    expect(at('rear-left').map(({ group, place }) => [group, place])).toEqual([
      ['sprocket', 'left.sprocket'],
      ['motor', 'left.motor'],
    ]);
    expect(at('end').map(({ place }) => place)).toEqual(['whole.machine']);
  });
});
