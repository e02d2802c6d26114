import { describe, expect, test } from 'vitest';
import { plausibility } from '../../src/core/plausible.ts';
import {
  bandOf,
  crack,
  entryOf,
  inputOf,
  item,
  limitAt,
  mm,
  outcomeAt,
  read,
  rulesOf,
  sag,
  sheetOf,
} from './made.ts';
import { score } from '../../src/core/score.ts';

const why = (id: string, value: number, fresh?: number, limit: Parameters<typeof entryOf>[2] = []) =>
  plausibility(item(id), { mm: value, uMm: 0 }, fresh === undefined ? undefined : entryOf(id, fresh, limit))
    ?.why;

describe('[N3] a size that cannot well be right', () => {
  test.each([
    ['lug-depth', -0.01, 'negative'],
    ['lug-depth', 0, undefined],
    ['lug-depth', 90, undefined],
    ['lug-depth', 90.01, 'range'],
    ['link-height', 19.9, 'range'],
    ['link-height', 20, undefined],
    ['sag', 700.1, 'range'],
    ['cord', 1e9, undefined],
  ])('[W50] %s of %d mm, without a sheet: %s', (id, value, expected) => {
    expect(why(id, value)).toBe(expected);
  });

  test.each([
    [88, undefined],
    [87.9, 'pitch'],
    [112, undefined],
    [112.1, 'pitch'],
    [80, 'pitch'],
  ])('[W51] a pitch of %d mm on a new one of 100 mm: %s', (value, expected) => {
    // The limit is put far off, so that the percentage has nothing to say.
    expect(why('pitch', value, 100, 150)).toBe(expected);
  });

  test.each([
    ['lug-depth', 23, undefined],
    ['lug-depth', 23.1, 'percent'],
    ['lug-depth', 0, undefined],
  ])('[W52] %s of %d mm on 20 → 10 mm: %s', (id, value, expected) => {
    expect(why(id, value, 20, 10)).toBe(expected);
  });

  test.each([
    [52, undefined],
    [52.5, undefined],
    [52.6, 'percent'],
  ])('[W53] a bushing of %d mm on 40 → 45 mm, up to 250 % worn: %s', (value, expected) => {
    expect(why('bushing-od', value, 40, 45)).toBe(expected);
  });

  test('[W54] without a new size there is no percentage to ask about', () => {
    const { new: _, ...bare } = entryOf('lug-depth', 20, 10);
    expect(plausibility(item('lug-depth'), { mm: 60, uMm: 0 }, bare)).toBeUndefined();
    expect(why('lug-depth', 60, 20)).toBeUndefined();
  });

  test('[W55] the load decides which limit the percentage is of', () => {
    const entry = entryOf('bushing-od', 60, [
      limitAt(58, { loads: ['heavy'] }),
      limitAt(50, { loads: ['light'] }),
    ]);
    const size = { mm: 50, uMm: 0 };
    expect(plausibility(item('bushing-od'), size, entry, 'light')).toBeUndefined();
    expect(plausibility(item('bushing-od'), size, entry, 'heavy')?.why).toBe('percent');
    expect(plausibility(item('bushing-od'), size, entry)?.why).toBe('percent');
  });

  test('[W56] the question carries the figures that it is about', () => {
    const of = (id: string, value: number, entry = entryOf(id, 20, 10)) =>
      plausibility(item(id), { mm: value, uMm: 0 }, entry);
    expect(of('lug-depth', -1)).toEqual({ why: 'negative', mm: -1 });
    expect(of('lug-depth', 95)).toEqual({ why: 'range', mm: 95, leastMm: 0, mostMm: 90 });
    expect(of('pitch', 105, entryOf('pitch', 5, 6, { unit: 'in' }))).toEqual({
      why: 'pitch',
      mm: 105,
      newMm: 127,
    });
    expect(of('lug-depth', 30)).toEqual({ why: 'percent', mm: 30, percent: -100, newMm: 20, limitMm: 10 });
  });
});

describe('[N4] a questioned reading', () => {
  const rules = rulesOf([]);
  const sheet = sheetOf([entryOf('lug-depth', 20, 10)], [bandOf(10, 20)]);
  const scored = (...readings: ReturnType<typeof read>[]) => score(inputOf({ sheet, rules, readings }));

  test('[W57] is open with its question and not known', () => {
    const { state } = outcomeAt(scored(read('left.track', 'lug-depth', mm(95))), 'left.track', 'lug-depth');
    expect(state.known).toBe(false);
    expect(state.open).toEqual([
      { kind: 'questioned', params: { why: 'range', mm: 95, leastMm: 0, mostMm: 90 } },
    ]);
  });

  test('[W58] counts once somebody has confirmed it', () => {
    const confirmed = { confirmed: true };
    const walk = scored(
      read('left.track', 'lug-depth', mm(95), confirmed),
      read('left.track', 'crack', crack(5000, 10), confirmed),
      read('left.track', 'sag', sag(900), confirmed),
    );
    for (const id of ['lug-depth', 'crack', 'sag'])
      expect(outcomeAt(walk, 'left.track', id).state.known).toBe(true);
  });

  test('[W59] leaves the other samples standing', () => {
    const { state } = outcomeAt(
      scored(read('left.track', 'lug-depth', mm(95)), read('left.track', 'lug-depth', mm(15), { n: 2 })),
      'left.track',
      'lug-depth',
    );
    expect(state.sampled?.worst).toMatchObject({ mm: 15, spot: 2 });
    expect(state.open.map(({ kind }) => kind)).toEqual(['questioned', 'not-read']);
  });

  test.each([
    ['a crack of negative length', crack(-1, 5), 'crack'],
    ['a crack of negative depth', crack(5, -1), 'crack'],
    ['a crack longer than a track', crack(1001, 5), 'crack'],
    ['a crack deeper than a track', crack(5, 1001), 'crack'],
    ['a negative sag', sag(-1), 'sag'],
    ['a sag of which one span cannot be', sag([15, 15, 701]), 'sag'],
    ['a sag whose mean alone looks right', sag([-10, 40]), 'sag'],
  ])('[W60] %s is asked about', (_, what, id) => {
    const { state } = outcomeAt(scored(read('left.track', id, what)), 'left.track', id);
    expect(state.known).toBe(false);
    expect(state.open.map(({ kind }) => kind)).toEqual(['questioned']);
  });
});
