import { describe, expect, it } from 'vitest';
import type { LimitSheet } from '../../src/core/limits.ts';
import { sheetOf } from '../../src/app/data/sheet-form.ts';
import { sheetForm, type SheetForm } from '../../src/app/data/sheet-rows.ts';
import { builtIn } from '../../src/reference/built-in.ts';

const formOf = (sheet: LimitSheet): SheetForm => sheetForm(sheet, 'stamp', '');

const sheet: LimitSheet = {
  v: 1,
  name: 'Yard sheet',
  items: [
    {
      item: 'bushing-od',
      unit: 'in/16',
      new: { at: 37, tolerance: 0.5, source: { mark: 'published', text: 'p. 1' } },
      limits: [
        {
          at: 33.3333333333333,
          means: 'replace',
          hundred: true,
          loads: ['heavy'],
          also: { at: 52.9, unit: 'mm' },
          source: { mark: 'published', text: 'p. 2' },
        },
      ],
      breaks: [{ at: 35, percent: 40, source: { mark: 'derived', text: '' } }],
      positions: [1, 7],
    },
  ],
  sag: [],
  kept: { of: 'a newer build' },
};

describe('the form of a limit sheet', () => {
  it.each(Object.entries(builtIn.limits))('[A1] an untouched form gives %s back as it was', (_key, each) => {
    expect(sheetOf(formOf(each), each)).toEqual({ ok: true, value: each });
  });

  it('[A1] also to the last digit, with fields that the form does not show', () => {
    expect(sheetOf(formOf(sheet), sheet)).toEqual({ ok: true, value: sheet });
  });

  it('[A2] a changed limit loses its second print, which belonged to the old one', () => {
    const form = formOf(sheet);
    const items = form.items.map((row) => ({
      ...row,
      limits: row.limits.map((limit) => ({ ...limit, at: '2' })),
    }));
    const made = sheetOf({ ...form, items }, sheet);
    expect(made.ok && made.value.items[0]?.limits[0]).toEqual({
      at: 32,
      means: 'replace',
      hundred: true,
      loads: ['heavy'],
      source: { mark: 'published', text: 'p. 2' },
    });
  });

  it.each([
    ['letters', 'x'],
    ['nothing', ''],
    ['two meanings', '1,234'],
  ])('[A3] a limit with %s typed is no sheet yet, and says which row', (_what, at) => {
    const form = formOf(sheet);
    const [row] = form.items;
    const items = row ? [{ ...row, limits: row.limits.map((limit) => ({ ...limit, at })) }] : [];
    expect(sheetOf({ ...form, items }, sheet)).toEqual({ ok: false, error: [row?.id] });
  });

  it('[A4] a figure said to be published without a place counts as an estimate', () => {
    const form = formOf(sheet);
    const items = form.items.map((row) => ({ ...row, source: ' ' }));
    const made = sheetOf({ ...form, items }, sheet);
    expect(made.ok && made.value.items[0]?.new?.source).toEqual({ mark: 'estimate', text: '' });
  });
});
