import type { LengthUnit } from '../../core/quantity.ts';

/** Why what was typed is no number; the kinds of core/typed.ts. */
export const typedErrorLines = {
  empty: 'Type a number first.',
  letters: 'This is not a number. Use digits and one comma or point.',
  negative: 'This is below nothing. Is the minus meant?',
  fraction: 'There is a part here that this cannot have. Check the fraction or the decimals, or the unit.',
  'too-long': 'This is too long for a number.',
  'too-large': 'This is larger than it can be. Check the unit and the point.',
} as const;

export const wholeNumber = 'Count whole ones: no comma, point or fraction.';

/** For `1,234`: asked, never guessed. */
export const ambiguousAsk = (one: string, other: string): string => `Do you mean ${one} or ${other}?`;

export const typedHints: Readonly<Record<LengthUnit, string>> = {
  mm: 'Millimetres, for example 18.5',
  in: 'Inches, for example 0.72',
  'in/32': 'Count of 32nds, for example 23',
  'in/16': 'Inches and a fraction, for example 27 1/4',
};
