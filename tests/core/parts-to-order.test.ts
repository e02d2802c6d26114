import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { callRank } from '../../src/core/calls.ts';
import { jobTraits } from '../../src/core/job-kinds.ts';
import { jobsOf } from '../../src/core/jobs.ts';
import { makeKey, type Id, type PlaceSide } from '../../src/core/keys.ts';
import type { FittedFact, Machine, Shape, TrackKind } from '../../src/core/machine.ts';
import { items } from '../../src/core/items.ts';
import type { PartFact } from '../../src/core/part-facts.ts';
import { factAsks, partTraits, type FactName, type PartKind } from '../../src/core/part-kinds.ts';
import { partsToOrder, type OrderLine, type PartsToOrder } from '../../src/core/parts-to-order.ts';
import type { Observed } from '../../src/core/readings.ts';
import { recordFault } from '../../src/core/records.ts';
import { assert } from '../../src/core/result.ts';
import { score } from '../../src/core/score.ts';
import { slotsOf } from '../../src/core/slots.ts';
import type { PlacedReading, ScoreInput } from '../../src/core/states.ts';
import type { RecordValue } from '../../src/core/versions.ts';
import type { Work } from '../../src/core/walk.ts';
import { builtIn } from '../../src/reference/built-in.ts';
import { demoMap, mini, outlookAt, plannedOf, steel } from './ahead-made.ts';
import { lawOfWalks } from './law.ts';
import { finding, inputOf, machineOf, mm, read, ruleOf, rulesOf, sheetOf, walkOf } from './made.ts';
import { randomWalks } from './random-walks.ts';

const rules = Object.values(builtIn.rules)[0];

interface More {
  readonly machine?: Partial<Machine>;
  readonly shape?: Partial<Shape>;
  readonly work?: readonly Work[];
  readonly heldOff?: boolean;
  readonly sheets?: ScoreInput['sheets'];
}

function ordered(input: ScoreInput, { work = [], heldOff = false }: More = {}): PartsToOrder {
  const { outcomes } = score(input);
  const { machine, sheets } = input;
  const why = heldOff ? ({ kind: 'held-off' } as const) : ({ kind: 'no-prices' } as const);
  const open = jobsOf(machine.shape, outcomes, [], 2000).map((job) => ({ job, why }));
  const tools = { tape: 0.5 };
  return partsToOrder({ machine, outcomes, sheets, work, tools, plan: { open }, walk: 'walk/now' });
}

type Read = readonly [place: string, item: string, what: Observed];

const orderFor = (track: TrackKind, readings: readonly Read[], more: More = {}): PartsToOrder =>
  ordered(
    inputOf({
      machine: { ...machineOf(track, more.shape), ...more.machine },
      readings: readings.map(([place, item, what]) => read(place, item, what)),
      ...(rules && { rules }),
      ...(more.sheets && { sheets: more.sheets }),
    }),
    more,
  );

const linesOf = ({ groups }: PartsToOrder): readonly OrderLine[] => groups.flatMap(({ lines }) => lines);

function lineOf(order: PartsToOrder, id: string): OrderLine {
  const found = linesOf(order).find((line) => line.id === id);
  assert(
    found,
    `no line ${id} among ${linesOf(order)
      .map((line) => line.id)
      .join(', ')}`,
  );
  return found;
}

function factOf(line: OrderLine, name: FactName): PartFact {
  const found = line.facts.find((fact) => fact.name === name);
  assert(found, `no fact ${name}`);
  return found;
}

const short = (order: PartsToOrder) => linesOf(order).map(({ id, count }) => [id, count]);

