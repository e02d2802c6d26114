import { describe, expect, test } from 'vitest';
import { draftOf, factFrom, type Entered } from '../../src/app/ordering/fact-entry.ts';
import type { FactName } from '../../src/core/part-kinds.ts';
import type { LengthUnit } from '../../src/core/quantity.ts';
import { ordering as words } from '../../src/words/en/ordering.ts';
import { typedErrorLines, wholeNumber } from '../../src/words/en/typed.ts';

const enter = (name: FactName, texts: readonly string[], unit: LengthUnit = 'mm'): Entered =>
  factFrom(name, { texts, spaces: 4, how: 'measured' }, unit);

const facts: readonly (readonly [FactName, readonly string[], LengthUnit, object])[] = [
  ['moulding', [' 300x52.5x84 W '], 'mm', { value: '300x52.5x84 W' }],
  ['moulding', ['8'.repeat(200)], 'mm', { value: '8'.repeat(120) }],
  ['mark', ['8'.repeat(200)], 'mm', { value: '8'.repeat(160) }],
  ['tread', ['turf'], 'mm', { value: 'turf' }],
  ['width', ['10'], 'in', { value: 254, typed: '10', unit: 'in' }],
  ['pitch', ['210'], 'mm', { value: 52.5, typed: '210', unit: 'mm', spaces: 4 }],
  ['teeth', ['21'], 'mm', { value: 21 }],
  ['links', ['84', '83'], 'mm', { value: 84, again: 83 }],
  ['links', ['84', ' '], 'mm', { value: 84 }],
];

const asked: readonly (readonly [FactName, readonly string[], string])[] = [
  ['moulding', [' '], words.typeText],
  ['tread', [], words.noneThere],
  ['width', [''], typedErrorLines.empty],
  ['width', ['0'], typedErrorLines.empty],
  ['width', ['wide'], typedErrorLines.letters],
  ['teeth', ['8.5'], wholeNumber],
  ['links', ['84', '8.5'], wholeNumber],
  ['links', ['', '84'], typedErrorLines.empty],
];

describe('a fact as it is typed', () => {
  test.each(facts)('[PO33] %s: %j in %s is kept', (name, texts, unit, fact) => {
    expect(enter(name, texts, unit)).toEqual({ kind: 'fact', fact });
  });

  test.each(asked)('[PO34] %s: %j is no fact yet, and says why', (name, texts, line) => {
    expect(enter(name, texts)).toEqual({ kind: 'asked', line, choices: [] });
  });

  test('[PO34] a length with two readings is asked about', () => {
    const entered = enter('pitch', ['1,234']);
    expect(entered.kind === 'asked' && entered.choices.map(({ mm }) => mm)).toEqual([1.234, 1234]);
  });

  test('[PO35] what was entered before stands in the fields as it would be typed, what comes from elsewhere does not', () => {
    const pitch = { name: 'pitch', how: 'measured', value: 52.5, spaces: 4, doubts: [] } as const;
    expect(draftOf({ ...pitch, from: 'entered' }, 'mm')).toEqual({
      texts: ['210'],
      spaces: 4,
      how: 'measured',
    });
    expect(draftOf({ ...pitch, from: 'walk' }, 'mm').texts).toEqual([]);
    const links = {
      name: 'links',
      how: 'measured',
      value: 84,
      again: 83,
      doubts: [],
      from: 'entered',
    } as const;
    expect(draftOf(links, 'mm').texts).toEqual(['84', '83']);
  });
});
