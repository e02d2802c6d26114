import { describe, expect, test } from 'vitest';
import {
  lifeBasis,
  meanHours,
  rockShare,
  withRock,
  type LearntLife,
  type OptionMachine,
} from '../../src/core/option-life.ts';
import { figureNames, figuresFor } from '../../src/core/option-tables.ts';
import type { Option } from '../../src/core/option.ts';
import type { Use } from '../../src/core/use.ts';
import { life } from '../../src/reference/life.ts';
import { optionTables } from '../../src/reference/option-tables.ts';
import { shapeOf } from './made.ts';
import { mini, optionOf } from './options-made.ts';

interface Case {
  readonly machine?: OptionMachine;
  readonly use?: Use;
  readonly learnt?: LearntLife;
}

const basisOf = (option: Option, { machine = mini, use = {}, learnt }: Case = {}) => {
  const figures = figuresFor(optionTables, machine.kind, use.own);
  return lifeBasis({ machine, tables: optionTables, figures, learnt }, option, use);
};
const rubber = optionOf('rubber-cored');
const steel = optionOf('steel');
const wear = (use: Use, option = rubber): number => basisOf(option, { use }).wearHours;

describe('[N11] how long an option lasts', () => {
  test('[OP55] wear adds up over grounds: half the hours on each is half the wear of each', () => {
    const [soft, rock] = [wear({ ground: { 'soft-soil': 1 } }), wear({ ground: { rock: 1 } })];
    expect(wear({ ground: { 'soft-soil': 30, rock: 30 } })).toBeCloseTo(2 / (1 / soft + 1 / rock), 9);
    expect(soft).toBeGreaterThan(rock);
  });

  test('[OP56] shares count against each other, whatever they add up to; none is no ground known', () => {
    expect(wear({ ground: { gravel: 2, rock: 1 } })).toBeCloseTo(
      wear({ ground: { gravel: 60, rock: 30 } }),
      9,
    );
    expect(wear({ ground: { rock: 0 } })).toBe(wear({}));
  });

  test('[OP57] turning shortens it as it does hours left', () => {
    expect(wear({ turning: 'much' }) / wear({})).toBeCloseTo(life.turning.much.value, 12);
    expect(wear({ turning: 'little' }) / wear({})).toBeCloseTo(life.turning.little.value, 12);
  });

  test('[OP58] an own figure stands on whatever ground, with no cuts taken off again', () => {
    const own = optionOf('rubber-cored', { life: { hours: 900 } });
    const basis = basisOf(own, { use: { ground: { rock: 1 }, turning: 'much', sharp: true } });
    expect(basis).toMatchObject({ wearHours: 900, damagePerHour: 0, from: 'own' });
  });

  test.each([
    [{ hours: 1000, lowHours: 500, highHours: 2000 }, 2],
    [{ hours: 1000, lowHours: 500 }, 2],
    [{ hours: 1000, highHours: 1500 }, 1.5],
    [{ hours: 1000 }, 1.4],
  ])('[OP59] the range of %o is a factor of %d up and down', (own, factor) => {
    const { spread } = basisOf(optionOf('steel', { life: own }));
    expect(Math.exp(spread * 1.2815515655446004)).toBeCloseTo(factor, 9);
  });

  test('[OP60] rubber ages whatever it works, steel does not', () => {
    expect(basisOf(rubber, { use: { hoursAYear: 100 } }).oldHours).toBe(100 * life.rubberYears.value);
    expect(basisOf(steel, { use: { hoursAYear: 100 } }).oldHours).toBe(Infinity);
  });

  test('[OP61] cuts end rubber as often as hours left say, and more often where rock is sharp', () => {
    const at = (use: Use, option = rubber) => basisOf(option, { use }).damagePerHour;
    expect(at({ ground: { rock: 1 } })).toBeCloseTo(life.damage.rock.value / 1000, 12);
    expect(at({})).toBeCloseTo(life.damage.unknown.value / 1000, 12);
    expect(at({ ground: { rock: 1 }, sharp: true })).toBeGreaterThan(3 * at({ ground: { rock: 1 } }));
    expect(at({ sharp: true })).toBeGreaterThan(3 * at({}));
    expect(at({ ground: { gravel: 1 }, sharp: true })).toBe(at({ ground: { gravel: 1 } }));
  });

  test('[OP62] a machine heavier than any rubber track is for has steel by its own figures', () => {
    const heavy = { ...mini, massKg: 25_000, shape: shapeOf('steel') };
    const { byRubber, wearHours } = basisOf(steel, { machine: heavy });
    expect(byRubber).toBe(false);
    expect(wearHours).toBeCloseTo(Math.sqrt(3000 * 10_000), 9);
    const { massKg: _, ...unknown } = heavy;
    expect(basisOf(steel, { machine: unknown }).byRubber).toBe(false);
  });

  test('[OP63] ended by wear, age or a cut, whichever is first', () => {
    expect(meanHours(1000, Infinity, 0)).toBe(1000);
    expect(meanHours(1000, 800, 0)).toBe(800);
    expect(meanHours(1000, Infinity, 0.001)).toBeCloseTo(1000 * (1 - Math.exp(-1)), 9);
    expect(meanHours(1e9, Infinity, 0.002)).toBeCloseTo(500, 6);
  });

  test('[OP64] what the machine’s own walks show counts before the books, and goes with the ground', () => {
    const learnt: LearntLife = {
      track: 'rubber-cored',
      hours: 700,
      spread: 0.1,
      ground: 'rock',
      turning: 'much',
    };
    const there: Use = { ground: { rock: 1 }, turning: 'much' };
    expect(basisOf(rubber, { learnt, use: there })).toMatchObject({ from: 'walks' });
    expect(basisOf(rubber, { learnt, use: there }).wearHours).toBeCloseTo(700, 9);
    const soft: Use = { ground: { 'soft-soil': 1 }, turning: 'much' };
    expect(basisOf(rubber, { learnt, use: soft }).wearHours).toBeCloseTo((700 * wear(soft)) / wear(there), 9);
    expect(basisOf(steel, { learnt, use: there }).wearHours).toBeCloseTo(1400, 9);
    expect(basisOf(rubber, { learnt, use: there }).spread).toBeGreaterThan(0.1);
  });

  test('[OP65] walks on steel tell of steel alone', () => {
    const learnt: LearntLife = {
      track: 'steel',
      hours: 4000,
      spread: 0.2,
      ground: undefined,
      turning: undefined,
    };
    expect(basisOf(steel, { learnt }).wearHours).toBeCloseTo(4000, 9);
    expect(basisOf(optionOf('steel-pads'), { learnt }).wearHours).toBeCloseTo(4000, 9);
    expect(basisOf(rubber, { learnt })).toEqual(basisOf(rubber));
  });

  test('[OP66] more rock takes its share from the other grounds alike', () => {
    expect(rockShare({ rock: 20, gravel: 60 })).toBeCloseTo(25, 9);
    expect(withRock({ rock: 50, gravel: 30, mixed: 20 }, 75)).toEqual({ gravel: 15, mixed: 10, rock: 75 });
    expect(withRock(undefined, 40)).toEqual({ mixed: 60, rock: 40 });
    expect(withRock({ rock: 10 }, 40)).toEqual({ mixed: 60, rock: 40 });
  });
});

