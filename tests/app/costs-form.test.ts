import { describe, expect, test } from 'vitest';
import { priceListSchema, type PriceList, type Rates } from '../../src/core/costs.ts';
import { jobKinds } from '../../src/core/job-kinds.ts';
import { assert } from '../../src/core/result.ts';
import { kindsIn, pricesForm, pricesOf, ratesForm, ratesOf } from '../../src/app/data/costs-form.ts';
import { builtIn } from '../../src/reference/built-in.ts';

const list = builtIn.prices['price/starting-rubber-mini'] as PriceList;
const rates = builtIn.rates['rate/starting'] as Rates;
const form = pricesForm(list, undefined);

const made = (texts: Partial<typeof form>): PriceList => {
  const result = pricesOf({ ...form, ...texts }, list);
  assert(result.ok, 'a list');
  return result.value;
};

describe('the form of a price list', () => {
  test('[PF1] read back untouched it is the list, with every source', () => {
    expect(made({})).toEqual(list);
    const same = ratesOf(ratesForm(rates, undefined), rates);
    expect(same.ok && same.value).toEqual(rates);
  });

  test('[PF2] what was changed is entered by a person, the rest keeps its source', () => {
    const changed = made({ amounts: { ...form.amounts, 'renew-track': '1.234,5' } });
    expect(changed.lines.find(({ job }) => job === 'renew-track')).toMatchObject({
      minor: 123_450,
      source: { mark: 'entered', text: '' },
    });
    expect(changed.lines.filter(({ source }) => source.mark === 'entered')).toHaveLength(1);
    const dearer = ratesOf(
      { ...ratesForm(rates, undefined), amounts: { ...ratesForm(rates, undefined).amounts, callOut: '99' } },
      rates,
    );
    expect(dearer.ok && dearer.value.callOut).toEqual({ minor: 9900, source: { mark: 'entered', text: '' } });
  });

  test('[PF3] another currency makes every figure one that a person answers for', () => {
    const { lines, currency } = made({ currency: 'JPY' });
    expect(currency).toBe('JPY');
    expect(lines.every(({ source }) => source.mark === 'entered')).toBe(true);
    expect(lines[0]?.minor).toBe((list.lines[0]?.minor ?? 0) / 100);
  });

  test('[PF4] every field that cannot be saved is named, and nothing is made of the others', () => {
    const wrong = {
      ...form,
      name: ' ',
      currency: 'euro',
      amounts: { ...form.amounts, 'renew-track': 'a lot' },
      hours: { ...form.hours, 'renew-sprocket': '' },
    };
    expect(pricesOf(wrong, list)).toEqual({
      ok: false,
      error: ['name', 'currency', 'renew-track', 'hours/renew-sprocket'],
    });
    expect(ratesOf({ ...ratesForm(rates, undefined), amounts: {} }, rates)).toMatchObject({ ok: false });
  });

  test('[PF6] what no file could hold is not saved', () => {
    const hours = { ...form.hours, 'renew-track': '1001' };
    expect(pricesOf({ ...form, hours }, list)).toEqual({ ok: false, error: ['hours/renew-track'] });
    expect(pricesOf({ ...form, name: 'n'.repeat(161) }, list)).toEqual({ ok: false, error: ['name'] });
    const fine = made({ hours: { ...form.hours, 'renew-track': '1000' }, name: 'n'.repeat(160) });
    expect(priceListSchema.safeParse(fine).success).toBe(true);
  });

  test('[PF5] a kind of job that the list has no price for can be given one, and left without', () => {
    const missing = jobKinds.find((kind) => !list.lines.some(({ job }) => job === kind));
    assert(missing, 'a kind that rubber has no use for');
    expect(kindsIn(list)).toHaveLength(jobKinds.length);
    const added = made({
      amounts: { ...form.amounts, [missing]: '10' },
      hours: { ...form.hours, [missing]: '0.5' },
    });
    expect(added.lines.at(-1)).toEqual({
      job: missing,
      minor: 1000,
      labourHours: 0.5,
      source: { mark: 'entered', text: '' },
    });
    // Emptied, a job has no price any more; half emptied, it is asked about.
    const without = made({
      amounts: { ...form.amounts, 'renew-track': ' ' },
      hours: { ...form.hours, 'renew-track': '' },
    });
    expect(without.lines.some(({ job }) => job === 'renew-track')).toBe(false);
    expect(pricesOf({ ...form, amounts: { ...form.amounts, [missing]: '10' } }, list)).toEqual({
      ok: false,
      error: [`hours/${missing}`],
    });
  });
});
