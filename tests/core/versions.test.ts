import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { idSchema, keySchema } from '../../src/core/keys.ts';
import {
  counterOf,
  deviceIdOf,
  deviceOf,
  makeStamp,
  stampSchema,
  type DeviceId,
} from '../../src/core/stamp.ts';
import {
  covers,
  displayed,
  isClash,
  isNewer,
  isRemoval,
  mergeVersions,
  nextVersion,
  restamp,
  sameValue,
  versionSchema,
  type Change,
  type RecordValue,
  type Seen,
  type Version,
} from '../../src/core/versions.ts';

const key = keySchema.parse('walk/w');
const by = idSchema.parse('someone');
const deviceAt = (at: number): DeviceId => deviceIdOf(new Uint8Array(8).fill(at));
const [a, b, c] = [deviceAt(0xaa), deviceAt(0xbb), deviceAt(0xcc)];

const version = (device: DeviceId, counter: number, seen: Seen = {}, value?: RecordValue): Version => ({
  key,
  ...(value !== undefined && { value }),
  stamp: makeStamp(counter, device),
  seen,
  by,
});

/** One phone of a simulated fleet. */
interface Phone {
  readonly device: DeviceId;
  counter: number;
  set: readonly Version[];
}

/** A history: every version that anyone ever made, each with all that it was made on top of. */
interface History {
  readonly all: readonly Version[];
  readonly past: ReadonlyMap<Version, ReadonlySet<Version>>;
}

type Deed =
  | { readonly kind: 'write' | 'remove'; readonly phone: number; readonly note: number }
  | { readonly kind: 'send'; readonly from: number; readonly to: number };

const phones = fc.integer({ min: 0, max: 3 });
const writes = fc.tuple(phones, fc.integer({ min: 0, max: 3 }));
const deeds = fc.array(
  fc.oneof(
    writes.map(([phone, note]): Deed => ({ kind: 'write', phone, note })),
    phones.map((phone): Deed => ({ kind: 'remove', phone, note: 0 })),
    fc.tuple(phones, phones).map(([from, to]): Deed => ({ kind: 'send', from, to })),
  ),
  { maxLength: 40 },
);

function live(history: readonly Deed[]): History {
  const fleet: Phone[] = [1, 2, 3, 4].map((at) => ({ device: deviceAt(at), counter: 0, set: [] }));
  const all: Version[] = [];
  const past = new Map<Version, ReadonlySet<Version>>();
  const had = new Map<Phone, Set<Version>>(fleet.map((phone) => [phone, new Set()]));
  for (const deed of history) {
    if (deed.kind === 'send') {
      const [from, to] = [fleet[deed.from], fleet[deed.to]];
      if (from === undefined || to === undefined) continue;
      to.set = mergeVersions(to.set, from.set);
      to.counter = Math.max(to.counter, from.counter);
      for (const one of had.get(from) ?? []) had.get(to)?.add(one);
      continue;
    }
    const phone = fleet[deed.phone];
    if (phone === undefined) continue;
    const change: Change =
      deed.kind === 'write' ? { key, value: { note: deed.note } } : { key, removed: true };
    const made = nextVersion(phone.set, change, { device: phone.device, counter: phone.counter, by });
    past.set(made, new Set(had.get(phone)));
    had.get(phone)?.add(made);
    all.push(made);
    phone.counter = counterOf(made.stamp);
    phone.set = mergeVersions(phone.set, [made]);
  }
  return { all, past };
}

const histories = deeds.map(live);
const stampsOf = (set: readonly Version[]): readonly string[] => set.map(({ stamp }) => stamp);

/** What must be left of some of the versions, told by the history and not by stamps. */
function uncovered(some: readonly Version[], { past }: History): readonly string[] {
  const left = some.filter((one) => !some.some((other) => past.get(other)?.has(one)));
  return [...new Set(stampsOf(left))].sort();
}

/** A history, some of its versions (any may be missing) in any order, dealt into heaps. */
const dealt = histories.chain((history) =>
  fc.record({
    history: fc.constant(history),
    some: fc.shuffledSubarray([...history.all]),
    cut: fc.nat(20),
    other: fc.shuffledSubarray([...history.all]),
    third: fc.shuffledSubarray([...history.all]),
  }),
);

