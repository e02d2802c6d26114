import type { GroupId } from '../../core/groups.ts';
import type { Mode, StopId } from '../../core/steps.ts';

/** Where one stands on the way round. */
export const stopWords: Readonly<Record<StopId, string>> = {
  drive: 'drive',
  off: 'track off',
  'front-left': 'front left',
  'side-left': 'left side',
  'rear-left': 'rear left',
  'rear-right': 'rear right',
  'side-right': 'right side',
  'front-right': 'front right',
  'raised-left': 'left side raised',
  'raised-right': 'right side raised',
  end: 'last look',
};

/** How the machine must stand at a stop. */
export const modeWords: Readonly<Record<Mode, string>> = {
  'engine-off': 'Engine off, blocked',
  'two-people': 'Two people, track turning, nobody in reach',
};

/** What is looked at together and passed in one tap: its name, and the question over it. */
export const groupWords: Readonly<Record<GroupId, { readonly name: string; readonly ask: string }>> = {
  drive: { name: 'driving', ask: 'Drive 20–30 m both ways, both speeds. Anything odd?' },
  off: { name: 'track off', ask: 'How did the track come off?' },
  tread: { name: 'outside of the track', ask: 'Roll the loop past you. How is the rubber outside?' },
  inner: { name: 'inside of the track', ask: 'Look at the inner face. How is it?' },
  links: { name: 'chain', ask: 'Look along the chain. How are links, pins and bushings?' },
  shoes: { name: 'shoes', ask: 'How are shoes and their bolts?' },
  idler: { name: 'idler', ask: 'How is the idler?' },
  adjuster: { name: 'adjuster', ask: 'How is the adjuster? Look, do not touch.' },
  'carrier-roller': { name: 'carrier rollers', ask: 'How are the carrier rollers?' },
  'slide-plate': { name: 'slide plate', ask: 'How is the slide plate?' },
  'bottom-roller': { name: 'bottom rollers', ask: 'How are the bottom rollers, one by one?' },
  sprocket: { name: 'sprocket', ask: 'How is the sprocket? Drive face and root, not the tip.' },
  motor: { name: 'travel motor', ask: 'How is the travel motor?' },
  suspension: { name: 'suspension', ask: 'How are the torsion arms or bogies?' },
  frame: { name: 'frame and guards', ask: 'How are frame and guards?' },
  machine: { name: 'whole machine', ask: 'Stand back. How do both sides compare?' },
};
