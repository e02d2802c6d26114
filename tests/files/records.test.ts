import { describe, expect, test } from 'vitest';
import { ok, err, type Result } from '../../src/core/result.ts';
import type { RecordKey } from '../../src/core/keys.ts';
import { displayed, type Version } from '../../src/core/versions.ts';
import type { FileRecord } from '../../src/files/envelope.ts';
import { gatherRecords, type Source } from '../../src/files/gather.ts';
import { comesWithApp, planImport } from '../../src/files/import-plan.ts';
import { shelfOf } from '../../src/files/shelf.ts';
import { builtIn } from '../../src/reference/built-in.ts';
import { keyOf, lug, machine, version } from './samples.ts';

const note = (text: string) => ({ v: 1, note: text });

describe('a shelf of the records of a file', () => {
  const [a, b] = [keyOf('machine/a'), keyOf('machine/b')];

  test('[F17] versions are merged, and what is covered is gone', () => {
    const first = version(a, note('first'), 1);
    const second: Version = {
      ...version(a, note('second'), 2),
      seen: { [first.stamp.slice(13)]: 1 } as Version['seen'],
    };
    const shelf = shelfOf({ versions: [second, first, second], unstamped: [] });
    const third = version(b, note('another'), 1);
    const side = version(b, note('side'), 2);
    expect(shelfOf({ versions: [third, side], unstamped: [] }).get(b)).toEqual([third, side]);
    expect(shelf.get(a)).toEqual([second]);
    expect(shelf.get(b)).toEqual([]);
    expect(shelf.keys).toEqual([a]);
  });

  test('[F17] what is written by hand is the value, and a new version only where it says something new', () => {
    const stamped = version(a, note('same'), 5);
    const same = shelfOf({ versions: [stamped], unstamped: [{ key: a, value: note('same') }] });
    expect(same.get(a)).toEqual([stamped]);
    const other = shelfOf({ versions: [stamped], unstamped: [{ key: a, value: note('other') }] });
    expect(other.get(a)).toHaveLength(1);
    expect(displayed(other.get(a))?.value).toEqual(note('other'));
    expect(shelfOf({ versions: [], unstamped: [{ key: a, value: note('new') }] }).get(a)).toHaveLength(1);
  });

  test('[F17] what stands under a prefix is found in order, and nothing else', () => {
    const keys = [
      'reading/w1/left.track/sag/1',
      'reading/w1/left.track/sag/2',
      'reading/w10/left.track/sag/1',
      'walk/w1',
      'machine/a',
    ];
    const shelf = shelfOf({
      versions: [],
      unstamped: keys.map((key) => ({ key: keyOf(key), value: lug })).reverse(),
    });
    const under = (prefix: string) => shelf.under(prefix).map(([key]) => key);
    expect(under('reading/w1/')).toEqual(keys.slice(0, 2));
    expect(under('reading/w10/')).toEqual(keys.slice(2, 3));
    expect(under('walk/')).toEqual(['walk/w1']);
    expect(under('')).toHaveLength(5);
    expect(under('work/')).toEqual([]);
    expect(under('zebra/')).toEqual([]);
    expect(under('walk/w1')).toEqual(['walk/w1']);
    expect(shelf.under('machine/')[0]?.[1]).toHaveLength(1);
  });
});

