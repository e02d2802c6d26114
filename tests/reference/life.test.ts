import { describe, expect, test } from 'vitest';
import { items } from '../../src/core/items.ts';
import { lifeFigureFor, priorOf, type Sourced } from '../../src/core/life.ts';
import { machineKinds, trackKinds } from '../../src/core/machine.ts';
import { sourceSchema, type Source } from '../../src/core/source.ts';
import { grounds, turnings } from '../../src/core/use.ts';
import { logRates } from '../../src/core/wear-filter.ts';
import { life } from '../../src/reference/life.ts';
import { shapeOf } from '../core/made.ts';

const measured = new Set(['length', 'pitch', 'tread', 'pair']);

const named = life.figures.map((each) => [each.id, each] as const);

/** Every figure of the tables with its path. */
function sourcedIn(value: object, path: string): readonly (readonly [string, Sourced])[] {
  if ('value' in value && 'source' in value) return [[path, value as Sourced]];
  return Object.entries(value).flatMap(([name, each]) => sourcedIn(each as object, `${path}.${name}`));
}
const { figures, ...assumed } = life;
const assumptions = sourcedIn(assumed, 'life');

const isSaid = (source: Source): boolean => sourceSchema.safeParse(source).success && source.text.length > 20;

describe('[N6] life figures', () => {
  test.each(named)('[LF1] %s is a range above zero, wide enough to be honest, with its source', (_, each) => {
    expect(each.lowHours).toBeGreaterThan(0);
    // None is narrower than twofold: makes, ground and drivers differ by more than that.
    expect(each.highHours / each.lowHours).toBeGreaterThanOrEqual(2);
    expect(isSaid(each.source)).toBe(true);
  });

  test('[LF2] have ids that occur once, and items that are measured', () => {
    expect(new Set(figures.map(({ id }) => id)).size).toBe(figures.length);
    const known = items.filter(({ ask }) => measured.has(ask.kind)).map(({ id }) => id);
    expect(known).toEqual(expect.arrayContaining(figures.flatMap((each) => each.items)));
  });

  test.each(items.filter(({ ask }) => measured.has(ask.kind)).map((each) => [each.id, each] as const))(
    '[LF3] %s has one on every machine and track that it fits, on every ground',
    (id, { fits }) => {
      for (const kind of machineKinds)
        for (const track of trackKinds.filter((each) => fits(shapeOf(each))))
          for (const ground of [undefined, ...grounds])
            expect([kind, track, ground, lifeFigureFor(life, { item: id, kind, track, ground })?.id]).toEqual(
              [kind, track, ground, expect.any(String)],
            );
    },
  );

  test('[LF4] each is the first for some machine: none is hidden behind a wider one', () => {
    const used = machineKinds.flatMap((kind) =>
      trackKinds.flatMap((track) =>
        [undefined, ...grounds].flatMap((ground) =>
          items.map(({ id }) => lifeFigureFor(life, { item: id, kind, track, ground })?.id),
        ),
      ),
    );
    expect(used).toEqual(expect.arrayContaining(figures.map(({ id }) => id)));
  });

  test.each(named)(
    '[LF5] the paces of %s lie well within the grid on which they are looked for',
    (_, each) => {
      const [least = 0, most = 0] = [logRates[0], logRates.at(-1)];
      for (const turning of turnings) {
        const { centre, spread } = priorOf(each, life.turning[turning].value);
        expect(centre - 3 * spread).toBeGreaterThan(least);
        expect(centre + 3 * spread).toBeLessThan(most);
      }
    },
  );

  test.each([
    ['rock', 'mixed'],
    ['demolition', 'mixed'],
    ['mixed', 'soft-soil'],
  ] as const)('[LF6] no part outlasts on %s what it lasts on %s', (hard, soft) => {
    for (const { id } of items)
      for (const kind of machineKinds)
        for (const track of trackKinds) {
          const [on, off] = [hard, soft].map((ground) =>
            lifeFigureFor(life, { item: id, kind, track, ground }),
          );
          if (!on || !off) continue;
          expect(on.lowHours * on.highHours).toBeLessThanOrEqual(off.lowHours * off.highHours);
        }
  });
});

describe('[N6] what the forecast assumes', () => {
  test.each(assumptions)('[LF7] %s is above zero and says where it is from', (_, { value, source }) => {
    expect(value).toBeGreaterThan(0);
    expect(isSaid(source)).toBe(true);
  });

  test('[LF8] scatter, reading error and damage are marked as estimates', () => {
    const { kappa, readingError, newError, damage } = life;
    expect(
      new Set([kappa, readingError, newError, ...Object.values(damage)].map(({ source }) => source.mark)),
    ).toEqual(new Set(['estimate']));
  });

  test('[LF9] more turning shortens a life, harder ground breaks more tracks, shares are below one', () => {
    const { turning, damage, turnedShare, builtUpShare, wornSprocketShare, faultHours } = life;
    expect(turning.little.value).toBeGreaterThan(turning.some.value);
    expect(turning.some.value).toBe(1);
    expect(turning.much.value).toBeLessThan(turning.some.value);
    expect(damage.rock.value).toBeGreaterThan(damage.gravel.value);
    expect(damage.gravel.value).toBeGreaterThan(damage['soft-soil'].value);
    for (const { value } of [turnedShare, builtUpShare, wornSprocketShare]) expect(value).toBeLessThan(1);
    expect(faultHours.replace.value).toBeLessThan(faultHours.repair.value);
    expect(faultHours.repair.value).toBeLessThan(faultHours.adjust.value);
  });
});
