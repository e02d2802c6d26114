import { describe, expect, test } from 'vitest';
import { sidesOf } from '../../src/core/clash.ts';
import { score } from '../../src/core/score.ts';
import type { Condition } from '../../src/core/rules.ts';
import type { ClashSide, PlacedReading } from '../../src/core/states.ts';
import { shownCall } from '../../src/core/verdict.ts';
import {
  entryOf,
  finding,
  inputOf,
  limitAt,
  mm,
  openKindsOf,
  outcomeAt,
  pass,
  read,
  ruleOf,
  rulesOf,
  sheetOf,
  unseen,
} from './made.ts';

const is = (id: string, ...findings: string[]): Condition => ({ finding: id, is: findings });
const rules = rulesOf([
  ruleOf('cord.showing', 'cord', is('cord', 'showing'), 'replace', 'work'),
  ruleOf('cord.rust', 'cord', is('cord', 'rust-under'), 'recheck', 'move-only'),
  ruleOf('cord.cut', 'cord', is('cord', 'cut'), 'park', 'nothing'),
  ruleOf('edges.cut', 'edges', is('edges', 'cut'), 'repair', 'work'),
  ruleOf('both', 'bulge', { all: [is('cord', 'cut'), is('edges', 'cut')] }, 'park', 'nothing'),
]);
const cord = (name: string) => read('left.track', 'cord', finding(name));
const edges = (name: string) => read('left.track', 'edges', finding(name));
const bulge = read('left.track', 'bulge', finding('none'));
const removed = ({ place, item, n }: PlacedReading): ClashSide => ({ place, item, n });

const scored = (readings: PlacedReading[], clashes: ClashSide[], more: Parameters<typeof inputOf>[0] = {}) =>
  score(inputOf({ sheet: sheetOf([]), rules, readings, clashes, ...more }));
const cordOf = (...given: Parameters<typeof scored>) => outcomeAt(scored(...given), 'left.track', 'cord');