const cases: readonly (readonly [TrackKind, string, string, Observed, readonly unknown[]])[] = [
  ['rubber-cored', 'left.track', 'cord', finding('cut'), [['left.renew-track.rubber-track', 1]]],
  [
    'rubber-cored',
    'right.sprocket',
    'sprocket-teeth',
    finding('hooked'),
    [
      ['right.renew-sprocket.sprocket', 1],
      ['right.renew-sprocket.sprocket-bolts', undefined],
    ],
  ],
  [
    'steel',
    'left.track',
    'links-cracked',
    finding('several'),
    [
      ['left.renew-chain.chain', 1],
      ['left.renew-chain.shoe-bolts', undefined],
    ],
  ],
  ['steel', 'left.track', 'links-cracked', finding('one'), [['left.change-link.chain-link', 1]]],
  ['steel', 'left.track', 'shoes', finding('bent', { count: 3 }), [['left.mend-other.shoe', 3]]],
  ['steel', 'left.track', 'shoe-bolts', finding('one-loose'), [['left.tighten-bolts.shoe-bolts', undefined]]],
  ['steel', 'right.idler.1', 'idler-rim', finding('cracked'), [['right.renew-idler.idler', 1]]],
  ['steel', 'left.adjuster', 'recoil-spring', finding('broken'), [['left.renew-spring.recoil-spring', 1]]],
  ['steel', 'left.adjuster', 'adjuster-leak', finding('weeping'), [['left.mend-adjuster.adjuster-seals', 1]]],
  [
    'steel',
    'left.adjuster',
    'adjuster-leak',
    finding('valve-damaged'),
    [['left.mend-adjuster.grease-valve', 1]],
  ],
  ['steel', 'left.motor', 'motor-oil', finding('leaking'), [['left.mend-motor.motor-seals', 1]]],
];

describe('[N11] the parts that a job takes', () => {
  test.each(cases)('[PO1] %s, %s: %s %j is %j', (track, place, item, what, lines) => {
    expect(short(orderFor(track, [[place, item, what]]))).toEqual(lines);
  });

  test('[PO2] rollers of one side are one line with their numbers, of mixed flanges a line for each', () => {
    const flat: readonly Read[] = [3, 1].map((number) => [
      `left.bottom-roller.${number}`,
      'roller-flat',
      finding('flat'),
    ]);
    const alike = lineOf(orderFor('steel', flat), 'left.renew-bottom-roller.bottom-roller');
    expect([alike.count, alike.numbers, factOf(alike, 'flange').value]).toEqual([2, [1, 3], 'double']);
    const mixed = linesOf(orderFor('steel', flat, { shape: { flanges: 'mixed' } }));
    expect(mixed.map(({ numbers, count }) => [numbers, count])).toEqual([
      [[1], 1],
      [[3], 1],
      [[1, 3], undefined],
    ]);
    expect(mixed[0] && factOf(mixed[0], 'flange').how).toBe('missing');
    // The machine's record knows the flanges of its bottom rollers alone.
    const carrier = orderFor('steel', [['left.carrier-roller.1', 'carrier-turn', finding('seized')]]);
    expect(linesOf(carrier).map((line) => [line.kind, factOf(line, 'flange').how])).toEqual([
      ['carrier-roller', 'missing'],
    ]);
  });

  test('[PO3] a job that takes no part is said so', () => {
    const order = orderFor('rubber-cored', [['left.track', 'sag-by-eye', finding('slack')]]);
    expect([linesOf(order), order.partless.map(({ id }) => id)]).toEqual([[], ['left.adjust-sag']]);
  });

  test('[PO4] what goes with a part is counted from its facts, and open where one is missing', () => {
    const facts = { links: counted(44, 44), 'shoe-holes': counted(4) };
    const bolts = (fitted: Readonly<Record<string, FittedFact>>) =>
      lineOf(
        orderFor('steel', [['left.track', 'pin-walk', finding('walking')]], {
          machine: { fitted: [{ side: 'left', component: 'track', facts: fitted }] },
        }),
        'left.renew-chain.shoe-bolts',
      );
    expect([bolts(facts).count, bolts(facts).goesWith]).toEqual([176, true]);
    expect(bolts({ links: facts.links }).count).toBeUndefined();
    expect(bolts({ ...facts, links: counted(44, 45) }).count).toBeUndefined();
  });

  test('[PO5] the same part for two jobs of one visit is one line with both reasons', () => {
    const order = orderFor('steel', [
      ['left.track', 'pin-walk', finding('walking')],
      ['left.track', 'shoe-bolts', finding('too-few', { count: 3 })],
    ]);
    const bolts = linesOf(order).filter(({ kind }) => kind === 'shoe-bolts');
    expect(
      bolts.map(({ count, goesWith, jobs }) => [count, goesWith, jobs.map(({ kind }) => kind).sort()]),
    ).toEqual([[undefined, false, ['renew-chain', 'tighten-bolts']]]);
  });

  test('[PO37] the same part of other rollers is counted for each of them', () => {
    const bolts = (number: number) => {
      const readings: readonly Read[] = [
        ['left.bottom-roller.1', 'roller-flat', finding('flat')],
        [`left.bottom-roller.${number}`, 'roller-bolts', finding('missing', { count: 3 })],
      ];
      const facts = { bolts: counted(4) };
      const fitted = [{ side: 'left' as const, component: 'bottom-roller' as const, facts }];
      return linesOf(orderFor('steel', readings, { machine: { fitted } }))
        .filter(({ kind }) => kind === 'roller-bolts')
        .map(({ numbers, count }) => [numbers, count]);
    };
    expect(bolts(3)).toEqual([[[1, 3], 7]]);
    expect(bolts(1)).toEqual([[[1], 4]]);
  });

  test('[PO19] a new track over a worn sprocket is told so, unless the sprocket is on the list', () => {
    const told = (name: string) =>
      linesOf(
        orderFor('rubber-cored', [
          ['left.track', 'cord', finding('cut')],
          ['right.track', 'cord', finding('cut')],
          ['left.sprocket', 'sprocket-teeth', finding(name)],
        ]),
      )
        .filter(({ onWornSprocket }) => onWornSprocket)
        .map(({ side }) => side);
    expect([told('worn'), told('hooked'), told('good')]).toEqual([['left'], [], []]);
  });

  test('[PO6] a part that the person left out of the plan is left out here until it is put in', () => {
    const cut: readonly Read[] = [['left.track', 'cord', finding('cut')]];
    const [held] = linesOf(orderFor('rubber-cored', cut, { heldOff: true }));
    expect(held?.out).toBe(true);
    const line = 'left.renew-track.rubber-track';
    const put = { ordered: [{ line, walk: 'walk/now', out: false }] };
    expect(linesOf(orderFor('rubber-cored', cut, { heldOff: true, machine: put }))[0]?.out).toBe(false);
  });

  test('[PO7] part number and match stay for later walks, a count and a line left out do not', () => {
    const line = 'left.renew-track.rubber-track';
    const at = (walk: string) =>
      lineOf(
        orderFor('rubber-cored', [['left.track', 'cord', finding('cut')]], {
          machine: { ordered: [{ line, walk, partNumber: 'A 1', match: true, count: 2, out: true }] },
        }),
        line,
      );
    expect(at('walk/now')).toMatchObject({ partNumber: 'A 1', match: true, count: 2, counted: 1, out: true });
    expect(at('walk/before')).toMatchObject({ partNumber: 'A 1', match: true, count: 1, out: false });
  });
});

