import { compareBytewise, counterOf, deviceOf, makeStamp } from '../../src/core/stamp.ts';
import type { Version } from '../../src/core/versions.ts';
import { answered, completed, good, refused, same, type Case, type Lab } from './lab.ts';
import { demoLug, deviceAt, foreign, keyOf, lug, machine, office, roller, walk, write } from './samples.ts';

/** The keys and stamps that wait for the office. */
async function outbox(lab: Lab): Promise<readonly string[]> {
  const db = await answered(lab.factory.open(lab.name));
  const rows = await answered(db.transaction('outbox').objectStore('outbox').getAllKeys());
  db.close();
  return rows.map(String);
}

const pointer = (version: Version | undefined): string => `${version?.key},${version?.stamp}`;

export const mergeCases: readonly Case[] = [
  {
    title: '[S20] what others made is taken in, in any order and any number of times, with the same result',
    run: async (lab) => {
      const versions = [
        foreign(lug, 3, 'a'),
        foreign(lug, 4, 'b', { [office]: 3 }),
        foreign(lug, 4, 'c', { [office]: 3 }, deviceAt(2)),
        foreign(walk, 5, undefined),
      ];
      const store = lab.open();
      same(good(await store.merge([])), { added: 0, known: 0, clashes: [] }, 'nothing');
      same(good(await store.merge(versions)), { added: 3, known: 1, clashes: [lug] }, 'first time');
      same(good(await store.merge([...versions].reverse())), { added: 0, known: 4, clashes: [] }, 'again');
      same(
        good(await store.merge(versions.slice(0, 1))),
        { added: 0, known: 1, clashes: [] },
        'a covered one',
      );
      same(good(await store.read(lug)), [versions[2], versions[1]], 'rank order');
      same(good(await store.read(walk)), [versions[3]], 'removal');
    },
  },
  {
    title: '[S21] after a merge this phone counts above what it has seen',
    run: async (lab) => {
      const store = lab.open();
      good(await store.merge([foreign(lug, 900_000, 'x')]));
      const [made] = good(await store.write([write(walk, 'w')]));
      same(made && counterOf(made.stamp), 900_001, 'counter');
      const [next] = good(await store.write([write(lug, 'y')]));
      same(next?.seen, { [office]: 900_000 }, 'seen');
    },
  },
  {
    title: '[S22] stamps a million ahead are refused, and nothing of that merge stays',
    run: async (lab) => {
      const store = lab.open();
      const far = foreign(lug, 1_000_001, 'far');
      const answer = await store.merge([foreign(walk, 1, 'w'), far]);
      same(refused(answer), { kind: 'counts-ahead', stamp: far.stamp }, 'refusal');
      same(good(await store.list({ prefix: '' })), [], 'nothing stays');
      same(good(await store.merge([foreign(lug, 1_000_000, 'near')])).added, 1, 'just near enough');
    },
  },
  {
    title: '[S23] a phone that finds another under its id takes a new one, and what only it has comes along',
    run: async (lab) => {
      const store = lab.open();
      const old = good(await store.device());
      const [first] = good(await store.write([write(machine, 'shared')]));
      const [second] = good(await store.write([write(lug, 'ours'), write(roller, 'ours')]));
      same(
        good(await store.merge(first ? [first] : [])),
        { added: 0, known: 1, clashes: [] },
        'own and known',
      );
      same(good(await store.device()), old, 'no reason to change');
      good(await store.merge([foreign(roller, 3, 'beside')]));
      const twins = [foreign(walk, 9, 'twin', {}, old), foreign(lug, 2, 'twin', {}, old)];
      same(good(await store.merge(twins)), { added: 2, known: 0, clashes: [lug] }, 'twin');
      same(await outbox(lab), [], 'nothing to send');
      const now = good(await store.device());
      same(now === old, false, 'a new id');
      same(good(await store.read(machine)), [first], 'shared ones stay');
      const lugs = good(await store.read(lug));
      same(lugs.map(({ value }) => String(value?.['note'])).sort(), ['ours', 'twin'], 'both stand');
      const renewed = lugs.find(({ value }) => value?.['note'] === 'ours');
      same([renewed?.stamp, renewed?.by], [makeStamp(2, now), now], 'renewed');
      same(
        good(await store.read(roller)).map(({ stamp }) => stamp),
        [makeStamp(3, now), makeStamp(3, office)].sort(compareBytewise),
        'others, too',
      );
      const [next] = good(await store.write([write(walk, 'w')]));
      same(next && [counterOf(next.stamp), deviceOf(next.stamp)], [10, now], 'counts on');
      same(second === undefined, false, 'sample');
    },
  },
  {
    title: '[S24] a joined phone queues what it writes and takes in, never the demo, and not what is covered',
    run: async (lab) => {
      const store = lab.open();
      const [early] = good(await store.write([write(machine, 'early')]));
      good(await store.write([write(demoLug, 'demo')]));
      same(await outbox(lab), [], 'alone');
      good(await store.join());
      same(await outbox(lab), [pointer(early)], 'what was here');
      const [made] = good(await store.write([write(lug, 'x'), write(demoLug, 'y')]));
      same(await outbox(lab), [early, made].map(pointer), 'what is written');
      const [next] = good(await store.write([write(lug, 'z')]));
      same(await outbox(lab), [early, next].map(pointer), 'the covered one left');
      good(await store.merge([foreign(walk, 9, 'file')]));
      same((await outbox(lab)).length, 3, 'what came by file');
      const beside = foreign(lug, 3, 'beside');
      good(await store.merge([beside]));
      const sides = (await outbox(lab)).filter((waiting) => waiting.startsWith(lug));
      same(sides.length, 2, 'both sides of a clash');
    },
  },
  {
    title: '[S25] of a joined phone only what waits in the outbox takes the new id',
    run: async (lab) => {
      const store = lab.open();
      const old = good(await store.device());
      const [sent, unsent] = good(await store.write([write(machine, 'sent'), write(lug, 'unsent')]));
      good(await store.join());
      const db = await answered(lab.factory.open(lab.name));
      const tx = db.transaction('outbox', 'readwrite');
      tx.objectStore('outbox').delete([sent?.key ?? '', sent?.stamp ?? '']);
      await completed(tx);
      db.close();
      good(await store.merge([foreign(keyOf('limits/x'), 1, 'twin', {}, old)]));
      const now = good(await store.device());
      same(good(await store.read(machine)), [sent], 'sent');
      good(await store.merge([foreign(machine, 1, 'beside')]));
      same((await outbox(lab)).includes(pointer(sent)), false, 'what was sent is not queued again');
      const [renewed] = good(await store.read(lug));
      same(renewed?.stamp, makeStamp(2, now), 'unsent');
      const waiting = await outbox(lab);
      same(waiting.includes(pointer(renewed)) && !waiting.includes(pointer(unsent)), true, 'pointer');
    },
  },
];
