import { itemById, type Ask } from './items.ts';
import type { Fault } from './problem.ts';
import type { Observed, ObservedKind, Reading } from './readings.ts';

/** How a pass of a whole group is named in a key: `pass-tread`, `pass-inner-raised`. */
const isPassItem = (itemId: string): boolean => itemId.startsWith('pass-');

const notKind = (...options: ObservedKind[]): Fault => ({
  path: ['what', 'kind'],
  problem: { kind: 'not-one-of', options },
});

function findingFault(what: Observed, ask: Extract<Ask, { kind: 'finding' }>): Fault | undefined {
  if (what.kind !== 'finding' || ask.findings.includes(what.finding)) return undefined;
  return { path: ['what', 'finding'], problem: { kind: 'not-one-of', options: ask.findings } };
}

/**
 * Why a reading is none of its item, or undefined: a size where a finding is asked, a finding that the item does
 * not have. An item that this build does not know may have any reading.
 */
export function readingFault(itemId: string, { what }: Reading): Fault | undefined {
  if (isPassItem(itemId)) return what.kind === 'pass' ? undefined : notKind('pass');
  if (what.kind === 'unseen') return undefined;
  const ask = itemById(itemId)?.ask;
  if (!ask) return undefined;
  if (what.kind !== ask.kind) return notKind(ask.kind, 'unseen');
  return ask.kind === 'finding' ? findingFault(what, ask) : undefined;
}
