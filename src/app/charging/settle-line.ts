import type { Settled, Walk } from '../../core/walk.ts';
import type { RecordKey } from '../../core/keys.ts';
import type { RecordValue } from '../../core/versions.ts';
import { save, type Saved } from '../actions/saved.ts';

/** Writes down what was agreed about a line, or opens it again; what else the walk says stays as it is on disk. */
export function settleLine(
  walk: RecordKey<'walk'>,
  line: string,
  settled: Omit<Settled, 'line'> | undefined,
): Promise<Saved> {
  const edit = (value: RecordValue | undefined): RecordValue => {
    const now = value as unknown as Walk;
    const others = (now.settled ?? []).filter((each) => each.line !== line);
    return { ...now, settled: [...others, ...(settled ? [{ ...settled, line }] : [])] };
  };
  return save([{ key: walk, edit }]);
}