const counted = (value: number, again?: number): FittedFact => ({
  value,
  how: 'measured',
  ...(again !== undefined && { again }),
});

const cutLeft: readonly Read[] = [['left.track', 'cord', finding('cut')]];

/** The facts of the left rubber track of a machine. */
const trackLine = (machine: Partial<Machine>, more: More = {}): OrderLine =>
  lineOf(orderFor('rubber-cored', cutLeft, { machine, ...more }), 'left.renew-track.rubber-track');

const withFacts = (facts: Readonly<Record<string, FittedFact>>, more: Partial<Machine> = {}) => ({
  ...more,
  fitted: [{ side: 'left' as const, component: 'track', facts }],
});

const doubts: readonly (readonly [string, Partial<Machine>, FactName, string, readonly string[]])[] = [
  ['two counts that agree', withFacts({ links: counted(84, 84) }), 'links', 'measured', []],
  ['two counts that differ', withFacts({ links: counted(84, 83) }), 'links', 'measured', ['counts-differ']],
  ['one count', withFacts({ links: counted(84) }), 'links', 'measured', ['counted-once']],
  ['a number that was read', withFacts({ links: { value: 84, how: 'read' } }), 'links', 'read', []],
  [
    'a count beside another moulding',
    withFacts({ links: counted(83, 83) }, { left: { size: '300x52.5x84' } }),
    'links',
    'measured',
    ['not-as-moulded'],
  ],
  [
    'a worn edge',
    withFacts({ width: { value: 295, how: 'measured' } }, { left: { size: '300x52.5x84' } }),
    'width',
    'measured',
    [],
  ],
  [
    'another width',
    withFacts({ width: { value: 320, how: 'measured' } }, { left: { size: '300x52.5x84' } }),
    'width',
    'measured',
    ['not-as-moulded'],
  ],
  ['what the moulding says', { left: { size: '300 x 52.5 W x 84' } }, 'pitch', 'read', []],
  ['nothing', {}, 'links', 'missing', []],
];

