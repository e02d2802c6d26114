import { describe, expect, test } from 'vitest';
import type { ObservedOf } from '../../src/core/readings.ts';
import { factsOf } from '../../src/core/score.ts';
import { stateKey, type PlacedReading } from '../../src/core/states.ts';
import { placeSchema } from '../../src/core/keys.ts';
import { bandOf, finding, inputOf, machineOf, pass, read, sag, sheetOf, walkOf } from './made.ts';

const openAt = (
  place: string,
  itemId: string,
  readings: PlacedReading[],
  more: Parameters<typeof inputOf>[0] = {},
) =>
  factsOf(inputOf({ sheet: sheetOf([]), readings, ...more }))
    .states.get(stateKey(placeSchema.parse(place), itemId))
    ?.open.map(({ kind }) => kind);

describe('[N4] sag by eye', () => {
  const byEye = [read('left.track', 'sag-by-eye', finding('right'))];
  const short = { walk: walkOf({ depth: 'short' }) };

  test('[V50] is enough for a short walk', () => {
    expect(openAt('left.track', 'sag', byEye, short)).toEqual([]);
  });

  test('[V51] leaves a full walk open, as judged by eye and not as not read', () => {
    expect(openAt('left.track', 'sag', byEye)).toEqual(['by-eye']);
  });

  test('[V52] speaks for its own side only, and for nothing while it was not done', () => {
    expect(openAt('right.track', 'sag', byEye, short)).toEqual(['not-read']);
    expect(openAt('left.track', 'sag', [], short)).toEqual(['not-read']);
    expect(openAt('left.track', 'sag-by-eye', byEye, short)).toEqual([]);
  });

  test('[V57] changes nothing of other items, nor of a sag that was measured too', () => {
    const sheet = sheetOf([], [bandOf(10, 20)]);
    expect(openAt('left.track', 'cord', byEye, short)).toEqual(['not-read']);
    expect(openAt('left.track', 'sag', [...byEye, read('left.track', 'sag', sag(15))], { sheet })).toEqual(
      [],
    );
  });

  test('[V53] does not do away with anything else that is open', () => {
    const back = { ...short, takenBack: [{ place: placeSchema.parse('left.track'), item: 'sag', n: 1 }] };
    expect(openAt('left.track', 'sag', byEye, back)).toEqual(['taken-back']);
  });
});

describe('[N3] an idler’s flange hides wear of its tread', () => {
  const machine = machineOf('steel', { idlers: 2 });
  const pair: ObservedOf<'pair'> = { kind: 'pair', outerMm: 20, innerMm: 22, typed: [], unit: 'mm' };
  const tread = read('left.idler.2', 'idler-tread', pair);
  const open = (...others: PlacedReading[]) =>
    openAt('left.idler.2', 'idler-tread', [tread, ...others], { machine });

  test('[V54] a depth without its flange is open', () => {
    expect(open()).toEqual(['no-limit', 'flange-unknown']);
  });

  test('[V55] the flange of the same idler closes it, passed or read; that of another does not', () => {
    expect(open(read('left.idler.2', 'idler-flange', finding('worn')))).toEqual(['no-limit']);
    expect(open(read('left.idler', 'pass-idler', pass(['idler-flange'])))).toEqual(['no-limit']);
    expect(open(read('left.idler.1', 'idler-flange', finding('worn')))).toEqual([
      'no-limit',
      'flange-unknown',
    ]);
  });

  test('[V56] a depth that was not read says nothing of the flange', () => {
    expect(openAt('left.idler.2', 'idler-tread', [], { machine })).toEqual([]);
  });
});
