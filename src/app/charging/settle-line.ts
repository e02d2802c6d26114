import { isDemo, type RecordKey } from '../../core/keys.ts';
import type { Settled } from '../../core/walk.ts';
import { changeUnsealed } from '../actions/walk.ts';

/** Where what is typed about a line is kept until it is settled; the demo's leaves with the demo. */
export const settleDraftKey = (walk: RecordKey<'walk'>, line: string): string =>
  `${isDemo(walk) ? 'demo/' : ''}settle/${walk}/${line}`;

/**
 * Writes down what was agreed about a line, or opens it again; what else the walk says stays as it is on disk. A
 * sealed walk stays as it was sealed.
 */
export const settleLine = (walk: RecordKey<'walk'>, line: string, settled: Settled | undefined) =>
  changeUnsealed(
    walk,
    (now) => ({
      settled: [...(now.settled ?? []).filter((each) => each.line !== line), ...(settled ? [settled] : [])],
    }),
    [settleDraftKey(walk, line)],
  );
