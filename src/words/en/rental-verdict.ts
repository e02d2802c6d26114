/** First screen of a hand-out; what it shares with a return stands there. */
export const handOutVerdict = {
  fit: 'Is it fit to go out?',
  proof: 'Is the proof complete?',
  goesWith: 'Damage that it goes out with',
  goesSound: 'None found.',
  goesSoundSoFar: 'None found in what was looked at.',
  shortHire: 'Can wear of this hire be charged?',
} as const;

/** How something that is damaged at a return was before the hire. */
export const beforeWords = {
  sound: 'was sound at hand-out',
  'was-there': 'was there at hand-out already',
  'got-worse': 'was there at hand-out, and is worse now',
  'not-looked-at': 'was not looked at when it went out',
  'no-hand-out': 'nobody looked before the hire',
} as const;

/** First screen of a rental return. */
export const rentalVerdict = {
  outAgain: 'Can it go out again today?',
  outYes: 'Yes',
  outAfter: (call: string): string => `After this is done: ${call}`,
  outNo: 'No',
  outNotKnown: 'Not settled: see what is open',
  chargeable: 'Is anything chargeable?',
  chargeNone: 'No damage found. Wear is charged only where the contract says so.',
  chargeDamage: (count: number): string =>
    count === 1 ? '1 place looks like damage' : `${count} places look like damage`,
  chargeNew: (count: number): string =>
    count === 1
      ? '1 place is damaged that was sound at hand-out'
      : `${count} places are damaged that were sound at hand-out`,
  chargeOld: 'Nothing so far: each place was damaged at hand-out already, or was not looked at then.',
  chargeSomeOpen: 'Not all of it was seen: see what is open.',
  proof: 'Is the proof complete, before the renter leaves?',
  proofYes: 'Yes: nothing asked for is open, and no photo of the sequence is missing.',
  proofNo: (missing: readonly string[]): string => `No: ${missing.join('; ')}`,
  proofMissing: (count: number): string =>
    count === 1 ? '1 item is still open' : `${count} items are still open`,
  proofPhotos: (count: number): string =>
    count === 1 ? '1 photo of the sequence is missing' : `${count} photos of the sequence are missing`,
  proofMarks: (count: number): string =>
    count === 1 ? '1 size does not say where its mark is' : `${count} sizes do not say where their mark is`,
  handOut: (day: string): string => `Compared with the hand-out walk of ${day}.`,
  noHandOut:
    'No hand-out walk on this phone. Damage is listed, and charged only if both sides agree; wear cannot be charged.',
} as const;