describe('[N11] starting figures', () => {
  test.each(figureNames)('[OP67] %s is above zero and says where it is from', (name) => {
    const { value, source } = figuresFor(optionTables, 'excavator')[name];
    expect(value).toBeGreaterThan(0);
    expect(source.text.length).toBeGreaterThan(20);
  });

  test.each(figureNames)('[OP68] %s can be put otherwise, and is then the person’s', (name) => {
    const figures = figuresFor(optionTables, 'excavator', { [name]: 7 });
    expect(figures[name]).toMatchObject({ value: 7, source: { mark: 'entered' } });
  });

  test('[OP69] a name that is no figure changes none', () => {
    expect(figuresFor(optionTables, 'excavator', { toString: 7, none: 7 })).toEqual(
      figuresFor(optionTables, 'excavator'),
    );
  });

  test('[OP70] nothing is divided by a figure of 0, and interest may be none', () => {
    const own = Object.fromEntries(figureNames.map((name) => [name, 0]));
    const figures = figuresFor(optionTables, 'excavator', own);
    const usual = figuresFor(optionTables, 'excavator');
    expect(figureNames.filter((name) => figures[name].value === 0)).toEqual([
      'breakShare',
      'steelHeavierLowKg',
      'steelHeavierHighKg',
      'ratePercent',
    ]);
    expect(figures.horizonYears).toEqual(usual.horizonYears);
  });
});
