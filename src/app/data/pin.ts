/** What looks odd about a PIN; never a reason to refuse it, since plates differ and may be worn. */
export type PinHint = 'check-letter' | 'letters' | 'length';

/** One spelling of a PIN, to see whether two are the same. */
export const barePin = (pin: string): string => pin.toUpperCase().replace(/[\s.-]/g, '');

const fullLength = 17;

/**
 * ISO 10261 (from memory): 17 characters without I, O and Q, a check letter in position 9. Machines from
 * before carry shorter serial numbers, so a short one without odd letters is left alone.
 */
export function pinHints(pin: string): readonly PinHint[] {
  const bare = barePin(pin);
  const isFull = bare.length === fullLength;
  const nearly = bare.length > 14 && !isFull;
  return [
    ...(isFull && !/[A-Z]/.test(bare.charAt(8)) ? (['check-letter'] as const) : []),
    ...((isFull || nearly) && /[IOQ]/.test(bare) ? (['letters'] as const) : []),
    ...(nearly ? (['length'] as const) : []),
  ];
}
