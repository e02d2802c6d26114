import type { Cleanliness, Posture, SagMethod } from '../../core/limits.ts';

export interface SagMethodWords {
  readonly name: string;
  /** How it is done, in one line. */
  readonly how: string;
  /** From what to what it is read. */
  readonly reads: string;
}

export const sagMethodWords: Readonly<Record<SagMethod, SagMethodWords>> = {
  'straightedge-grouser': {
    name: 'straightedge, to the grouser tip',
    how: 'Lay a straightedge over the grousers of the top run; read down to the tip of the lowest grouser.',
    reads: 'straightedge to grouser tip',
  },
  'straightedge-shoe': {
    name: 'straightedge, to the shoe',
    how: 'Lay a straightedge over the top run; read down to the plate of the lowest shoe, between its grousers.',
    reads: 'straightedge to shoe plate',
  },
  'straightedge-slide': {
    name: 'straightedge, idler to slide plate',
    how: 'Lay a straightedge on the track from the idler to the slide plate or carrier roller; read the largest gap under it.',
    reads: 'straightedge to track, largest gap',
  },
  string: {
    name: 'string over the top run',
    how: 'Pull a string tight over the top run; read down to the tip of the lowest grouser or lug.',
    reads: 'string to track',
  },
  'frame-to-shoe': {
    name: 'raised, frame to shoe',
    how: 'Side raised and blocked: read from the bottom of the track frame to the back of the shoe, at mid-frame.',
    reads: 'bottom of frame to back of shoe',
  },
  'frame-to-track': {
    name: 'raised, frame to track',
    how: 'Side raised and blocked: read from the bottom of the track frame to the inner face of the track, at mid-frame.',
    reads: 'bottom of frame to inner face of track',
  },
  'roller-gap': {
    name: 'raised, gap under a roller',
    how: 'Side raised and blocked, joint mark on top: gauge the gap under the middle roller with a bolt or dowel, never a hand.',
    reads: 'middle roller to track',
  },
  deflection: {
    name: 'pushed down under a load',
    how: 'Push the middle of the top run down with a known load; read how far it goes below the straightedge.',
    reads: 'way down under a known load',
  },
  retreat: {
    name: 'idler backed off from tight',
    how: 'Tighten until all slack is gone, mark the idler; ease it and read how far the idler came back.',
    reads: 'how far the idler came back',
  },
};

export const postureWords: Readonly<Record<Posture, string>> = {
  ground: 'standing on the ground',
  raised: 'raised and blocked',
};

export const cleanlinessWords: Readonly<Record<Cleanliness, string>> = {
  clean: 'clean',
  'working-dirt': 'in working dirt',
  packed: 'packed with mud or stones',
};

/** What moved the track before it was read. */
export const travelWords = {
  forward: 'driven forward',
  reverse: 'driven in reverse',
  coasted: 'rolled to a stop without brakes',
} as const;

export const sagStateWords = {
  tight: 'too tight',
  right: 'right',
  loose: 'too loose',
  derailing: 'so loose that the track may come off',
} as const;

export const sagAsk = {
  method: 'How was it measured?',
  posture: 'How does the machine stand?',
  clean: 'How clean is the track?',
  travel: 'Which way did it last drive?',
  coasted: 'Did it roll to a stop without brakes?',
  span: 'Length of the span',
  load: 'Load used',
  another: 'Read another span',
  spanHint: 'Between the two points that carry it; gives the idler travel.',
  tension: (times: string): string =>
    `Tension about ${times} times what the middle of the range gives; an estimate.`,
  travelOut: (by: string): string => `Idler about ${by} further out; an estimate.`,
  travelIn: (by: string): string => `Idler about ${by} further in; an estimate.`,
  sheetSays: (method: string) => `The sheet reads it so: ${method}.`,
} as const;