describe('merging versions', () => {
  test('[M10] keeps exactly what nobody covered, whatever is missing and in any order', () => {
    fc.assert(
      fc.property(dealt, ({ history, some, cut }) => {
        const wanted = uncovered(some, history);
        expect(stampsOf(mergeVersions(some))).toEqual(wanted);
        const one = some.reduce<readonly Version[]>((set, next) => mergeVersions(set, [next]), []);
        expect(stampsOf(one)).toEqual(wanted);
        const heaps = mergeVersions(mergeVersions(some.slice(cut)), mergeVersions(some.slice(0, cut)));
        expect(stampsOf(heaps)).toEqual(wanted);
      }),
      { numRuns: 500 },
    );
  });

  test('[M11] commutes, associates and is idempotent', () => {
    fc.assert(
      fc.property(dealt, ({ some, other, third }) => {
        const [x, y, z] = [mergeVersions(some), mergeVersions(other), mergeVersions(third)];
        expect(mergeVersions(x, y)).toEqual(mergeVersions(y, x));
        expect(mergeVersions(mergeVersions(x, y), z)).toEqual(mergeVersions(x, mergeVersions(y, z)));
        expect(mergeVersions(x, x)).toEqual(x);
        expect(mergeVersions(x)).toEqual(x);
        expect(mergeVersions(x, y, z)).toEqual(mergeVersions(some, other, third));
      }),
    );
  });

  test('[M12] a covered version never comes back, and a removal stays removed', () => {
    fc.assert(
      fc.property(histories, fc.infiniteStream(fc.nat()), ({ all }, picks) => {
        const done = mergeVersions(all);
        for (const one of all) expect(mergeVersions(done, [one])).toEqual(done);
        const pick = all[(picks.next().value ?? 0) % Math.max(1, all.length)];
        fc.pre(pick !== undefined);
        const removal = nextVersion(done, { key, removed: true }, { device: c, counter: 0, by });
        expect(mergeVersions([removal], pick === undefined ? [] : [pick])).toEqual([removal]);
      }),
    );
  });

  test('[M13] a version covers what its author had, and nothing else', () => {
    fc.assert(
      fc.property(histories, ({ all, past }) => {
        for (const later of all) {
          for (const earlier of all) {
            expect(covers(later, earlier)).toBe(past.get(later)?.has(earlier) ?? false);
          }
        }
      }),
    );
  });

  test('[M10] nothing merged is nothing', () => {
    expect(mergeVersions()).toEqual([]);
    expect(mergeVersions([], [])).toEqual([]);
  });

  test('[M10] a hundred thousand versions of one key take no square of time', () => {
    const many = Array.from({ length: 100_000 }, (_, at) => version(deviceAt(at % 250), at + 1));
    expect(mergeVersions(many, many)).toHaveLength(100_000);
  });

  test('[M14] under one stamp two values are both kept, in the same order everywhere', () => {
    const [one, two] = [version(a, 1, {}, { note: 'one' }), version(a, 1, {}, { note: 'two' })];
    const same = version(a, 1, {}, { note: 'one' });
    expect(mergeVersions([two], [one])).toEqual([one, two]);
    expect(mergeVersions([one, two], [same])).toEqual([one, two]);
    expect(mergeVersions([one], [version(b, 2, { [a]: 1 })])).toHaveLength(1);
    expect(mergeVersions([version(a, 1)], [one])).toEqual([version(a, 1), one]);
  });

  test('[M14] fields in another order are the same value', () => {
    const [one, two] = [version(a, 1, {}, { x: 1, y: [2] }), version(b, 2, {}, { y: [2], x: 1 })];
    expect([sameValue(one, two), sameValue(one, version(a, 1, {}, { x: 1 }))]).toEqual([true, false]);
    expect(mergeVersions([one], [{ ...one, value: { y: [2], x: 1 } }])).toEqual([one]);
  });
});

