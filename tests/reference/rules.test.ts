import { describe, expect, test } from 'vitest';
import { callRank, meanwhileRank } from '../../src/core/calls.ts';
import { itemsIn } from '../../src/core/conditions.ts';
import { itemById, items } from '../../src/core/items.ts';
import { isCovered, ruleSetSchema, type Condition } from '../../src/core/rules.ts';
import { startingRules } from '../../src/reference/rules-starting.ts';

const { rules, covers } = startingRules;
const rulesFor = (item: string) => rules.filter((rule) => rule.items.includes(item));

/** Every finding that a condition names, with its item. */
function findingsIn(condition: Condition): readonly (readonly [string, string])[] {
  if ('all' in condition) return condition.all.flatMap(findingsIn);
  if ('any' in condition) return condition.any.flatMap(findingsIn);
  if ('not' in condition) return findingsIn(condition.not);
  if ('finding' in condition) {
    const { finding, is, atLeast } = condition;
    return [...(is ?? []), ...(atLeast === undefined ? [] : [atLeast])].map(
      (each) => [finding, each] as const,
    );
  }
  if ('count' in condition) return [[condition.count, condition.atLeast]];
  return 'share' in condition ? [[condition.share, condition.atLeast]] : [];
}

const isFinding = (item: string, finding: string): boolean => {
  const ask = itemById(item)?.ask;
  if (ask?.kind === 'crack') return finding === 'cord-visible';
  return ask?.kind === 'finding' && ask.findings.includes(finding);
};

describe('[N4] the starting rules', () => {
  test('[R1] are a rule set of the closed language', () => {
    expect(ruleSetSchema.safeParse(startingRules).error).toBeUndefined();
  });

  test('[R2] have ids that occur once', () => {
    expect(new Set(rules.map(({ id }) => id)).size).toBe(rules.length);
  });

  test('[R3] cover every item of the walk', () => {
    expect(items.filter(({ id }) => !isCovered(startingRules, id)).map(({ id }) => id)).toEqual([]);
    expect(Object.keys(covers)).toEqual(items.map(({ id }) => id));
  });

  test('[R4] leave without a rule only what informs other rules', () => {
    expect(items.filter(({ id }) => rulesFor(id).length === 0).map(({ id }) => id)).toEqual([
      'sag-before',
      'bushing-turned',
    ]);
  });

  test('[R5] name only items and findings of the catalogue', () => {
    const unknownItems = rules
      .flatMap(({ items: own, when }) => [...own, ...itemsIn(when)])
      .filter((id) => !itemById(id));
    const unknownFindings = rules
      .flatMap(({ when }) => findingsIn(when))
      .filter(([item, finding]) => !isFinding(item, finding));
    expect([unknownItems, unknownFindings]).toEqual([[], []]);
  });

  test.each(items.map((item) => [item.id, item] as const))(
    '[R6] %s could park the machine exactly where a rule can stop it',
    (id, item) => {
      const stops = rulesFor(id).some(
        ({ call, meanwhile }) => call === 'park' || meanwhileRank(meanwhile) >= 2,
      );
      expect(item.canPark).toBe(stops);
    },
  );

  test('[R7] never let a machine that is to park do more than move', () => {
    const lenient = rules.filter(({ call, meanwhile }) => call === 'park' && meanwhileRank(meanwhile) < 2);
    expect(lenient).toEqual([]);
  });

  test('[R8] name a source for every rule', () => {
    expect(rules.filter(({ source }) => source.text.trim() === '')).toEqual([]);
  });
});

const worstOf = (item: string, finding: string): readonly [number, number] => {
  const fired = rules.filter(
    ({ when }) => 'finding' in when && when.finding === item && when.is?.includes(finding),
  );
  return [
    Math.max(0, ...fired.map(({ call }) => callRank(call))),
    Math.max(0, ...fired.map(({ meanwhile }) => meanwhileRank(meanwhile))),
  ];
};

const ordered = items.filter(({ order }) => order === 'findings');

describe('[N4] the declared order of findings', () => {
  test.each(ordered.map(({ id, ask }) => [id, ask] as const))(
    '[R9] %s never falls along its findings',
    (id, ask) => {
      const ranks = ask.kind === 'finding' ? ask.findings.map((finding) => worstOf(id, finding)) : [];
      const falls = ranks.filter(([call, meanwhile], at) => {
        const next = ranks[at + 1];
        return next && (next[0] < call || next[1] < meanwhile);
      });
      expect(falls).toEqual([]);
    },
  );

  test.each(ordered.map(({ id, ask }) => [id, ask] as const))(
    '[R10] %s is fine at its first finding',
    (id, ask) => {
      expect(worstOf(id, ask.kind === 'finding' ? (ask.findings[0] ?? '') : '')).toEqual([0, 0]);
    },
  );
});

// What every user would expect (N4); the call and meanwhile that stand for it.
const expected: readonly (readonly [string, string, string])[] = [
  ['cord.showing', 'replace', 'light-work'],
  ['cord.cut', 'park', 'move-only'],
  ['cord.half-cut', 'park', 'move-only'],
  ['cord.rust-under', 'park', 'move-only'],
  ['cord.parted', 'park', 'nothing'],
  ['pin-walk.walking', 'park', 'move-only'],
  ['master-joint.loose', 'park', 'move-only'],
  ['master-joint.open', 'park', 'nothing'],
  ['shoe-bolts.too-few', 'park', 'move-only'],
  ['cores.neighbours-gone', 'park', 'move-only'],
  ['drive-lugs.neighbours-gone', 'park', 'move-only'],
  ['recoil-spring.broken', 'park', 'move-only'],
  ['idler-play.track-climbs', 'park', 'move-only'],
  ['roller-flange.track-climbs', 'park', 'move-only'],
  ['roller-flange.missing', 'park', 'move-only'],
  ['roller-flange.broken', 'park', 'move-only'],
  ['sprocket-bolts.loose', 'repair', 'move-only'],
  ['motor-bolts.loose', 'repair', 'move-only'],
  ['roller-bolts.loose', 'repair', 'move-only'],
  ['adjuster-leak.valve-damaged', 'park', 'nothing'],
  ['adjuster-leak.weeping', 'repair', 'work'],
  ['track-frame.cracked', 'park', 'move-only'],
  ['idler-mount.cracked', 'park', 'move-only'],
  ['roller-turn.seized', 'replace', 'light-work'],
  ['roller-flat.flat', 'replace', 'light-work'],
  ['roller-leak.leaking', 'repair', 'work'],
  ['roller-wire.wrapped', 'repair', 'light-work'],
  ['links-cracked.one', 'repair', 'light-work'],
  ['links-cracked.several', 'replace', 'move-only'],
  ['sag.derailing', 'adjust', 'move-only'],
];

describe('[N4] what every user would expect', () => {
  test.each(expected)('[R11] %s is %s, meanwhile %s', (id, call, meanwhile) => {
    const rule = rules.find((each) => each.id === id);
    expect([rule?.call, rule?.meanwhile]).toEqual([call, meanwhile]);
  });
});