describe('[N11] what a parts desk must know', () => {
  test.each(doubts)('[PO8] %s', (_name, machine, name, how, why) => {
    const fact = factOf(trackLine(machine), name);
    expect([fact.how, fact.doubts]).toEqual([how, why]);
  });

  test('[PO9] a pitch over several spaces shares the error of the tape between them', () => {
    const over = (spaces: number): PartFact =>
      factOf(
        trackLine(
          withFacts({
            pitch: { value: 52, how: 'measured', typed: `${52 * spaces}`, unit: 'mm', spaces },
          }),
        ),
        'pitch',
      );
    const [one, ten] = [over(1), over(10)];
    assert(one.uMm !== undefined && ten.uMm !== undefined, 'both have an uncertainty');
    expect(ten.uMm).toBeCloseTo(one.uMm / 10, 12);
    // 1 mm of tape in steps of 1 mm: √(0.5² + 1/12) mm (JCGM 100:2008, F.2.2.1), made up for the tape.
    expect(one.uMm).toBeCloseTo(Math.sqrt(0.25 + 1 / 12), 12);
  });

  test('[PO10] what is known of the other side is assumed for this one, what was assumed too', () => {
    const fitted = [
      {
        side: 'right' as const,
        component: 'track',
        facts: { tread: { value: 'turf', how: 'read' as const } },
      },
    ];
    expect(factOf(trackLine({ fitted }), 'tread')).toMatchObject({
      value: 'turf',
      how: 'assumed',
      from: 'other-side',
    });
    const cutRight: readonly Read[] = [['right.track', 'cord', finding('cut')]];
    const [there] = linesOf(
      orderFor('rubber-cored', cutRight, { machine: { left: { size: '300x52.5x84' } } }),
    );
    expect(there && factOf(there, 'moulding').how).toBe('assumed');
    expect(factOf(trackLine({ right: { size: '300x52.5x84' } }), 'moulding')).toMatchObject({
      how: 'assumed',
      from: 'other-side',
    });
  });

  test('[PO11] what the walk measured of a chain is offered as measured, the new size from the sheet as assumed', () => {
    const sheet = sheetOf([
      {
        item: 'pitch',
        unit: 'mm',
        new: { at: 154.3, source: { mark: 'entered', text: 'made up' } },
        limits: [],
      },
    ]);
    const pitch: Observed = { kind: 'pitch', totalMm: 632, links: 4, typed: '632', unit: 'mm' };
    const order = orderFor(
      'steel',
      [
        ['left.track', 'pitch', pitch],
        ['left.track', 'bushing-od', mm(48)],
        ['left.track', 'pin-walk', finding('walking')],
      ],
      { sheets: { left: sheet, right: sheet } },
    );
    const line = lineOf(order, 'left.renew-chain.chain');
    expect(factOf(line, 'pitch')).toMatchObject({ value: 158, how: 'measured', from: 'walk' });
    expect(factOf(line, 'bushing')).toMatchObject({ value: 48, how: 'measured', from: 'walk' });
    expect(factOf(line, 'pitch-new')).toMatchObject({ value: 154.3, how: 'assumed', from: 'sheet' });
  });

  test('[PO12] what was read of a part before another was fitted is questioned', () => {
    const machine = withFacts({ tread: { value: 'turf', how: 'read', on: '2026-01-05' } });
    const fittedOn = (on: string, side: 'left' | 'right'): readonly Work[] => [
      { v: 1, kind: 'fitted', component: 'track', side, on },
    ];
    const at = (work: readonly Work[]) => factOf(trackLine(machine, { work }), 'tread').doubts;
    expect(at(fittedOn('2026-02-01', 'left'))).toEqual(['before-fitted']);
    expect(at(fittedOn('2026-01-01', 'left'))).toEqual([]);
    expect(at(fittedOn('2026-02-01', 'right'))).toEqual([]);
  });

  test.each([
    ['what was entered', { value: 52.5, how: 'measured', typed: '210', unit: 'mm', spaces: 4 }, true],
    ['a count made twice', { value: 84, again: 83, how: 'measured' }, true],
    ['what a later version adds', { value: 'turf', how: 'read', colour: 'grey' }, true],
    ['a guess', { value: 84, how: 'guessed' }, false],
    ['less than nothing', { value: -84, how: 'measured' }, false],
    ['a list', { value: [84], how: 'read' }, false],
  ])('[PO36] a fact from outside: %s', (_name, fact, isFine) => {
    const fitted = [{ side: 'left', component: 'track', facts: { links: fact } }];
    const key = makeKey({ kind: 'machine', id: 'made-up' as Id });
    const fault = recordFault(key, { ...machineOf('rubber-cored'), fitted } as unknown as RecordValue);
    expect(fault === undefined).toBe(isFine);
  });

  test('[PO13] every fact is asked of some part, and every part has facts', () => {
    const asked = new Set<string>(Object.values(partTraits).flatMap(({ facts }) => [...facts]));
    expect([...asked].sort()).toEqual(Object.keys(factAsks).sort());
    for (const { facts } of Object.values(partTraits)) expect(facts.length).toBeGreaterThan(0);
  });
});

