import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  callRank,
  calls,
  meanwhileRank,
  meanwhiles,
  type Call,
  type Meanwhile,
} from '../../src/core/calls.ts';
import type { ItemOutcome } from '../../src/core/score.ts';
import { callOf, shownCall, verdictOf } from '../../src/core/verdict.ts';
import { factsOf } from '../../src/core/score.ts';
import { law } from './law.ts';
import { inputOf } from './made.ts';

const [state] = factsOf(inputOf()).states.values();

const outcome = (
  atLeast: Call,
  meanwhile: Meanwhile = 'work',
  more: { open?: boolean; canPark?: boolean } = {},
): ItemOutcome => {
  if (!state) throw new Error('a machine has states');
  const open = more.open ? [{ kind: 'not-read' as const, params: {} }] : [];
  return { state, atLeast, meanwhile, open, canPark: more.canPark ?? false, reasons: [], notes: [] };
};

const outcomes = fc.array(
  fc
    .tuple(fc.constantFrom(...calls), fc.constantFrom(...meanwhiles), fc.boolean(), fc.boolean())
    .map(([call, meanwhile, open, canPark]) => outcome(call, meanwhile, { open, canPark })),
  { maxLength: 12 },
);

describe('[N4] the verdict', () => {
  test('[V100] is the worst call and the strictest meanwhile of all outcomes, from whichever they come', () => {
    law(
      fc.property(outcomes, (list) => {
        const { atLeast, meanwhile } = verdictOf(list);
        expect(callRank(atLeast)).toBe(Math.max(0, ...list.map((each) => callRank(each.atLeast))));
        expect(meanwhileRank(meanwhile)).toBe(
          Math.max(0, ...list.map((each) => meanwhileRank(each.meanwhile))),
        );
      }),
    );
  });

  test('[V101] is never shown as run while something open could park the machine', () => {
    law(
      fc.property(outcomes, (list) => {
        const isOpen = list.some(({ open, canPark }) => canPark && open.length > 0);
        const shown = shownCall(verdictOf(list));
        if (isOpen || list.length === 0) expect(shown).not.toBe('run');
        if (!isOpen && list.length > 0) expect(shown).toBe(verdictOf(list).atLeast);
      }),
    );
  });

  test('[V102] what is known to be worse is shown whatever is open', () => {
    const open = outcome('run', 'work', { open: true, canPark: true });
    expect(shownCall(verdictOf([open]))).toBe('open');
    expect(shownCall(verdictOf([open, outcome('recheck')]))).toBe('recheck');
    expect(verdictOf([open, outcome('recheck')]).settled).toBe(false);
  });

  test('[V103] of nothing is open', () => {
    expect(verdictOf([])).toEqual({
      atLeast: 'run',
      meanwhile: 'work',
      settled: false,
      drivers: [],
      openParking: [],
      openOther: [],
    });
    expect(shownCall(verdictOf([]))).toBe('open');
  });

  test('[V104] what is open and cannot park is named beside run', () => {
    const other = outcome('run', 'work', { open: true });
    const parking = outcome('recheck', 'work', { open: true, canPark: true });
    expect(verdictOf([outcome('run'), other])).toMatchObject({
      settled: true,
      openOther: [other],
      openParking: [],
    });
    expect(verdictOf([other, parking])).toMatchObject({
      settled: false,
      openOther: [other],
      openParking: [parking],
    });
  });

  test('[V105] is driven by the outcomes of its call and of its meanwhile, the worst first', () => {
    const [strict, worst, mild, fine] = [
      outcome('recheck', 'move-only'),
      outcome('replace', 'light-work'),
      outcome('recheck', 'work'),
      outcome('run'),
    ];
    expect(verdictOf([strict, mild, fine, worst]).drivers).toEqual([worst, strict]);
  });

  test('[V106] of run and work has no drivers, and of work none by its meanwhile', () => {
    expect(verdictOf([outcome('run'), outcome('run')]).drivers).toEqual([]);
    const [repair, recheck] = [outcome('repair'), outcome('recheck')];
    expect(verdictOf([recheck, repair]).drivers).toEqual([repair]);
    const limited = outcome('run', 'light-work');
    expect(verdictOf([outcome('run'), limited]).drivers).toEqual([limited]);
  });

  test('[V107] put together is its call', () => {
    law(
      fc.property(outcomes, (list) => {
        const { atLeast, meanwhile, settled } = verdictOf(list);
        expect(callOf(list)).toEqual({ atLeast, meanwhile, settled });
      }),
    );
  });
});
