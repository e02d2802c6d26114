import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { scoreFile } from '../../src/cli/score.ts';
import { demoFile } from '../../src/cli/demo.ts';
import type { ScoredItem } from '../../src/files/scored-item.ts';
import type { ScoredWalk } from '../../src/files/scored.ts';
import { fileOf, machine, machineKey } from './samples.ts';

function walkIn(text: string, at = 0): ScoredWalk {
  const scored = scoreFile(new TextEncoder().encode(text));
  const walk = scored.ok ? scored.value.walks[at] : undefined;
  if (!walk) throw new Error(scored.ok ? 'no walk' : scored.error);
  return walk;
}

/** The demo's walks stand in the order of their keys. */
const lastMini = 1;

const example = readFileSync(new URL('../../src/files/example.json', import.meta.url), 'utf8');
const seen = (text: string | undefined): string | undefined => text?.replaceAll('\u00a0', ' ');

describe('the example that can be written by hand', () => {
  const walkOf = (): ScoredWalk => walkIn(example);
  const item = (place: string, id: string): ScoredItem => {
    const found = walkOf().items.find((each) => each.place === place && each.item === id);
    if (!found) throw new Error(`no ${id}`);
    return found;
  };

  test('[F20] says which walk, machine, sheet and rule set', () => {
    expect(walkOf()).toMatchObject({
      walk: 'walk/monday',
      machine: { key: 'machine/small-digger', name: 'Small digger (invented)' },
      purpose: 'jobsite',
      depth: 'short',
      sheets: {
        left: {
          key: 'limits/small-digger',
          name: 'What was measured on this machine when new',
          problems: [],
        },
        right: { key: 'limits/small-digger' },
      },
      rules: { key: 'rules/starting', name: 'Starting rules', problems: [] },
      notUsed: [],
    });
  });

  test('[F20] a worn lug: the worst of two spots, with uncertainty, limit and sources', () => {
    // 100 · (22 − 4.5) / (22 − 5) = 102.941176 %; u = 0.1/√12 mm · 100/17 per mm, k = 2.
    expect(item('left.track', 'lug-depth')).toMatchObject({
      name: 'left track: lug depth',
      known: true,
      reading: { passed: false, mm: 4.5, spots: 2, meanMm: 6.75 },
      worn: {
        percent: 102.941176,
        plusMinus: 0.339618,
        newMm: 22,
        limitMm: 5,
        means: 'replace',
        source: {
          new: { mark: 'measured', text: 'New track, three lugs' },
          limit: { mark: 'estimate', text: 'Look it up in the manual' },
        },
      },
      sag: null,
      call: 'replace',
      atLeast: 'replace',
      meanwhile: 'work',
      open: [],
    });
  });

  test('[F20] every reason has its rule, source and sentence, in millimetres', () => {
    const [reason] = item('left.track', 'lug-depth').reasons;
    expect(reason).toMatchObject({
      rule: 'lug-depth.limit',
      message: 'wear.limit',
      params: { mm: 4.5, limitMm: 5 },
    });
    expect(seen(reason?.sentence)).toContain('4.5 mm');
    expect(reason?.source?.mark).toBe('published');
    expect(Object.keys(reason?.source ?? {})).toEqual(['mark', 'text']);
  });

  test('[F20] a note says what the call leans on', () => {
    const { notes } = item('left.track', 'lug-depth');
    expect(notes).toMatchObject([{ kind: 'estimate' }]);
    expect(notes[0]?.sentence).toMatch(/estimate/);
  });

  test('[F20] sag: the state, by how much, the band and the method', () => {
    expect(item('left.track', 'sag')).toMatchObject({
      reading: { passed: false },
      worn: null,
      sag: {
        state: 'loose',
        byMm: 4,
        valueMm: 19,
        lowMm: 10,
        highMm: 15,
        method: 'roller-gap',
        source: { mark: 'estimate' },
      },
      call: 'adjust',
    });
  });

  test('[F20] a finding with its count', () => {
    const cord = item('left.track', 'cord');
    expect(cord.reading).toEqual({ passed: false, finding: 'showing', count: 2 });
    expect(cord).toMatchObject({ call: 'replace', meanwhile: 'light-work', couldPark: true });
  });

  test('[F20] what was not seen or not read is open, with a sentence', () => {
    const unseen = item('right.track', 'lug-depth');
    expect(unseen).toMatchObject({ known: false, reading: null, call: 'open', atLeast: 'run' });
    expect(unseen.open).toMatchObject([{ kind: 'not-seen', params: { why: 'mud' } }]);
    expect(unseen.open[0]?.sentence).toMatch(/^Not seen: .*\.$/);
    expect(item('right.track', 'cord')).toMatchObject({ call: 'open', open: [{ kind: 'not-read' }] });
  });

  test('[F20] the verdict with what drives it, what is open and what could turn it', () => {
    const { verdict } = walkOf();
    expect(verdict).toMatchObject({
      call: 'replace',
      atLeast: 'replace',
      meanwhile: 'light-work',
      settled: false,
    });
    expect(verdict.drivers).toContainEqual({ place: 'left.track', item: 'cord' });
    expect(verdict.open).toContainEqual({ place: 'right.track', item: 'cord', couldPark: true });
    expect(verdict.open).toContainEqual({ place: 'right.track', item: 'lug-depth', couldPark: false });
    const parks = verdict.open.map(({ couldPark }) => couldPark);
    expect(parks).toEqual([...parks].sort((a, b) => Number(b) - Number(a)));
  });
});

