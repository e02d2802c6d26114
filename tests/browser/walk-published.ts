import { itemById } from '../../src/core/items.ts';
import { parseKey, parsePlace, type RecordKey } from '../../src/core/keys.ts';
import type { Machine } from '../../src/core/machine.ts';
import type { Observed, Reading } from '../../src/core/readings.ts';
import { stepsOf, type Step } from '../../src/core/steps.ts';
import type { Walk } from '../../src/core/walk.ts';
import { inputOf, recordsOf, type FileRecord } from '../checks/walk-file.ts';
import type { Answer, Finding, Plan } from './walker.ts';

/** What of a published walk is brought along as a file: everything but the readings, which are typed. */
export const withoutReadings = (name: string): readonly FileRecord[] =>
  recordsOf(name).filter(({ key }) => !key.startsWith('reading/'));

interface Placed {
  readonly place: string;
  readonly item: string;
  readonly n: number;
  readonly reading: Reading;
}

const readingsOf = (name: string): readonly Placed[] =>
  recordsOf(name).flatMap(({ key, value }) => {
    const parts = parseKey(key as RecordKey);
    if (parts?.kind !== 'reading') return [];
    const { place, item, n } = parts;
    return [{ place, item, n, reading: value as unknown as Reading }];
  });

/** The same readings as a person types them, by the step at which they are asked for. */
export function planOf(name: string): Plan {
  const { machine, walk, sheets } = inputOf(name) as { machine: Machine; walk: Walk; sheets: Sheets };
  const steps = stepsOf(machine, walk, sheets.left?.sag[0]?.posture ?? 'ground');
  const plan: Record<string, Answer> = {};
  for (const placed of readingsOf(name)) {
    if (placed.reading.what.kind === 'pass') continue;
    const step = steps.find((each) => isAskedAt(each, placed));
    if (!step) throw new Error(`no step asks for ${placed.place} ${placed.item}`);
    plan[step.id] = answerFor(step, placed, plan[step.id]);
  }
  return plan;
}

type Sheets = { readonly left?: { readonly sag: readonly { readonly posture: 'ground' | 'raised' }[] } };

function isAskedAt(step: Step, { place, item, n, reading }: Placed): boolean {
  if (!step.items.some(({ id }) => id === item)) return false;
  if (step.kind !== 'look') return step.place === place && (reading.spot ?? n) === step.spot;
  const { side, component } = parsePlace(place as Step['place']);
  return step.side === side && step.component === component;
}

function answerFor(step: Step, placed: Placed, before: Answer | undefined): Answer {
  const { what } = placed.reading;
  if (step.kind !== 'look') return typedAnswer(what);
  const found = before && 'found' in before ? before.found : [];
  return { found: [...found, findingOf(placed)] };
}

function typedAnswer(what: Observed): Answer {
  switch (what.kind) {
    case 'sag':
      return { sag: what.typed, by: what.method, clean: what.clean };
    case 'pitch':
      return { type: [what.typed], links: what.links };
    case 'length':
      return { type: [what.typed] };
    case 'tread':
    case 'pair':
      return { type: what.typed };
    default:
      throw new Error(`${what.kind} is not typed`);
  }
}

function findingOf({ place, item, reading: { what } }: Placed): Finding {
  const { number } = parsePlace(place as Step['place']);
  const part = number === undefined ? {} : { part: number };
  if (what.kind === 'crack') {
    const [length = '', depth = ''] = what.typed ?? [];
    return { item, ...part, is: [length, depth] };
  }
  if (what.kind !== 'finding' || itemById(item) === undefined) throw new Error(`${item} is no finding`);
  return { item, ...part, is: what.finding, ...(what.count !== undefined && { count: what.count }) };
}

/** What was read, without when and with what, so that what was typed can be compared with what was published. */
export const comparable = (records: readonly FileRecord[]): Readonly<Record<string, unknown>> =>
  Object.fromEntries(
    records
      .filter(({ key }) => key.startsWith('reading/'))
      .map(({ key, value }) => [key, whatOf(value as unknown as Reading)]),
  );

function whatOf({ what }: Reading): unknown {
  // Which items a pass covers is the app's own list; a count of one is what a finding says without one.
  if (what.kind === 'pass') return { ...what, items: [...what.items].sort() };
  return what;
}
