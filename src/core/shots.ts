import { makePlace } from './keys.ts';
import type { Side } from './machine.ts';
import type { Photo, Shown } from './photo.ts';
import { groundStops, type Step } from './steps.ts';
import type { Corner, Walk } from './walk.ts';

/** What a picture of the sequence is of. */
export type ShotOf =
  | { readonly kind: 'plate' | 'meter' }
  | { readonly kind: 'corner'; readonly corner: Corner }
  | { readonly kind: 'sprocket'; readonly side: Side }
  | { readonly kind: 'mark'; readonly side: Side; readonly item: string; readonly spot: number };

/** One picture of the sequence that a machine is handed out and taken back with. */
export interface Shot {
  /** Readable, and the same for hand-out and return; kept with the picture as its `shot`. */
  readonly id: string;
  readonly of: ShotOf;
  readonly shows: Shown;
}

const machine = makePlace({ side: 'whole', component: 'machine' });

/** True for a size of the track: it is read at a mark, so that another walk can read the same lug, link or shoe. */
export function isMarked({ kind, component, items: [item] }: Step): boolean {
  const ask = item?.ask.kind;
  return kind === 'measure' && component === 'track' && (ask === 'length' || ask === 'pitch');
}

function corner(at: Corner): Shot {
  const side = at.endsWith('left') ? 'left' : 'right';
  const component = at.startsWith('front') ? 'idler' : 'sprocket';
  return { id: at, of: { kind: 'corner', corner: at }, shows: { place: makePlace({ side, component }) } };
}

function sprocket(side: Side): Shot {
  const place = makePlace({ side, component: 'sprocket' });
  return { id: place, of: { kind: 'sprocket', side }, shows: { place, item: 'sprocket-teeth' } };
}

/** The id of the photo of a mark. */
export const markId = ({ place, items: [item], spot }: Step): string => `${place}.${item?.id}.s${spot}`;

function mark(step: Step, side: Side): readonly Shot[] {
  const { place, spot } = step;
  const [item] = step.items;
  if (!item) return [];
  return [
    { id: markId(step), of: { kind: 'mark', side, item: item.id, spot }, shows: { place, item: item.id } },
  ];
}

/**
 * The pictures of a rental walk in one sequence: plate and hour meter first, then once round the machine from the
 * walk's corner, with each marked lug, link or shoe at its side and each sprocket at its end.
 */
export function shotsOf({ corner: start }: Walk, steps: readonly Step[]): readonly Shot[] {
  const marked = steps.filter(isMarked);
  const round = groundStops(start).flatMap((stop): readonly Shot[] => {
    switch (stop) {
      case 'side-left':
      case 'side-right': {
        const side = stop === 'side-left' ? 'left' : 'right';
        return marked.filter((step) => step.side === side).flatMap((step) => mark(step, side));
      }
      case 'front-left':
      case 'front-right':
        return [corner(stop)];
      case 'rear-left':
        return [corner(stop), sprocket('left')];
      case 'rear-right':
        return [corner(stop), sprocket('right')];
      default:
        return [];
    }
  });
  const whole = (['plate', 'meter'] as const).map((kind): Shot => ({
    id: kind,
    of: { kind },
    shows: { place: machine },
  }));
  return [...whole, ...round];
}

/** The pictures of the sequence that were neither taken nor left out with a reason. */
export function missingShots(
  shots: readonly Shot[],
  photos: readonly Pick<Photo, 'shot'>[],
  { skipped = [] }: Pick<Walk, 'skipped'>,
): readonly Shot[] {
  const settled = new Set([...photos.map(({ shot }) => shot), ...skipped.map(({ shot }) => shot)]);
  return shots.filter(({ id }) => !settled.has(id));
}
