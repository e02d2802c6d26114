import type { Shot } from '../../core/shots.ts';
import { unreachable } from '../../core/result.ts';
import { cornerWords } from './choices.ts';
import { itemName, sideNames } from './items.ts';

/** A photo of the sequence: what it is of, and how to take it so that it says something. */
export function shotWords({ of }: Shot): { readonly name: string; readonly line: string } {
  switch (of.kind) {
    case 'plate':
      return { name: 'Plate with the serial number', line: 'So near that every character can be read.' };
    case 'meter':
      return {
        name: 'Hour meter',
        line: 'Engine off. Key on only to read it, then key out again. So near that the hours can be read.',
      };
    case 'corner':
      return {
        name: `Machine from the ${cornerWords[of.corner]}`,
        line: 'Three steps back: the whole end of the track and the frame above it.',
      };
    case 'sprocket':
      return {
        name: `${sideNames[of.side]} sprocket`,
        line: 'One step back: teeth and bolts, and the track where it runs on.',
      };
    case 'mark':
      return {
        name: `${sideNames[of.side]} ${itemName(of.item)}, mark ${of.spot}`,
        line: 'Mark it first, with paint that lasts. Then near, gauge or rule beside it, the mark in view.',
      };
    default:
      return unreachable(of);
  }
}

/** The sequence of photos of a hand-out or a return. */
export const sequence = {
  title: 'Photos in order',
  link: (settled: number, of: number): string => `Photos in order: ${settled} of ${of}`,
  nth: (at: number, of: number): string => `Photo ${at} of ${of}`,
  settled: (settled: number, of: number): string => `${settled} of ${of} done`,
  line: 'The same photos in the same order at hand-out and at return are what the two are compared by.',
  taken: 'taken',
  missing: 'not taken',
  leftOut: (why: string): string => `left out: ${why}`,
  leaveOut: 'Leave this photo out',
  why: 'Why can it not be taken?',
  takeAfterAll: 'Take it after all',
  later: 'Later',
  all: 'All photos',
  goOn: 'Next missing photo',
  toWalk: 'On to the walk',
  then: (day: string): string => `At hand-out, ${day}: stand where this was taken.`,
  noneThen: 'There is no photo of this from the hand-out.',
  thenAlt: (name: string): string => `At hand-out: ${name}`,
} as const;

/** Marks on the track, which let hand-out and return read the same lug, link or shoe. */
export const marks = {
  ask: 'Where is the mark?',
  hint: 'For example: yellow paint, beside the moulded size',
  again: (mark: string): string => `As before: ${mark}`,
  at: (mark: string): string => `Mark: ${mark}.`,
  none: 'The hand-out does not say where the mark is; go by its photo.',
  then: (value: string): string => `At hand-out ${value}.`,
  open: 'Photo from the hand-out',
  noPhoto: 'There is no photo of it from the hand-out.',
  thenAlt: (item: string): string => `At hand-out: ${item}`,
} as const;

/** What was looked at, as it was at hand-out. */
export const looksThen = {
  sound: 'At hand-out all of this was looked at and sound.',
  found: (list: string): string => `At hand-out: ${list}.`,
  notSeen: (items: string): string => `Not looked at when it went out: ${items}.`,
} as const;

/** What a return is held against. */
export const heldAgainst = {
  title: 'Compared with the hand-out',
  link: (day: string): string => `Compared with the hand-out of ${day}`,
  linkNone: 'No hand-out walk: what can be charged',
  by: (who: string): string => `walked by ${who}`,
  meter: (hours: string): string => `meter ${hours}`,
  notFinished: 'not finished',
  choose: 'Which hand-out walk?',
  noneOfThese: 'none of these',
  sizes: 'Marked places, then and now',
  markOf: (place: string, item: string, spot: number): string => `${place}: ${item}, mark ${spot}`,
  crack: 'cracked to the cord',
  thenNow: (then: string, now: string): string => `${then} at hand-out, ${now} now`,
  thenOnly: (then: string): string => `${then} at hand-out, not read yet`,
  handOutOf: (day: string): string => `Hand-out walk of ${day}`,
  since: 'Damage found now',
  sinceNone: 'No damage has been found so far.',
  missing:
    'The hand-out walk that this return names is not on this phone. Import its file, or choose another.',
  none: 'There is no hand-out walk of this machine on this phone.',
  canClaim:
    'What can be charged, if both sides agree: damage that no use makes, such as a cut or a torn-out lug, and that happened in this hire.',
  cannotClaim:
    'What cannot be charged: wear, since nobody measured what was there before; and damage that may have been there already.',
  ask: 'Has the hand-out walk been made on another phone? Import its file, then choose it here.',
  contract: 'Contract',
} as const;