describe('what a walk needs elsewhere', () => {
  const records: readonly FileRecord[] = [
    version(keyOf('machine/a'), { ...machine, sheet: 'limits/own', left: { sheet: 'limits/left' } }),
    version(keyOf('machine/b'), machine),
    version(keyOf('machine/priced'), { ...machine, prices: 'price/own', rates: 'rate/starting-mid' }),
    version(keyOf('price/own'), { v: 1, name: 'own', currency: 'EUR', lines: [] }),
    version(keyOf('hold/priced/left.renew-track'), { v: 1, skip: true }),
    version(keyOf('hold/priced2/left.renew-track'), { v: 1, skip: true }),
    version(keyOf('limits/own'), { v: 1, name: 'own', items: [], sag: [], rules: 'rules/own' }),
    version(keyOf('limits/left'), { v: 1, name: 'left', items: [], sag: [], rules: 'rules/starting' }),
    version(keyOf('limits/never'), { v: 1, name: 'never', items: [], sag: [] }),
    version(keyOf('rules/own'), { v: 1, language: 1, name: 'own', covers: {}, rules: [] }),
    version(keyOf('walk/w1'), {
      v: 1,
      machine: 'machine/a',
      sheet: { key: 'limits/starting-rubber-mini' },
      rules: { key: 'rules/own' },
    }),
    version(keyOf('walk/w1'), { v: 1, machine: 'machine/b' }, 2),
    version(keyOf('walk/w2'), { v: 1, machine: 'machine/b' }),
    version(keyOf('reading/w1/left.track/sag/1'), lug),
    version(keyOf('reading/w1/left.track/sag/2'), undefined),
    version(keyOf('reading/w2/left.track/sag/1'), lug),
    version(keyOf('work/a/one'), { v: 1, kind: 'fitted', sheet: 'limits/fitted' }),
    version(keyOf('limits/fitted'), { v: 1, name: 'fitted', items: [], sag: [] }),
    version(keyOf('limits/circle'), {
      v: 1,
      name: 'circle',
      rules: 'rules/circle',
      machine: 'machine/circle',
    }),
    version(keyOf('rules/circle'), { v: 1, name: 'circle', sheet: 'limits/circle' }),
    version(keyOf('machine/circle'), { v: 2, right: { sheet: 'limits/circle' }, left: null, sheet: null }),
    version(keyOf('work/circle/one'), undefined),
    version(keyOf('walk/alone'), undefined),
    version(keyOf('reading/alone/left.track/sag/1'), { v: 1, rules: { key: 'rules/own' } }),
    version(keyOf('same/a'), { sheet: 'limits/never' }),
    version(keyOf('work/contract/one'), { v: 1 }),
    version('demo/walk/w1' as RecordKey, { v: 1, machine: 'machine/b' }),
    version(keyOf('walk/return'), {
      v: 1,
      machine: 'machine/b',
      handOut: 'walk/handed-out',
      contract: 'contract/c',
    }),
    version(keyOf('walk/handed-out'), { v: 1, machine: 'machine/b', contract: 'contract/c' }),
    version(keyOf('reading/handed-out/left.track/lug-depth/1'), lug),
    version(keyOf(`photo/handed-out/${'a'.repeat(64)}`), { v: 1, shot: 'plate' }),
    version(keyOf(`seal/handed-out/${'b'.repeat(64)}`), { v: 1 }),
    version(keyOf('contract/c'), { v: 1, machine: 'machine/b', handOut: 'walk/handed-out' }),
    version(keyOf('walk/odd-return'), { v: 1, handOut: 'contract/c', contract: 'walk/w2' }),
    version(keyOf('option/for-b'), { v: 1, name: 'steel', track: 'steel', machine: 'machine/b' }),
    version(keyOf('option/for-priced'), { v: 1, name: 'steel', track: 'steel', machine: 'machine/priced' }),
    version(keyOf('option/for-any'), { v: 1, name: 'steel', track: 'steel' }),
    version(keyOf('option/gone'), undefined),
    version(keyOf('walk/odd'), {
      v: 2,
      machine: 7,
      sheet: 'walk/w2',
      left: 'limits/own',
      rules: { key: 'no key' },
    }),
  ];
  const source: Source<string> = {
    read: async (key) => ok(records.filter((record) => record.key === key)),
    list: async ({ prefix }) =>
      ok(records.filter(({ key }) => key.startsWith(prefix)).map((record) => ({ versions: [record] }))),
  };
  const gather = async (...keys: string[]) => {
    const gathered = await gatherRecords(
      keys.map((key) => key as RecordKey),
      source,
      builtIn,
    );
    return gathered.ok ? gathered.value : [];
  };
  const keysOf = async (...keys: string[]) =>
    [...new Set((await gather(...keys)).map(({ key }) => key))].sort();

  test('[F18] a walk takes its readings, machine, work, sheets and rule sets along', async () => {
    expect(await keysOf('walk/w1')).toEqual([
      'limits/fitted',
      'limits/left',
      'limits/own',
      'limits/starting-rubber-mini',
      'machine/a',
      'machine/b',
      'reading/w1/left.track/sag/1',
      'reading/w1/left.track/sag/2',
      'rules/own',
      'rules/starting',
      'walk/w1',
      'work/a/one',
    ]);
  });

  test('[F18] all sides of a clash go along, and no record twice', async () => {
    const gathered = await gather('walk/w1', 'walk/w1', 'machine/b');
    expect(gathered.filter(({ key }) => key === 'walk/w1')).toHaveLength(2);
    expect(gathered.filter(({ key }) => key === 'machine/b')).toHaveLength(1);
  });

  test('[F18] a sheet that comes with the app goes along unstamped', async () => {
    const sheet = (await gather('walk/w1')).find(({ key }) => key === 'limits/starting-rubber-mini');
    expect(sheet).toEqual({
      key: 'limits/starting-rubber-mini',
      value: builtIn.limits['limits/starting-rubber-mini'],
    });
  });

  test('[F18] the tracks meant for a machine go along with it, and not with a walk of it', async () => {
    expect(await keysOf('machine/b')).toEqual(['machine/b', 'option/for-b']);
    expect(await keysOf('walk/w1')).not.toContain('option/for-b');
  });

  test('[F18] a machine takes its holds along, and the prices and rates that it names', async () => {
    expect(await keysOf('machine/priced')).toEqual([
      'hold/priced/left.renew-track',
      'machine/priced',
      'option/for-priced',
      'price/own',
      'rate/starting-mid',
    ]);
    const rates = (await gather('machine/priced')).find(({ key }) => key === 'rate/starting-mid');
    expect(rates).toEqual({ key: 'rate/starting-mid', value: builtIn.rates['rate/starting-mid'] });
  });

  test('[RW7] a return takes its hand-out walk with readings, pictures and seals along, and the contract', async () => {
    const all = [
      'contract/c',
      'machine/b',
      `photo/handed-out/${'a'.repeat(64)}`,
      'reading/handed-out/left.track/lug-depth/1',
      `seal/handed-out/${'b'.repeat(64)}`,
      'walk/handed-out',
    ];
    expect(await keysOf('walk/return')).toEqual([...all, 'walk/return']);
    expect(await keysOf('contract/c')).toEqual(all);
    expect(await keysOf('walk/handed-out')).toEqual(all);
  });

  test('[RW7] only a walk is a hand-out, and only a contract a contract', async () => {
    expect(await keysOf('walk/odd-return')).toEqual(['walk/odd-return']);
  });

  test('[F18] a sheet or set alone is a file too', async () => {
    expect(await keysOf('limits/never')).toEqual(['limits/never']);
    expect(await keysOf('rules/starting')).toEqual(['rules/starting']);
  });

  test('[F18] odd names lead nowhere, and neither the demo nor what is missing comes along', async () => {
    expect(await keysOf('walk/odd')).toEqual(['walk/odd']);
    expect(await keysOf('demo/walk/w1', 'limits/missing', 'machine/b')).toEqual([
      'machine/b',
      'option/for-b',
    ]);
  });

  test('[F18] records that name each other in a circle are taken once', async () => {
    const circle = ['limits/circle', 'machine/circle', 'rules/circle', 'work/circle/one'];
    expect(await keysOf('rules/circle')).toEqual(circle);
    expect(await gather('rules/circle')).toHaveLength(4);
  });

  test('[F18] a removed walk still takes its readings along, and what they name', async () => {
    expect(await keysOf('walk/alone')).toEqual(['reading/alone/left.track/sag/1', 'rules/own', 'walk/alone']);
  });

  test('[F18] nothing stands under a record that is neither walk nor machine', async () => {
    expect(await keysOf('same/a')).toEqual(['limits/never', 'same/a']);
    let lists = 0;
    const counting: Source<string> = {
      ...source,
      list: (page) => {
        lists += 1;
        return source.list(page);
      },
    };
    await gatherRecords([keyOf('limits/never'), keyOf('same/a')], counting, builtIn);
    expect(lists).toBe(0);
  });

  test('[F18] a phone that cannot be read gives no file', async () => {
    const down = async (): Promise<Result<never, string>> => err('lost');
    const [walk] = [keyOf('walk/w1')];
    expect(await gatherRecords([walk], { ...source, read: down }, builtIn)).toEqual(err('lost'));
    expect(await gatherRecords([walk], { ...source, list: down }, builtIn)).toEqual(err('lost'));
    const late: Source<string> = {
      ...source,
      read: (key) => (key === 'limits/own' ? down() : source.read(key)),
    };
    expect(await gatherRecords([walk], late, builtIn)).toEqual(err('lost'));
    const later: Source<string> = {
      ...source,
      read: (key) => (key === 'limits/fitted' ? down() : source.read(key)),
    };
    expect(await gatherRecords([walk], later, builtIn)).toEqual(err('lost'));
  });
});

describe('taking a file in', () => {
  test('[F16] every sheet and set that comes with the app is known by its key, those of later builds too', () => {
    const { limits, rules, prices, rates } = builtIn;
    const keys = [limits, rules, prices, rates].flatMap((each) => Object.keys(each));
    expect(keys.length).toBeGreaterThan(10);
    expect(keys.filter((key) => !comesWithApp(key))).toEqual([]);
    expect(comesWithApp('limits/starting-of-tomorrow')).toBe(true);
    expect(comesWithApp('price/starting-of-tomorrow')).toBe(true);
    expect(
      ['limits/starting2', 'limits/my-starting', 'walk/starting', 'demo/limits/starting'].filter(
        comesWithApp,
      ),
    ).toEqual([]);
  });

  test('[F16] they are left out, named once, and all else is taken', () => {
    const sheet = keyOf('limits/starting-rubber-mini');
    const own = version(keyOf('machine/a'), machine);
    const byHand = { key: keyOf('machine/b'), value: machine };
    const plan = planImport({
      versions: [version(sheet, note('mild')), own],
      unstamped: [{ key: sheet, value: note('mild') }, byHand],
    });
    expect(plan).toEqual({ versions: [own], writes: [byHand], leftOut: [sheet] });
  });
});
