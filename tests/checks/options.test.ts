import { describe, expect, test } from 'vitest';
import { jobKinds, jobTraits } from '../../src/core/job-kinds.ts';
import { assert } from '../../src/core/result.ts';
import { warrantyPercent } from '../../src/core/option.ts';
import { currentTrack } from '../../src/core/option-current.ts';
import {
  answered,
  answerTo,
  mini,
  optionOf,
  priced,
  rankedIds,
  rubberNow,
  rubberOrSteel,
} from '../core/options-made.ts';

/** Warranty by hours as printed: an undated warranty sheet for mini excavator tracks, 18 months or 1,500 h. */
const miniSteps = [
  { toHours: 375, percent: 100 },
  { toHours: 750, percent: 75 },
  { toHours: 1175, percent: 50 },
  { toHours: 1500, percent: 25 },
];

/** The same for compact track loaders, 12 months or 1,000 h. */
const loaderSteps = [
  { toHours: 250, percent: 100 },
  { toHours: 500, percent: 75 },
  { toHours: 750, percent: 50 },
  { toHours: 1000, percent: 25 },
];

describe('[N11] warranty by steps', () => {
  test.each([
    [700, 75],
    [1000, 50],
    [1400, 25],
  ])('[CV-61] a mini excavator track that fails at %i h is paid back by %i percent', (hours, percent) => {
    expect(warrantyPercent(miniSteps, hours)).toBe(percent);
  });

  test.each([
    [375, 100],
    [376, 75],
    [1500, 25],
    [1501, 0],
  ])('[CV-61] the printed steps hold their own last hour: %i h, %i percent', (hours, percent) => {
    expect(warrantyPercent(miniSteps, hours)).toBe(percent);
  });

  test.each([
    [250, 100],
    [600, 50],
    [1000, 25],
    [1001, 0],
  ])('[CV-61] a loader track at %i h is paid back by %i percent', (hours, percent) => {
    expect(warrantyPercent(loaderSteps, hours)).toBe(percent);
  });
});

describe('[N11] starting values: common practice, no source', () => {
  test.each(['soft-soil', 'mixed', 'gravel', 'paving'] as const)(
    '[OP1] steel starts with about twice the life of rubber on like work: %s',
    (ground) => {
      const result = answered({ options: rubberOrSteel, use: { ground: { [ground]: 100 } } });
      const [rubber, steel] = ['rubber', 'steel'].map(
        (id) => answerTo(result, id).figures?.life.wearHours ?? 0,
      );
      expect((steel ?? 0) / (rubber ?? 1)).toBeCloseTo(2, 12);
    },
  );

  test.each([2700, 5500, 8500])(
    '[OP2] on sharp rock without paving steel wins, even where the machine of %i kg has to be changed for it',
    (massKg) => {
      for (const current of [undefined, rubberNow]) {
        const result = answered({
          machine: { ...mini, massKg },
          current,
          options: rubberOrSteel,
          use: { ground: { rock: 100 }, sharp: true, takesSteel: true },
        });
        expect(result.choice).toEqual({ kind: 'first', id: 'steel', runnerUp: 'rubber' });
      }
    },
  );

  test('[OP3] where paving must not be marked steel is ruled out', () => {
    const result = answered({
      options: { ...rubberOrSteel, pads: optionOf('steel-pads') },
      use: { noMarks: true, ground: { rock: 100 }, sharp: true, takesSteel: true },
    });
    expect(rankedIds(result)).not.toContain('steel');
    expect(answerTo(result, 'steel').fit.against).toMatchObject([{ kind: 'marks-paving' }]);
    expect(answerTo(result, 'pads').fit.toSettle).toContainEqual({ kind: 'scuffs-paving' });
  });

  test('[OP4] with nothing known and a compact machine rubber is proposed, and said to be the default', () => {
    const { choice, default: usual } = answered({ options: rubberOrSteel });
    expect(choice).toEqual({ kind: 'default' });
    expect(usual).toEqual({ track: 'rubber-cored', why: 'usual-on-compact', ids: ['rubber'] });
  });

  test('[OP5] with a price and a ground known it is no default any more, and says what it would be', () => {
    const options = { rubber: optionOf('rubber-cored', priced(100_000)), steel: optionOf('steel') };
    const current = currentTrack({ shape: mini.shape, left: { size: '400x72.5x74' } }, []);
    const { choice, default: usual } = answered({ options, current, use: { ground: { mixed: 100 } } });
    expect(choice.kind).not.toBe('default');
    expect(usual?.track).toBe('rubber-cored');
  });

  test('[OP6] a cut cord replaces a whole rubber track; a broken steel shoe or single link is that part’s cost', () => {
    const jobsFor = (item: string) => jobKinds.filter((job) => jobTraits[job].mends.includes(item));
    expect(jobsFor('cord')).toEqual(['renew-track']);
    expect(jobsFor('links-cracked')).toContain('change-link');
    expect(jobsFor('shoes')).toEqual(['renew-shoes']);
    const at = (sharp: boolean, own = {}) => {
      const result = answered({ options: rubberOrSteel, use: { ground: { rock: 100 }, sharp, own } });
      return ['rubber', 'steel'].map((id) => answerTo(result, id).figures);
    };
    const [[rubber, steel], [cutRubber, brokenSteel]] = [at(false), at(true)];
    assert(rubber && steel && cutRubber && brokenSteel, 'all have figures');
    // Whole tracks are bought as much more often as they last shorter; a chain lasts as long, and links are bought.
    expect(cutRubber.lifeHours.middle).toBeLessThan(0.7 * rubber.lifeHours.middle);
    expect(cutRubber.perHour.tracks * cutRubber.lifeHours.middle).toBeCloseTo(rubber.cost.tracksMinor, 6);
    expect(brokenSteel.lifeHours.middle).toBe(steel.lifeHours.middle);
    expect(brokenSteel.perHour.parts).toBeCloseTo(brokenSteel.life.damagePerHour * steel.cost.breakMinor, 9);
    expect(steel.cost.breakMinor).toBeLessThan(steel.cost.tracksMinor / 2 / 5);
  });
});
