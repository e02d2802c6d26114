import { describe, expect, test } from 'vitest';
import { jobsOf } from '../../src/core/jobs.ts';
import type { TrackKind } from '../../src/core/machine.ts';
import type { Observed } from '../../src/core/readings.ts';
import { score } from '../../src/core/score.ts';
import { builtIn } from '../../src/reference/built-in.ts';
import { finding, machineOf, read, walkOf } from './made.ts';

const rules = Object.values(builtIn.rules)[0];

function jobsFor(track: TrackKind, readings: readonly (readonly [string, string, Observed])[]) {
  const machine = machineOf(track);
  const placed = readings.map(([place, item, what]) => read(place, item, what));
  const { outcomes } = score({ machine, walk: walkOf(), sheets: {}, rules, readings: placed });
  return jobsOf(machine.shape, outcomes, [], 2000);
}

const cases: readonly (readonly [TrackKind, string, string, string, string])[] = [
  ['rubber-cored', 'left.track', 'cord', 'cut', 'left.renew-track'],
  ['rubber-cored', 'left.track', 'edges', 'cut', 'left.mend-other'],
  ['rubber-cored', 'right.sprocket', 'sprocket-teeth', 'hooked', 'right.renew-sprocket'],
  ['rubber-cored', 'right.sprocket', 'sprocket-bolts', 'missing', 'right.tighten-bolts'],
  ['rubber-cored', 'left.track', 'sag-by-eye', 'slack', 'left.adjust-sag'],
  ['steel', 'left.track', 'links-cracked', 'one', 'left.change-link'],
  ['steel', 'left.track', 'links-cracked', 'several', 'left.renew-chain'],
  ['steel', 'left.track', 'shoe-bolts', 'one-loose', 'left.tighten-bolts'],
  ['steel', 'left.track', 'shoes', 'bent', 'left.mend-other'],
  ['steel', 'right.bottom-roller.2', 'roller-flat', 'flat', 'right.renew-bottom-roller'],
  ['steel', 'right.idler.1', 'idler-rim', 'cracked', 'right.renew-idler'],
  ['steel', 'left.adjuster', 'recoil-spring', 'broken', 'left.renew-spring'],
  ['steel', 'left.adjuster', 'adjuster-leak', 'weeping', 'left.mend-adjuster'],
  ['steel', 'left.frame', 'track-frame', 'cracked', 'left.mend-frame'],
  ['steel', 'left.motor', 'motor-oil', 'leaking', 'left.mend-motor'],
];

describe('[N7] what a call asks for', () => {
  test.each(cases)('[J1] %s, %s: %s %s is %s', (track, place, item, name, job) => {
    expect(jobsFor(track, [[place, item, finding(name)]]).map(({ id }) => id)).toEqual([job]);
  });

  test('[J2] what runs or is only looked at sooner is no job', () => {
    expect(jobsFor('steel', [['left.track', 'shoes', finding('sound')]])).toEqual([]);
    expect(jobsFor('steel', [['left.idler.1', 'idler-leak', finding('weeping')]])).toEqual([]);
  });

  test('[J3] identical parts of one side are one job with their number, of both sides two', () => {
    const jobs = jobsFor('steel', [
      ['left.bottom-roller.1', 'roller-flat', finding('flat')],
      ['left.bottom-roller.3', 'roller-turn', finding('seized')],
      ['left.bottom-roller.3', 'roller-flat', finding('flat')],
      ['right.bottom-roller.2', 'roller-flat', finding('flat')],
    ]);
    expect(jobs.map(({ id, count }) => [id, count])).toEqual([
      ['left.renew-bottom-roller', 2],
      ['right.renew-bottom-roller', 1],
    ]);
  });

  test('[J4] a chain that is replaced takes the single link along, another side’s or an adjuster’s work it does not', () => {
    const jobs = jobsFor('steel', [
      ['left.track', 'pin-walk', finding('walking')],
      ['left.track', 'links-cracked', finding('one')],
      ['right.track', 'links-cracked', finding('one')],
      ['left.adjuster', 'adjuster-leak', finding('weeping')],
    ]);
    expect(jobs.map(({ id }) => id).sort()).toEqual([
      'left.mend-adjuster',
      'left.renew-chain',
      'right.change-link',
    ]);
  });

  test('[J5] the worst call leads', () => {
    const [job] = jobsFor('rubber-cored', [
      ['left.track', 'cord', finding('showing')],
      ['left.track', 'cores', finding('neighbours-gone')],
    ]);
    expect([job?.id, job?.call, job?.outcomes[0]?.state.item.id]).toEqual([
      'left.renew-track',
      'park',
      'cores',
    ]);
  });
});