describe('[N4] a clash', () => {
  test.each([
    ['none', 'cut', 'park', 'nothing'],
    ['cut', 'none', 'park', 'nothing'],
    ['showing', 'rust-under', 'replace', 'move-only'],
    ['rust-under', 'showing', 'replace', 'move-only'],
    ['none', 'none', 'run', 'work'],
  ])('[V110] of cord %s and cord %s: %s, %s, and open', (shown, other, call, meanwhile) => {
    const outcome = cordOf([cord(shown)], [cord(other)]);
    expect(outcome).toMatchObject({ atLeast: call, meanwhile });
    expect(openKindsOf(outcome)).toEqual(['clash']);
  });

  test('[V111] gives the reasons of both sides, the worse first, and the state of the worse', () => {
    const outcome = cordOf([cord('showing')], [cord('cut')]);
    expect(outcome.reasons.map(({ rule }) => rule)).toEqual(['cord.cut', 'cord.showing']);
    expect(outcome.state.finding).toBe('cut');
    expect(cordOf([cord('cut')], [cord('showing')]).state.finding).toBe('cut');
    for (const [one, other] of [
      ['showing', 'rust-under'],
      ['rust-under', 'showing'],
    ] as const)
      expect(cordOf([cord(one)], [cord(other)]).state.finding).toBe('showing');
  });

  test('[V124] of one call takes the state of the stricter meanwhile', () => {
    const limited = rulesOf([
      ruleOf('a', 'cord', is('cord', 'showing'), 'replace', 'work'),
      ruleOf('b', 'cord', is('cord', 'cut'), 'replace', 'light-work'),
    ]);
    expect(cordOf([cord('showing')], [cord('cut')], { rules: limited }).state.finding).toBe('cut');
    expect(cordOf([cord('cut')], [cord('showing')], { rules: limited }).state.finding).toBe('cut');
  });

  test('[V125] says a reason once, with the figures of the worse side, and every note of both', () => {
    const soft = { mark: 'estimate' as const, text: '' };
    const sheet = sheetOf([entryOf('lug-depth', 20, [limitAt(10, { source: soft })])]);
    const worn = (percent: number, call: 'recheck' | 'replace') =>
      ruleOf(`at.${percent}`, 'lug-depth', { worn: 'lug-depth', op: '>=', percent }, call, 'work', {
        gap: percent > 80,
      });
    const readings = [12, 9].map((value) => read('left.track', 'lug-depth', mm(value)));
    const [shown, other] = readings;
    for (const [a, b] of [
      [shown, other],
      [other, shown],
    ]) {
      if (!a || !b) continue;
      const walk = scored([a], [b], { sheet, rules: rulesOf([worn(50, 'recheck'), worn(100, 'replace')]) });
      const outcome = outcomeAt(walk, 'left.track', 'lug-depth');
      expect(outcome.reasons.map(({ rule, params }) => [rule, params['mm']])).toEqual([
        ['at.100', 9],
        ['at.50', 9],
      ]);
      expect(outcome.notes.map(({ kind }) => kind)).toEqual(['estimate', 'band-gap']);
    }
  });

  test('[V112] of three sides counts the worst', () => {
    expect(cordOf([cord('none')], [cord('showing'), cord('cut')])).toMatchObject({
      atLeast: 'park',
      meanwhile: 'nothing',
    });
  });

  test('[V113] with a removal keeps what the other side found', () => {
    const takenBack = [removed(cord('cut'))];
    const outcome = cordOf([], [cord('cut')], { takenBack });
    expect(outcome.atLeast).toBe('park');
    expect(openKindsOf(outcome)).toEqual(['taken-back', 'clash']);
  });

  test('[V114] with a removal on the other side is open as if it were removed', () => {
    const outcome = cordOf([cord('none')], [removed(cord('none'))]);
    expect(outcome.atLeast).toBe('run');
    expect(openKindsOf(outcome)).toContain('clash');
    expect(shownCall(scored([cord('none')], [removed(cord('none'))]).verdict)).toBe('open');
  });

  test('[V115] of one item leaves the others as they are', () => {
    const walk = scored([cord('none'), edges('cut')], [cord('cut')]);
    expect(outcomeAt(walk, 'left.track', 'edges')).toMatchObject({ atLeast: 'repair', open: [] });
  });

  test('[V116] of two items: a rule that looks at both sees every pair of sides', () => {
    const readings = [cord('cut'), edges('sound'), bulge];
    const walk = scored(readings, [cord('none'), edges('cut')]);
    // Cut cord is on the one side and cut edges are on the other: only crosswise do both meet.
    expect(outcomeAt(walk, 'left.track', 'bulge')).toMatchObject({ atLeast: 'park', meanwhile: 'nothing' });
    expect(outcomeAt(walk, 'left.track', 'edges').atLeast).toBe('repair');
  });

  test('[V117] what one side waits for is open', () => {
    const walk = scored([cord('none'), edges('cut'), bulge], [read('left.track', 'cord', unseen())]);
    expect(outcomeAt(walk, 'left.track', 'bulge').open).toEqual([
      { kind: 'needs', params: { item: 'cord' } },
    ]);
  });

  test('[V118] of passes: what only one of them speaks for is open', () => {
    const passed = (...items: string[]) => read('left.track', 'pass-tread', pass(items));
    const walk = scored([passed('cord', 'edges')], [passed('edges')]);
    expect(openKindsOf(outcomeAt(walk, 'left.track', 'cord'))).toEqual(['clash', 'not-read']);
    expect(openKindsOf(outcomeAt(walk, 'left.track', 'edges'))).toEqual(['clash']);
  });

  test('[V119] is the same whichever side is displayed', () => {
    const [a, b] = [
      scored([cord('showing')], [cord('rust-under')]),
      scored([cord('rust-under')], [cord('showing')]),
    ];
    expect([a.verdict.atLeast, a.verdict.meanwhile]).toEqual([b.verdict.atLeast, b.verdict.meanwhile]);
  });
});

describe('[N4] the sides of clashes', () => {
  const readings = ['a', 'b', 'c', 'd', 'e'].map((item) => read('left.track', item, finding('shown')));
  const others = readings.map((each) => read('left.track', each.item, finding('other')));
  const sides = (count: number) =>
    sidesOf(inputOf({ readings, clashes: others.slice(0, count) })).map((side) =>
      [...side.readings]
        .sort((x, y) => x.item.localeCompare(y.item))
        .map(({ reading }) => (reading.what.kind === 'finding' ? reading.what.finding.slice(0, 1) : ''))
        .join(''),
    );

  test('[V120] without a clash there is one, as it was', () => {
    expect(sides(0)).toEqual(['sssss']);
  });

  test('[V121] up to sixteen walks are every combination', () => {
    expect(sides(2).sort()).toEqual(['oosss', 'ossss', 'sosss', 'sssss']);
    expect(new Set(sides(4)).size).toBe(16);
  });

  test('[V122] of more, each other side alone and all together', () => {
    expect(sides(5)).toEqual(['sssss', 'ossss', 'sosss', 'ssoss', 'sssos', 'sssso', 'ooooo']);
  });

  test('[V123] the displayed one comes first and stays untouched', () => {
    const input = inputOf({ readings, clashes: others.slice(0, 1) });
    expect(sidesOf(input)[0]?.readings).toEqual(readings);
  });
});