describe('other walks', () => {
  test('[F20] a re-measurement that could turn the verdict is told in mm', async () => {
    const { verdict, items } = walkIn(await demoFile(), lastMini);
    const [flip] = verdict.flips;
    expect(flip).toEqual({
      place: 'right.track',
      item: 'sag',
      byMm: 1.0001,
      toMm: 15.0001,
      call: 'adjust',
      within: false,
    });
    expect(items.find(({ place, item }) => place === 'left.track' && item === 'bulge')?.reading).toEqual({
      passed: true,
      finding: 'none',
    });
    expect(items.find(({ item }) => item === 'roller-leak')?.name).toMatch(/^left bottom roller 1: \w/);
  });

  test('[F20] a reading that this machine has no place for is named; a pass and what was not seen are not', () => {
    const reading = (place: string, item: string, n: number, what: object) => ({
      key: `reading/w1/${place}/${item}/${n}`,
      value: { v: 1, what },
    });
    const dry = { kind: 'finding', finding: 'dry' };
    const { notUsed, sheets, rules } = walkIn(
      fileOf([
        { key: machineKey, value: { ...machine, sheet: 'limits/gone', rules: 'rules/gone' } },
        {
          key: 'walk/w1',
          value: {
            v: 1,
            machine: machineKey,
            purpose: 'appraisal',
            depth: 'full',
            start: 'walk',
            corner: 'rear-left',
          },
        },
        reading('left.bottom-roller.9', 'roller-leak', 3, dry),
        reading('left.bottom-roller.2', 'roller-leak', 1, dry),
        reading('left.bottom-roller', 'pass-bottom-roller', 1, {
          kind: 'pass',
          items: [],
          except: [],
          seen: 'whole',
        }),
        reading('left.bottom-roller', 'roller-leak', 1, { kind: 'unseen', why: 'mud' }),
      ]),
    );
    expect(notUsed).toEqual([
      {
        place: 'left.bottom-roller.9',
        item: 'roller-leak',
        n: 3,
        sentence: expect.stringMatching(/^Not used: .* left\.bottom-roller\.9\.$/) as string,
      },
    ]);
    expect([sheets, rules]).toEqual([{ left: null, right: null }, null]);
  });

  test('[F20] what is known and needs nothing is run', async () => {
    const { items } = walkIn(await demoFile());
    const fine = items.find(({ place, item }) => place === 'left.track' && item === 'bulge');
    expect(fine).toMatchObject({
      name: 'left track: bulge',
      known: true,
      call: 'run',
      atLeast: 'run',
      open: [],
    });
    expect(Object.keys(fine?.reading ?? {})).toEqual(['passed', 'finding']);
  });

  test('[F20] cracks and shares are told as they were read', () => {
    const reading = (item: string, what: object) => ({
      key: `reading/w1/left.track/${item}/1`,
      value: { v: 1, what },
    });
    const { items } = walkIn(
      fileOf([
        { key: machineKey, value: machine },
        {
          key: 'walk/w1',
          value: {
            v: 1,
            machine: machineKey,
            purpose: 'appraisal',
            depth: 'full',
            start: 'walk',
            corner: 'rear-left',
          },
        },
        reading('crack', { kind: 'crack', lengthMm: 35.00000049, depthMm: 9, cordVisible: false }),
        reading('roller-path', { kind: 'finding', finding: 'worn', share: 0.25 }),
        reading('lug-depth', { kind: 'length', mm: 12, typed: '12', unit: 'mm' }),
      ]),
    );
    const read = (id: string) => items.find(({ place, item }) => place === 'left.track' && item === id);
    expect(read('crack')?.reading).toEqual({
      passed: false,
      cracks: [{ lengthMm: 35, depthMm: 9, cordVisible: false }],
    });
    expect(read('roller-path')?.reading).toEqual({ passed: false, finding: 'worn', share: 0.25 });
    expect(read('lug-depth')).toMatchObject({ worn: null, reading: { mm: 12 } });
    expect(read('lug-depth')?.open.map(({ kind }) => kind)).toContain('no-sheet');
  });
});
