import { describe, expect, test } from 'vitest';
import type { Contract } from '../../src/core/contract.ts';
import { chargeList } from '../../src/core/rental.ts';
import { entered } from './made.ts';
import { cut, hireOf, lugs, sound } from './rental-made.ts';

describe('what a hire is billed for', () => {
  test('[RC1] wear beyond what its hours allow, of the price', () => {
    const list = chargeList(hireOf(lugs([20, 20]), lugs([35, 35])));
    expect(list.lines).toMatchObject([{ kind: 'wear', standing: { kind: 'charged' } }]);
    expect(list.netMinor).toBe(54_000);
  });

  test('[RC2] damage at the value that the part had just before', () => {
    const parts = [{ what: 'renew-track', minor: 300_000, source: entered }];
    const terms: Partial<Contract> = { charges: 'damage', parts, cutOffPercent: 30 };
    const list = chargeList(hireOf([...sound, ...lugs([20, 20])], [...cut, ...lugs([25, 25])], terms));
    const damage = list.lines.find(({ kind }) => kind === 'damage');
    expect(damage).toMatchObject({ standing: { kind: 'charged' }, leftPercent: 75, leftFrom: 'readings' });
    expect(list.netMinor).toBe(192_857);
  });

  test('[RC66] what measures better at return than at hand-out, by more than the readings can be off, is asked', () => {
    const standings = [29, 29.9].map(
      (after) => chargeList(hireOf(lugs([30, 30], 0.01), lugs([after, after], 0.01))).lines[0]?.standing,
    );
    expect(standings).toEqual([
      { kind: 'open', why: 'measured-better' },
      { kind: 'not-charged', why: 'within-allowance' },
    ]);
  });

  test('[RC67] an amount that was agreed in one currency says nothing in another', () => {
    const by = { line: 'damage.renew-track.left', is: 'charged', minor: 10_000, currency: 'EUR' } as const;
    const standings = (['EUR', 'JPY'] as const).map((currency) => {
      const list = chargeList(hireOf(sound, cut, { currency, parts: [] }, { settled: [by] }));
      return list.lines[0]?.standing.kind;
    });
    expect(standings).toEqual(['open', 'open']);
    const left = [{ what: 'renew-track', minor: 600_000, source: entered }];
    const settledIn = (currency: string) =>
      chargeList(hireOf(sound, cut, { currency, parts: left }, { settled: [by] })).grossMinor;
    expect([settledIn('EUR'), settledIn('JPY')]).toEqual([10_000, 0]);
  });
});
