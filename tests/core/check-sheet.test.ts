import { describe, expect, test } from 'vitest';
import { checkSheet, type SheetProblem } from '../../src/core/check-sheet.ts';
import type { ItemLimits, Limit, LimitSheet, SagSpec } from '../../src/core/limits.ts';
import { builtIn } from '../../src/reference/built-in.ts';
import { sheetProblemLine } from '../../src/words/en/check-lines.ts';

const source = { mark: 'entered', text: 'test' } as const;
const limit = (at: number, more: Partial<Limit> = {}): Limit => ({
  at,
  means: 'replace',
  hundred: true,
  source,
  ...more,
});
const entry = (more: Partial<ItemLimits> = {}): ItemLimits => ({
  item: 'link-height',
  unit: 'mm',
  new: { at: 100, source },
  limits: [limit(90)],
  ...more,
});
const sag = (more: Partial<SagSpec> = {}): SagSpec => ({
  method: 'roller-gap',
  posture: 'raised',
  unit: 'mm',
  low: 10,
  high: 15,
  source,
  ...more,
});
const step = (at: number, percent: number) => ({ at, percent, source });

const problemsOf = (items: readonly ItemLimits[], sags: readonly SagSpec[] = []): readonly SheetProblem[] => {
  const sheet: LimitSheet = { v: 1, name: 'test', items: [...items], sag: [...sags] };
  const problems = checkSheet(sheet);
  for (const problem of problems) {
    const line = sheetProblemLine(problem);
    expect(line).toMatch(/^[a-z].*\.$/);
    expect(line).not.toMatch(/undefined|\[object/);
  }
  return problems;
};

describe('what a limit sheet contradicts itself in', () => {
  test.each<[string, Partial<ItemLimits>]>([
    ['shrinking', {}],
    ['growing', { item: 'pitch', limits: [limit(103)] }],
    [
      'several limits, one at 100 %',
      { limits: [limit(95, { hundred: false }), limit(90), limit(85, { hundred: false })] },
    ],
    [
      'one at 100 % for each load',
      { limits: [limit(92, { loads: ['heavy'] }), limit(90, { loads: ['light', 'average'] })] },
    ],
    ['no limit yet', { limits: [] }],
    ['no new size', { new: undefined }],
    ['steps that rise', { breaks: [step(97, 20), step(93, 70)] }],
    ['steps in any order', { breaks: [step(93, 70), step(97, 20)] }],
    [
      'steps of a part that grows',
      { item: 'pitch', limits: [limit(110)], breaks: [step(104, 30), step(107, 80)] },
    ],
    [
      'the same length in two units',
      { limits: [limit(90, { also: { at: 3.54, unit: 'in', resolution: 0.01 } })] },
    ],
    ['steps without a new size', { new: undefined, breaks: [step(200, 20)] }],
    ['steps without a limit', { limits: [], breaks: [step(200, 20)] }],
  ])('[N2] %s is sound', (_, more) => {
    const { new: fresh, ...rest } = entry(more);
    expect(problemsOf([fresh ? { ...rest, new: fresh } : rest])).toEqual([]);
  });

  test.each<[string, Partial<ItemLimits>, Partial<SheetProblem>]>([
    [
      'an unknown item',
      { item: 'hoverboard' },
      { kind: 'unknown-item', params: { item: 'hoverboard' }, warns: true },
    ],
    [
      'a finding with a size',
      { item: 'cord' },
      { kind: 'not-a-size', params: { item: 'cord' }, warns: false },
    ],
    ['sag among the sizes', { item: 'sag' }, { kind: 'not-a-size' }],
    [
      'new equal to the limit',
      { limits: [limit(100)] },
      { kind: 'new-is-limit', params: { at: 100, unit: 'mm' }, warns: false },
    ],
    ['new equal on the grid of comparing', { limits: [limit(100 + 1e-9)] }, { kind: 'new-is-limit' }],
    ['no limit at 100 %', { limits: [limit(90, { hundred: false })] }, { kind: 'no-hundred', warns: true }],
    [
      'no limit at 100 % for one load',
      { limits: [limit(90, { loads: ['light', 'heavy'] })] },
      { kind: 'no-hundred', params: { load: 'average' } },
    ],
    [
      'two limits at 100 %',
      { limits: [limit(90), limit(85)] },
      { kind: 'several-hundred', params: { load: 'light' }, warns: false },
    ],
    [
      'two limits at 100 % for one load',
      { limits: [limit(90), limit(85, { loads: ['heavy'] })] },
      { kind: 'several-hundred', params: { load: 'heavy' } },
    ],
    [
      'limits on both sides of new',
      { limits: [limit(90), limit(110, { hundred: false })] },
      { kind: 'limits-both-ways', params: { at: 100, unit: 'mm' }, warns: false },
    ],
    ['a step beyond the limit', { breaks: [step(80, 50)] }, { kind: 'breaks-not-monotone', warns: false }],
    ['a step above new', { breaks: [step(101, 50)] }, { kind: 'breaks-not-monotone' }],
    ['a step at 100 %', { breaks: [step(95, 100)] }, { kind: 'breaks-not-monotone' }],
    ['a step at 0 %', { breaks: [step(95, 0)] }, { kind: 'breaks-not-monotone' }],
    ['two steps at one size', { breaks: [step(95, 40), step(95, 60)] }, { kind: 'breaks-not-monotone' }],
    ['steps that fall', { breaks: [step(97, 70), step(93, 20)] }, { kind: 'breaks-not-monotone' }],
    [
      '[CV-80] one length in two units that differ',
      { limits: [limit(90, { also: { at: 3.6, unit: 'in', resolution: 0.01 } })] },
      {
        kind: 'prints-disagree',
        params: { at: 90, unit: 'mm', alsoAt: 3.6, alsoUnit: 'in', means: 'replace' },
        warns: true,
      },
    ],
  ])('[N2] %s is found', (_, more, expected) => {
    const problems = problemsOf([entry({ item: 'grouser' }), entry(more)]);
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatchObject({
      ...expected,
      at: { list: 'items', index: 1 },
      item: more.item ?? 'link-height',
    });
  });

  test('[N2] a second entry for the same parts is found, one for other parts is not', () => {
    const ends = entry({ item: 'roller-tread', positions: 'ends' });
    const third = entry({ item: 'roller-tread', positions: [3] });
    expect(problemsOf([entry({ item: 'roller-tread' }), ends, third])).toEqual([]);
    expect(problemsOf([ends, third, ends, third])).toMatchObject([
      { kind: 'several-entries', at: { list: 'items', index: 2 }, item: 'roller-tread', warns: false },
      { kind: 'several-entries', at: { list: 'items', index: 3 } },
    ]);
  });

  test.each<[string, Partial<SagSpec>, Partial<SheetProblem>]>([
    [
      'low above high',
      { low: 20 },
      { kind: 'sag-low-above-high', params: { low: 20, high: 15, unit: 'mm' }, warns: false },
    ],
    [
      'low above high in the other unit',
      { also: { low: 0.6, high: 0.4, unit: 'in', resolution: 1 } },
      { kind: 'sag-low-above-high' },
    ],
    [
      'coming off inside the range',
      { derailAbove: 14 },
      { kind: 'sag-derail-below-high', params: { at: 14, high: 15, unit: 'mm' }, warns: false },
    ],
    [
      '[CV-80] a lower end that differs in the other unit',
      { also: { low: 0.5, high: 0.59, unit: 'in', resolution: 0.01 } },
      { kind: 'prints-disagree', params: { at: 10, unit: 'mm', alsoAt: 0.5, alsoUnit: 'in', means: 'sag' } },
    ],
    [
      '[CV-80] an upper end that differs in the other unit',
      { also: { low: 0.39, high: 0.8, unit: 'in', resolution: 0.01 } },
      {
        kind: 'prints-disagree',
        params: { at: 15, unit: 'mm', alsoAt: 0.8, alsoUnit: 'in', means: 'sag' },
        warns: true,
      },
    ],
  ])('[N5] sag: %s is found', (_, more, expected) => {
    const problems = problemsOf([], [sag({ method: 'string' }), sag(more)]);
    expect(problems).toMatchObject([{ ...expected, at: { list: 'sag', index: 1 }, item: 'sag' }]);
  });

  test('[N5] sag: sound bands have no problem, the same way of reading twice has', () => {
    expect(
      problemsOf(
        [],
        [sag({ low: 15, derailAbove: 15, also: { low: 0.59, high: 0.59, unit: 'in', resolution: 0.01 } })],
      ),
    ).toEqual([]);
    const loaded = { method: 'deflection', loadN: 400 } as const;
    expect(
      problemsOf([], [sag(), sag({ posture: 'ground' }), sag(loaded), sag({ ...loaded, loadN: 500 })]),
    ).toEqual([]);
    expect(problemsOf([], [sag(), sag({ low: 11 })])).toMatchObject([
      { kind: 'several-sag', at: { index: 1 } },
    ]);
  });

  test('[N2] the starting sheets have nothing wrong, and warn only where their print contradicts itself', () => {
    const problems = Object.values(builtIn.limits).flatMap(checkSheet);
    expect(problems.filter(({ warns }) => !warns)).toEqual([]);
    expect(new Set(problems.map(({ kind }) => kind))).toEqual(new Set(['prints-disagree']));
  });
});
