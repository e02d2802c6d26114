import { describe, expect, test } from 'vitest';
import { holdAllows, holdSchema, holdsOf, type Hold } from '../../src/core/holds.ts';
import { isJobKind, jobId, jobKinds, jobKindsFor, jobTraits } from '../../src/core/job-kinds.ts';
import { components, itemById, items } from '../../src/core/items.ts';
import { keySchema } from '../../src/core/keys.ts';
import { machineSchema, trackKinds } from '../../src/core/machine.ts';
import { workSchema } from '../../src/core/walk.ts';
import { shelfOf } from '../../src/files/shelf.ts';
import { keyOf } from '../files/samples.ts';
import { machineOf, shapeOf } from './made.ts';

describe('kinds of jobs', () => {
  // What only tells that something else is wrong, and what driving shows.
  const symptoms = ['drift', 'jumping', 'drive-noise', 'heat'];

  test('[CO20] every item has a job that mends it, but for what is only a symptom', () => {
    const mended = new Set(jobKinds.flatMap((kind) => jobTraits[kind].mends));
    expect(items.map(({ id }) => id).filter((id) => !mended.has(id))).toEqual(symptoms);
  });

  test.each(jobKinds)('[CO21] %s mends items that there are, of its own part or of any', (kind) => {
    const { component, mends } = jobTraits[kind];
    expect(components).toContain(component);
    const owners = mends.map((id) => itemById(id)?.component);
    expect(owners).not.toContain(undefined);
    // The mount that breaks is a part of the frame; leaks of the idler are its own.
    const others = owners.filter((owner) => owner !== component && component !== 'machine');
    expect(others).toEqual(kind === 'mend-frame' ? ['idler'] : []);
  });

  test.each(trackKinds)('[CO22] a job of a machine on %s mends something that it has', (track) => {
    const shape = shapeOf(track, { suspension: 'torsion', slidePlate: true });
    for (const kind of jobKindsFor(shape)) {
      const mends = jobTraits[kind].mends.filter((id) => itemById(id)?.fits(shape));
      expect(mends, kind).not.toEqual([]);
    }
  });

  test('[CO23] what the machine has not is no job of it', () => {
    const bare = jobKindsFor(shapeOf('rubber-cored', { carrierRollers: 0 }));
    expect(bare).not.toContain('renew-carrier-roller');
    expect(bare).not.toContain('renew-slide-plate');
    expect(bare).not.toContain('mend-suspension');
    expect(bare).not.toContain('renew-chain');
    expect(bare).toContain('renew-track');
    const steel = jobKindsFor(shapeOf('steel'));
    expect(steel).not.toContain('renew-track');
    expect(steel).not.toContain('renew-pads');
    expect(jobKindsFor(shapeOf('steel-pads'))).toContain('renew-pads');
  });

  test('[CO24] the id of every job is the end of a key', () => {
    for (const kind of jobKinds) {
      for (const id of [jobId('whole', kind), jobId('left', kind, 3)])
        expect(keySchema.safeParse(`hold/digger/${id}`).success).toBe(true);
    }
    expect(jobId('right', 'renew-bottom-roller', 3)).toBe('right.renew-bottom-roller.3');
    expect(isJobKind('renew-idler') && !isJobKind('toString')).toBe(true);
  });
});

describe('a hold', () => {
  test.each<[string, Hold | undefined, number, boolean]>([
    ['no hold', undefined, 100, true],
    ['an empty one', { v: 1 }, 100, true],
    ['a skipped job', { v: 1, skip: true }, 100, false],
    ['a job from later on', { v: 1, from: 101 }, 100, false],
    ['a job from now on', { v: 1, from: 100 }, 100, true],
    ['a job until now', { v: 1, to: 100 }, 100, true],
    ['a job until before', { v: 1, to: 99 }, 100, false],
  ])('[CO25] %s at its hours: %j at %d h is %s', (_, hold, atHours, allowed) => {
    expect(holdAllows(hold, atHours)).toBe(allowed);
  });

  test('[CO26] one that says nothing true is refused', () => {
    for (const odd of [{ v: 1, skip: false }, { v: 1, from: -1 }, { v: 1, to: 'soon' }, {}])
      expect(holdSchema.safeParse(odd).success).toBe(false);
  });

  test('[CO27] those of a machine are found by job, without the removed and those of others', () => {
    const shelf = shelfOf({
      versions: [],
      unstamped: [
        { key: keyOf('hold/m/left.renew-track'), value: { v: 1, skip: true } },
        { key: keyOf('hold/m/left.renew-idler.1'), value: { v: 2 } },
        { key: keyOf('hold/m2/left.renew-track'), value: { v: 1 } },
      ],
    });
    expect(holdsOf(shelf, 'machine/m')).toEqual(new Map([['left.renew-track', { v: 1, skip: true }]]));
    expect(holdsOf(shelf, 'machine/n')).toEqual(new Map());
    expect(holdsOf(shelf, 'walk/m')).toEqual(new Map());
  });
});

describe('what the plan asks of machines and work', () => {
  test.each([
    ['hours of a week', { hoursPerWeek: 168 }, true],
    ['no hours at all', { hoursPerWeek: 0 }, true],
    ['more hours than a week has', { hoursPerWeek: 169 }, false],
    ['hours below nothing', { hoursPerWeek: -1 }, false],
    ['a price list and rates', { prices: 'price/a', rates: 'rate/a' }, true],
  ])('[CO28] a machine with %s: %j is taken: %s', (_, more, taken) => {
    expect(machineSchema.safeParse({ ...machineOf('steel'), ...more }).success).toBe(taken);
  });

  test.each([
    [{ why: 'worn' }, true],
    [{ why: 'damaged', oldMeterHours: 12_000 }, true],
    [{ why: 'tired' }, false],
    [{ oldMeterHours: -1 }, false],
  ])('[CO29] work with %j is taken: %s', (more, taken) => {
    expect(workSchema.safeParse({ v: 1, kind: 'fitted', ...more }).success).toBe(taken);
  });
});
