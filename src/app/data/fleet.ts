import { valueIn } from '../../core/assemble.ts';
import { enoughHistories, learn, lessonOf, type Learnt, type Lesson } from '../../core/fleet.ts';
import { historiesOf } from '../../core/history.ts';
import type { RecordKey } from '../../core/keys.ts';
import { historyInput } from '../../core/outlook.ts';
import { ok } from '../../core/result.ts';
import type { Walk } from '../../core/walk.ts';
import type { Stored } from '../../storage/store.ts';
import { loadBuiltIn } from './built-in.ts';
import { outlookShelf } from './outlook-shelf.ts';
import { store } from './phone.ts';
import { loadWalk } from './walk-model.ts';

const nothing: Lesson = { paces: [], lives: [] };

/** Finished walks of each machine of this phone, the newest last; demo machines teach nothing. */
async function walksByMachine(): Promise<ReadonlyMap<string, readonly RecordKey<'walk'>[]>> {
  const rows = await store.list({ prefix: 'walk/' });
  const found = new Map<string, { readonly key: RecordKey<'walk'>; readonly at: string }[]>();
  for (const { key, versions } of rows.ok ? rows.value : []) {
    const walk = valueIn<Walk>(versions);
    if (walk?.finishedAt === undefined) continue;
    const mine = found.get(walk.machine) ?? [];
    mine.push({ key: key as RecordKey<'walk'>, at: walk.startedAt?.utc ?? '' });
    found.set(walk.machine, mine);
  }
  return new Map(
    [...found].map(([machine, walks]) => [
      machine,
      walks.sort((a, b) => (a.at < b.at ? -1 : 1)).map(({ key }) => key),
    ]),
  );
}

/** What one machine teaches, kept until one of its walks or its work changes. */
async function lessonFrom(machine: string, walks: readonly RecordKey<'walk'>[]): Promise<Lesson> {
  const last = walks.at(-1);
  if (last === undefined) return nothing;
  const kept = await store.derive<Lesson>({
    name: `lesson/${machine}/${walks.length}/${last}`,
    core: __BUILD_ID__,
    from: [machine as RecordKey, ...walks],
    compute: () => workOut(last),
  });
  return kept.ok ? kept.value : nothing;
}

async function workOut(key: RecordKey<'walk'>): Promise<Stored<Lesson>> {
  const model = await loadWalk(key);
  const shelf = model.ok ? await outlookShelf(model.value) : undefined;
  if (!model.ok || !shelf?.ok) return ok(nothing);
  const builtIn = await loadBuiltIn();
  const histories = historiesOf(historyInput(shelf.value, builtIn, key, model.value.assembled));
  return ok(lessonOf(histories, builtIn.life.kappa.value));
}

/** What the machines of this phone have taught; undefined while there are too few walks for any of it. */
export async function learntFromFleet(): Promise<Learnt | undefined> {
  const byMachine = await walksByMachine();
  const walks = [...byMachine.values()].reduce((sum, each) => sum + each.length, 0);
  if (walks < enoughHistories) return undefined;
  const lessons: Lesson[] = [];
  for (const [machine, each] of byMachine) lessons.push(await lessonFrom(machine, each));
  return learn(lessons);
}
