import { describe, expect, test } from 'vitest';
import { makePlace } from '../../src/core/keys.ts';
import type { Observed } from '../../src/core/readings.ts';
import { score, type ItemOutcome } from '../../src/core/score.ts';
import { cautionWords } from '../../src/words/en/cautions.ts';
import { inputOf } from './walk-file.ts';

const track = makePlace({ side: 'left', component: 'track' });

/** What one reading of the left track comes to under the rules of a check walk. */
function outcomeOf(walk: string, item: string, what: Observed): ItemOutcome | undefined {
  const readings = [{ place: track, item, n: 1, reading: { v: 1 as const, what } }];
  const { outcomes } = score({ ...inputOf(walk), readings });
  return outcomes.find(({ state }) => state.place === track && state.item.id === item);
}

const crack = (lengthMm: number, depthMm: number, cordVisible = false): Observed => ({
  kind: 'crack',
  lengthMm,
  depthMm,
  cordVisible,
});
const lug = (mm: number): Observed => ({ kind: 'length', mm, typed: String(mm), unit: 'mm' });
const cord = (finding: string, count: number): Observed => ({ kind: 'finding', finding, count });

const komatsu = 'rubber-first-maker';
const ihi = 'rubber-second-maker';
const gehl = 'rubber-third-maker';

const calls: readonly (readonly [string, string, string, Observed, string])[] = [
  ['[CV-05] lug 5.0 mm, Gehl Z17: 5 mm or less', gehl, 'lug-depth', lug(5), 'replace'],
  ['[CV-05] lug 5.1 mm, Gehl Z17: 5 mm or less', gehl, 'lug-depth', lug(5.1), 'run'],
  ['lug 5.0 mm, IHI IC100-2: below 5 mm', ihi, 'lug-depth', lug(5), 'run'],
  ['lug 4.9 mm, IHI IC100-2: below 5 mm', ihi, 'lug-depth', lug(4.9), 'replace'],
  ['[CV-06] crack 29 × 12 mm, Komatsu PC78MR-6 p. 225', komatsu, 'crack', crack(29, 12), 'run'],
  ['[CV-06] crack 29 × 12 mm, IHI IC100-2', ihi, 'crack', crack(29, 12), 'run'],
  ['[CV-07] crack 35 × 9 mm, Komatsu PC78MR-6 p. 225', komatsu, 'crack', crack(35, 9), 'run'],
  ['[CV-07] crack 35 × 9 mm, IHI IC100-2', ihi, 'crack', crack(35, 9), 'repair'],
  ['crack 60 × 9 mm, Komatsu PC78MR-6 p. 225: about 60 mm', komatsu, 'crack', crack(60, 9), 'repair'],
  [
    'crack 10 × 2 mm with cord visible, Komatsu PC78MR-6 p. 225',
    komatsu,
    'crack',
    crack(10, 2, true),
    'repair',
  ],
  ['crack 10 × 2 mm with cord visible, IHI IC100-2', ihi, 'crack', crack(10, 2, true), 'repair'],
  ['cord exposed at one link, Gehl Z17 Gen 2 p. 151', gehl, 'cord', cord('showing', 1), 'run'],
  ['cord exposed at two links, Gehl Z17 Gen 2 p. 151', gehl, 'cord', cord('showing', 2), 'replace'],
  ['cord exposed at one link, IHI IC100-2', ihi, 'cord', cord('showing', 1), 'replace'],
  ['cord cut, less than half a band, Gehl Z17 Gen 2 p. 151', gehl, 'cord', cord('cut', 1), 'run'],
  ['half a cord band cut, Gehl Z17 Gen 2 p. 151', gehl, 'cord', cord('half-cut', 1), 'replace'],
  ['cord cut, IHI IC100-2', ihi, 'cord', cord('cut', 1), 'replace'],
];

describe('[N4] published calls on rubber', () => {
  test.each(calls)('%s', (_, walk, item, what, call) => {
    expect(outcomeOf(walk, item, what)?.atLeast).toBe(call);
  });

  test('a gap between two printed bands takes the more severe one and says so (Komatsu PC78MR-6 p. 225)', () => {
    const outcome = outcomeOf(komatsu, 'crack', crack(40, 12));
    expect(outcome?.atLeast).toBe('repair');
    expect(outcome?.notes.map(({ kind }) => kind)).toContain('band-gap');
  });
});

test('[CV-79] the caution before grease says no more than one turn, more only by the manual', () => {
  // One turn: Komatsu, Hyundai R130, Hinowa HP1100, Probst TM 150, Kobelco SK35SR-6; 1.5: Takeuchi TB128FR.
  const lines = cautionWords.grease.lines.join(' ');
  expect(lines).toMatch(/one turn/);
  expect(lines).toMatch(/manual/);
  expect(lines).not.toMatch(/1[.,]5/);
});