const swap = { left: 'right', right: 'left', whole: 'whole' } as const;
const swapped = (text: string): string =>
  text.replace(/^(left|right)\b/, (side) => swap[side as 'left' | 'right']);
const mirrored = (readings: readonly PlacedReading[]): readonly PlacedReading[] =>
  readings.map((each) => ({ ...each, place: swapped(each.place) as PlacedReading['place'] }));

/** What a line comes to on its side. */
const told = ({ id, kind, numbers, count, goesWith, facts }: OrderLine) => ({
  id: id.replace(/^(left|right)/, 'side'),
  told: [kind, numbers, count, goesWith, facts],
});
const onSide = (order: PartsToOrder, side: PlaceSide) =>
  linesOf(order)
    .filter((line) => line.side === side)
    .map(told)
    .sort((a, b) => (a.id < b.id ? -1 : 1));

function checkLines(order: PartsToOrder): void {
  expect(new Set(linesOf(order).map(({ id }) => id)).size).toBe(linesOf(order).length);
  for (const { count, jobs } of linesOf(order)) {
    expect(count === undefined || (Number.isInteger(count) && count >= 0)).toBe(true);
    expect(jobs.some(({ outcomes, worn }) => outcomes.length + worn.length > 0)).toBe(true);
  }
}

describe('[N11] laws of the parts to order', () => {
  // A walk is scored anew for each case.
  const runs = 60;

  test('[PO14] every part that is to be replaced has its line', () => {
    const replaced = (input: ScoreInput) =>
      score(input).outcomes.filter(({ atLeast }) => atLeast === 'replace');
    lawOfWalks(
      fc.property(randomWalks, ({ input }) => {
        const order = ordered(input);
        for (const { state } of replaced(input)) {
          const serves = ({ side, jobs }: OrderLine): boolean =>
            side === state.side &&
            jobs.some(
              ({ kind, outcomes }) =>
                jobTraits[kind].mends.includes(state.item.id) ||
                outcomes.some((outcome) => outcome.state.item.id === state.item.id),
            );
          expect(linesOf(order).some(serves), `${state.place} ${state.item.id}`).toBe(true);
        }
        expect(order.partless.filter(({ call }) => call === 'replace')).toEqual([]);
      }),
      runs,
    );
  });

  test('[PO15] no line is without a reason, none is twice, no count is below nothing', () => {
    lawOfWalks(
      fc.property(randomWalks, ({ input }) => checkLines(ordered(input))),
      runs,
    );
  });

  test('[PO16] mirrored findings order the same parts for the other side', () => {
    lawOfWalks(
      fc.property(randomWalks, ({ input }) => {
        const [here, there] = [ordered(input), ordered({ ...input, readings: mirrored(input.readings) })];
        expect(onSide(there, 'right')).toEqual(onSide(here, 'left'));
        expect(onSide(there, 'left')).toEqual(onSide(here, 'right'));
      }),
      runs,
    );
  });

  test('[PO17] every job that is planned, or asked for and not planned, has its lines or is said to take no part', () => {
    for (const walk of [mini, steel]) {
      const outlook = outlookAt(demoMap(), walk);
      const plan = plannedOf(outlook);
      const machine = demoMap().get(walk === mini ? 'demo/machine/mini' : 'demo/machine/steel') as Machine;
      const order = partsToOrder({ machine, outcomes: [], sheets: {}, work: [], tools: {}, plan, walk });
      checkLines(order);
      const planned = plan.visits.flatMap(({ jobs }) => jobs.map(({ job }) => job.id));
      const asked = plan.later.filter(({ job }) => callRank(job.call) >= callRank('repair'));
      const served = [...linesOf(order).flatMap(({ jobs }) => jobs), ...order.partless].map(({ id }) => id);
      expect([...new Set(served)].sort()).toEqual(
        [
          ...new Set([...planned, ...asked.map(({ job }) => job.id), ...plan.open.map(({ job }) => job.id)]),
        ].sort(),
      );
      const hours = order.groups.flatMap(({ when }) => (when.kind === 'visit' ? [when.hours] : []));
      expect(hours).toEqual([...hours].sort((a, b) => a - b));
    }
  });

  test('[PO27] what the plan leaves for later is ordered where the walk asks for it, and not for wear alone', () => {
    const machine = demoMap().get('demo/machine/mini') as Machine;
    const plan = plannedOf(outlookAt(demoMap(), mini));
    const [first] = plan.visits.flatMap(({ jobs }) => jobs);
    assert(first, 'a job');
    const groups = (call: 'run' | 'repair' | 'replace') => {
      const later = [{ ...first, job: { ...first.job, call } }];
      const left = { ...plan, visits: [], later, open: [] };
      const input = { machine, outcomes: [], sheets: {}, work: [], tools: {}, plan: left, walk: mini };
      return partsToOrder(input).groups.map(({ when }) => when.kind);
    };
    expect([groups('run'), groups('repair'), groups('replace')]).toEqual([[], ['later'], ['later']]);
  });

  test('[PO28] a part that only somebody’s own rule replaces is ordered by what was found', () => {
    const own = ruleOf(
      'own.frame',
      ['track-frame'],
      { finding: 'track-frame', atLeast: 'bent' },
      'replace',
      'work',
    );
    const readings = [read('left.frame', 'track-frame', finding('bent'))];
    const order = ordered(inputOf({ readings, rules: rulesOf([own]) }));
    expect(short(order)).toEqual([['left.mend-frame.other', undefined]]);
    expect(order.partless).toEqual([]);
  });

  test('[PO18] by the starting rules every finding that asks for a part or more has a line or takes none', () => {
    const kinds = new Set<PartKind>();
    for (const track of ['rubber-cored', 'steel-pads'] as const) {
      const machine = machineOf(track, { slidePlate: true, suspension: 'torsion' });
      const one = slotsOf(machine).filter(({ side, number = 1 }) => side !== 'right' && number === 1);
      for (const { item, place } of one) {
        if (item.ask.kind !== 'finding') continue;
        for (const name of item.ask.findings) {
          const readings = [read(place, item.id, finding(name))];
          const input = {
            machine,
            walk: walkOf({ opened: items.map(({ id }) => id) }),
            sheets: {},
            readings,
          };
          const order = ordered({ ...input, ...(rules && { rules }) });
          checkLines(order);
          for (const { kind } of linesOf(order)) kinds.add(kind);
        }
      }
    }
    // Wear alone asks for the others, or a rule of somebody’s own.
    const others = Object.keys(partTraits).filter((kind) => !kinds.has(kind as PartKind));
    expect(others.sort()).toEqual(['joint-seals', 'master-joint', 'other', 'pads', 'shoes']);
  });
});