describe('what a set shows', () => {
  const old = version(a, 1, {}, { note: 'old' });
  const left = version(a, 3, { [a]: 1 }, { note: 'left' });
  const right = version(b, 2, { [a]: 1 }, { note: 'right' });

  test('[M15] the highest stamp is displayed, not the newest by any clock', () => {
    expect(displayed(mergeVersions([right, old, left]))).toBe(left);
    const third = version(c, 2, { [a]: 1 }, { note: 'third' });
    expect(displayed(mergeVersions([left], [third], [right]))).toBe(left);
    expect(displayed([])).toBeUndefined();
  });

  test('[M16] two that say different things clash; equal ones, one or none do not', () => {
    const twin = version(c, 9, {}, { note: 'right' });
    const gone = version(c, 9);
    const table: readonly (readonly [readonly Version[], boolean])[] = [
      [[], false],
      [[left], false],
      [[right, left], true],
      [[right, twin], false],
      [[right, left, twin], true],
      [[right, twin, left], true],
      [[right, gone], true],
      [[version(a, 8), gone], false],
    ];
    for (const [set, clash] of table) expect(isClash(set)).toBe(clash);
  });

  test('[M17] a decision covers every side and counts above all of them', () => {
    const decided = nextVersion(
      [right, left],
      { key, value: { note: 'both' } },
      { device: b, counter: 2, by },
    );
    expect(decided).toEqual({
      key,
      value: { note: 'both' },
      stamp: makeStamp(4, b),
      seen: { [a]: 3, [b]: 2 },
      by,
    });
    expect(mergeVersions([decided], [left, right, old])).toEqual([decided]);
  });

  test('[M17] the first version has seen nothing; the counter goes on from the device or from what it saw', () => {
    const first = nextVersion([], { key, value: {} }, { device: a, counter: 41, by });
    expect(first).toEqual({ key, value: {}, stamp: makeStamp(42, a), seen: {}, by });
    const far = version(b, 7, { [c]: 5 });
    expect(nextVersion([far], { key, value: {} }, { device: a, counter: 1, by }).stamp).toBe(makeStamp(8, a));
    expect(nextVersion([far], { key, value: {} }, { device: a, counter: 9, by }).stamp).toBe(
      makeStamp(10, a),
    );
  });

  test('[M18] a removal has no value at all', () => {
    const removal = nextVersion([left], { key, removed: true }, { device: a, counter: 3, by });
    expect(Object.keys(removal).sort()).toEqual(['by', 'key', 'seen', 'stamp']);
    expect([isRemoval(removal), isRemoval(left)]).toEqual([true, false]);
    expect(mergeVersions([left], [removal])).toEqual([removal]);
  });

  test('[M19] a value of a newer build is told by its v', () => {
    const values: readonly RecordValue[] = [{ v: 2 }, { v: 1 }, { v: 0 }, {}, { v: '2' }];
    expect(values.map((value) => isNewer(value, 1))).toEqual([true, false, false, false, false]);
  });
});

describe('a device that finds another under its id', () => {
  const identity = { from: a, to: c, sentThrough: 5 };

  test('[M20] what was sent, and what others wrote, stays as it is', () => {
    for (const kept of [version(a, 5, { [a]: 4 }), version(b, 9, { [a]: 8 })]) {
      expect(restamp(kept, identity)).toBe(kept);
    }
  });

  test('[M20] what never left takes the new id and covers of the old one only what was sent', () => {
    const unsent = { ...version(a, 8, { [a]: 7, [b]: 3 }, { note: 'x' }), by: idSchema.parse(a) };
    const renewed = { key, value: { note: 'x' }, stamp: makeStamp(8, c), seen: { [a]: 5, [b]: 3, [c]: 7 } };
    expect(restamp(unsent, identity)).toEqual({ ...renewed, by: c });
    expect(restamp(version(a, 6, { [a]: 5 }), identity)).toEqual({ ...version(c, 6, { [a]: 5 }) });
    expect(restamp(version(a, 6, { [a]: 2 }), identity)).toEqual({ ...version(c, 6, { [a]: 2 }) });
    expect(restamp(version(a, 6), identity)).toEqual(version(c, 6));
    expect(restamp(version(a, 2, { [a]: 1 }), { ...identity, sentThrough: 0 })).toEqual(
      version(c, 2, { [c]: 1 }),
    );
  });

  test('[M21] after restamping nothing of the twin is covered unseen, and the own line still holds', () => {
    const chains = fc.record({ sent: fc.integer({ min: 0, max: 6 }), own: fc.integer({ min: 1, max: 6 }) });
    const line = (
      from: number,
      length: number,
      note: string,
      start: readonly Version[],
    ): readonly Version[] => {
      const made = [...start];
      for (let at = 0; at < length; at += 1) {
        const author = { device: a, counter: from + at, by };
        made.push(nextVersion(mergeVersions(made), { key, value: { note: `${note}${at}` } }, author));
      }
      return made;
    };
    fc.assert(
      fc.property(chains, fc.integer({ min: 1, max: 6 }), ({ sent, own }, twins) => {
        const shared = line(0, sent, 'shared', []);
        const ours = line(sent, own, 'ours', shared);
        const theirs = line(sent, twins, 'theirs', shared);
        const renewed = ours.map((one) => restamp(one, { from: a, to: c, sentThrough: sent }));
        const left = mergeVersions(renewed, theirs);
        expect(left.map((one) => one.value?.['note']).sort()).toEqual([
          `ours${own - 1}`,
          `theirs${twins - 1}`,
        ]);
        expect(left.map(({ stamp }) => deviceOf(stamp)).sort()).toEqual([a, c]);
      }),
    );
  });
});

