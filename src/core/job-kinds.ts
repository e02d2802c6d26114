import { partsASide, type Component } from './items.ts';
import { isChain, isRubber, type Shape } from './machine.ts';
import type { PlaceSide } from './keys.ts';

export const jobKinds = [
  'renew-track',
  'renew-chain',
  'turn-bushings',
  'change-link',
  'renew-shoes',
  'regrouser',
  'renew-pads',
  'renew-sprocket',
  'renew-idler',
  'renew-bottom-roller',
  'renew-carrier-roller',
  'renew-slide-plate',
  'mend-adjuster',
  'renew-spring',
  'swap-sides',
  'mend-motor',
  'mend-frame',
  'mend-suspension',
  'tighten-bolts',
  'adjust-sag',
  'mend-other',
] as const;
export type JobKind = (typeof jobKinds)[number];

/** What a kind of job is, whichever machine it is done on. */
export interface JobTraits {
  /** The part that it is done to; `machine` where it may be any. */
  readonly component: Component;
  /** What a price is for: all of it on one side, one part, or both sides at once. */
  readonly per: 'side' | 'part' | 'both-sides';
  /** What has to be set up on its side first; a track that comes off is lifted before. */
  readonly needs: 'nothing' | 'lift' | 'track-off';
  /** The items that it puts right; those of wear start anew. */
  readonly mends: readonly string[];
  /** Whether the kind of undercarriage knows it; how many of the parts there are does not count here. */
  readonly fits: (shape: Shape) => boolean;
}

type Extra = Partial<Pick<JobTraits, 'per' | 'needs' | 'fits'>>;

const job = (component: Component, mends: readonly string[], extra: Extra = {}): JobTraits => ({
  component,
  mends,
  per: 'side',
  needs: 'nothing',
  fits: () => true,
  ...extra,
});

const rubber = { fits: isRubber };
const chain = { fits: isChain };
const pads = {
  fits: ({ track }: Shape) => track === 'steel-pads' || track === 'rubber-shoes',
};
const sprung = { fits: ({ suspension }: Shape) => suspension !== 'rigid' };
const off = { needs: 'track-off' } as const;
const part = { per: 'part' } as const;

/** Every kind of job. What needs lifting and what needs the track off is common practice, no source. */
export const jobTraits: Readonly<Record<JobKind, JobTraits>> = {
  'renew-track': job(
    'track',
    [
      'lug-depth',
      'cord',
      'crack',
      'bulge',
      'lug-damage',
      'edges',
      'cores',
      'drive-lugs',
      'guide-horns',
      'roller-path',
      'swelling',
      'kinked-cords',
    ],
    { ...rubber, ...off },
  ),
  'renew-chain': job(
    'track',
    [
      'link-height',
      'pitch',
      'bushing-od',
      'link-sides',
      'pin-bosses',
      'links-cracked',
      'bushing-crack',
      'bushing-turned',
      'master-joint',
      'pin-walk',
      'joints',
      'bolt-holes',
      'snaking',
    ],
    { ...chain, ...off },
  ),
  // The worn half of each bushing goes to the other side, which brings the pitch back; links stay as they are.
  'turn-bushings': job('track', ['pitch', 'bushing-od', 'pin-walk', 'joints', 'snaking'], {
    ...chain,
    ...off,
  }),
  'change-link': job('track', ['links-cracked', 'bolt-holes', 'master-joint'], { ...chain, ...off, ...part }),
  'renew-shoes': job('track', ['grouser', 'shoes', 'shoe-bolts'], chain),
  regrouser: job('track', ['grouser'], chain),
  'renew-pads': job('track', ['pad-height', 'pads', 'pad-bolts'], pads),
  'renew-sprocket': job('sprocket', ['sprocket-teeth', 'sprocket-bolts'], off),
  'renew-idler': job('idler', ['idler-rim', 'idler-play', 'idler-leak', 'idler-flange', 'idler-tread'], {
    ...off,
    ...part,
  }),
  'renew-bottom-roller': job(
    'bottom-roller',
    ['roller-turn', 'roller-leak', 'roller-flat', 'roller-flange', 'roller-bolts', 'roller-tread'],
    { needs: 'lift', ...part },
  ),
  'renew-carrier-roller': job('carrier-roller', ['carrier-turn', 'carrier-leak', 'carrier-flat'], part),
  'renew-slide-plate': job('slide-plate', ['slide-wear']),
  'mend-adjuster': job('adjuster', ['adjuster-leak'], off),
  'renew-spring': job('adjuster', ['recoil-spring'], off),
  // Evens out what always turning to one side has worn, and mends a tread that runs backwards.
  'swap-sides': job('track', ['tread-way', 'chain-way'], { ...off, per: 'both-sides' }),
  'mend-motor': job('motor', ['motor-oil'], off),
  'mend-frame': job('frame', ['track-frame', 'guards', 'alignment', 'idler-mount'], { needs: 'lift' }),
  'mend-suspension': job('suspension', ['suspension-arms'], { ...sprung, ...off }),
  'tighten-bolts': job('machine', [
    'shoe-bolts',
    'pad-bolts',
    'roller-bolts',
    'sprocket-bolts',
    'motor-bolts',
  ]),
  'adjust-sag': job('track', ['sag', 'sag-by-eye', 'sag-before']),
  'mend-other': job('machine', ['track-off', 'tracks-alike', 'adjuster-travel', 'packing', 'roller-wire']),
};

export const isJobKind = (kind: string): kind is JobKind => Object.hasOwn(jobTraits, kind);

/** The kinds of job that a machine of this shape can need. */
export const jobKindsFor = (shape: Shape): readonly JobKind[] =>
  jobKinds.filter((kind) => {
    const { component, fits } = jobTraits[kind];
    return fits(shape) && partsASide(component, shape) > 0;
  });

/** The id of a job on one machine, as keys of holds have it: `left.renew-track`, `right.renew-bottom-roller.3`. */
export const jobId = (side: PlaceSide, kind: JobKind, number?: number): string =>
  [side, kind, ...(number === undefined ? [] : [number])].join('.');
