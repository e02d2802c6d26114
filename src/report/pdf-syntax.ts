/** Text in the language of a file format, which nobody reads as a sentence. */
export const syntax = String.raw;

/** A number as PDF writes it: hundredths of a point are finer than any printer. */
export const number = (value: number): string => String(Math.round(value * 100) / 100 || 0);

/** Numbers with a space between them. */
export const numbers = (values: readonly number[]): string => values.map(number).join(' ');

/** Four hexadecimal digits. */
export const hex4 = (value: number): string => value.toString(16).toUpperCase().padStart(4, '0');