describe('envelopes that come in', () => {
  const good = {
    key,
    value: { v: 1, strange: { deep: [1, null, 'x'] } },
    stamp: makeStamp(3, a),
    seen: { [b]: 2 },
    by,
  };

  test('[M22] an envelope is read as it is, with every unknown field of its value', () => {
    expect(versionSchema.parse(good)).toEqual(good);
    const { value: _value, ...removal } = good;
    expect(versionSchema.parse(removal)).toEqual(removal);
    expect(versionSchema.parse(JSON.parse(JSON.stringify(good)))).toEqual(good);
  });

  const nested = (depth: number): unknown => JSON.parse('['.repeat(depth) + ']'.repeat(depth));
  const bad: readonly (readonly [string, unknown])[] = [
    ['no object', 1],
    ['a field more', { ...good, extra: 1 }],
    ['no key', { ...good, key: undefined }],
    ['another key', { ...good, key: 'walk/../x' }],
    ['another stamp', { ...good, stamp: 'x' }],
    ['no seen', { ...good, seen: undefined }],
    ['seen of no device', { ...good, seen: { x: 1 } }],
    ['seen of a half', { ...good, seen: { [b]: 1.5 } }],
    ['seen below zero', { ...good, seen: { [b]: -1 } }],
    ['seen of itself', { ...good, seen: { [a]: 3 } }],
    ['seen beyond its own counter', { ...good, seen: { [b]: 3 } }],
    ['one seen of two beyond it', { ...good, seen: { [b]: 2, [c]: 9 } }],
    ['no author', { ...good, by: '' }],
    ['a value that is a list', { ...good, value: [1] }],
    ['a value that is a text', { ...good, value: 'x' }],
    ['a value that is null', { ...good, value: null }],
    ['a number that is none', { ...good, value: { x: Number.NaN } }],
    ['a number without end', { ...good, value: { x: [Infinity] } }],
    ['a lone surrogate', { ...good, value: { x: 'a\ud800b' } }],
    ['a lone surrogate in a name', { ...good, value: { '\udc00': 1 } }],
    ['nesting without end', { ...good, value: { x: nested(32) } }],
    ['what JSON cannot say', { ...good, value: { x: new Map() } }],
    ['a big integer', { ...good, value: { x: 1n } }],
  ];
  test.each(bad)('[M22] %s is refused', (_name, envelope) => {
    expect(versionSchema.safeParse(envelope).success).toBe(false);
  });

  test('[M22] nesting of 31 levels below a field is still read', () => {
    expect(versionSchema.safeParse({ ...good, value: { x: nested(31) } }).success).toBe(true);
  });

  test('[M22] a name that reaches for the prototype changes nothing', () => {
    const text = JSON.stringify(good).replace('"strange"', '"__proto__"');
    const read = versionSchema.parse(JSON.parse(text));
    expect(({} as Record<string, unknown>)['deep']).toBeUndefined();
    expect(stampSchema.parse(read.stamp)).toBe(good.stamp);
  });
});
