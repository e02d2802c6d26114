import { itemsIn } from './conditions.ts';
import { itemById, type Item } from './items.ts';
import { trackKinds } from './machine.ts';
import { ruleLanguage, type Condition, type Rule, type RuleSet } from './rules.ts';

/** What is wrong with a rule set, or (`warns`) only strange. */
export type RulesProblemKind =
  | 'newer-language'
  | 'duplicate-id'
  | 'unknown-item'
  | 'unknown-finding'
  | 'unknown-track'
  | 'wrong-question'
  | 'no-text'
  | 'unknown-message'
  | 'covers-unknown-item'
  | 'covers-unknown-rule'
  | 'covers-without-rule'
  | 'covers-by-other-item'
  | 'covers-nothing'
  | 'never-used';

export interface RulesProblem {
  readonly kind: RulesProblemKind;
  /** The rule's id, or nothing for what the whole set has wrong. */
  readonly rule?: string;
  readonly params: Readonly<Record<string, string | number>>;
  /** True when the set can be used all the same. */
  readonly warns: boolean;
}

type Found = Omit<RulesProblem, 'rule'>;

const wrong = (kind: RulesProblemKind, params: RulesProblem['params'] = {}): Found => ({
  kind,
  params,
  warns: false,
});
const strange = (kind: RulesProblemKind, params: RulesProblem['params'] = {}): Found => ({
  kind,
  params,
  warns: true,
});

type Leaf = Exclude<Condition, { all: Condition[] } | { any: Condition[] } | { not: Condition }>;

function leavesOf(condition: Condition): readonly Leaf[] {
  if ('all' in condition) return condition.all.flatMap(leavesOf);
  if ('any' in condition) return condition.any.flatMap(leavesOf);
  return 'not' in condition ? leavesOf(condition.not) : [condition];
}

/** The findings that an item can have; cord seen in a crack is one. */
function findingsOf(item: Item): readonly string[] {
  if (item.ask.kind === 'finding') return item.ask.findings;
  return item.ask.kind === 'crack' ? ['cord-visible'] : [];
}

/** The findings that a leaf names, and of which item. */
function namedIn(leaf: Leaf): readonly [item: string, findings: readonly string[]] | undefined {
  if ('finding' in leaf)
    return [leaf.finding, [...(leaf.is ?? []), ...(leaf.atLeast === undefined ? [] : [leaf.atLeast])]];
  if ('count' in leaf) return [leaf.count, [leaf.atLeast]];
  return 'share' in leaf ? [leaf.share, [leaf.atLeast]] : undefined;
}

function findingProblems(leaf: Leaf): readonly Found[] {
  const [id, findings] = namedIn(leaf) ?? ['', []];
  const item = itemById(id);
  if (!item) return [];
  const known = findingsOf(item);
  if (known.length === 0 || findings.length === 0) return [wrong('wrong-question', { item: id })];
  return findings
    .filter((finding) => !known.includes(finding))
    .map((finding) => wrong('unknown-finding', { item: id, finding }));
}

/** A size is not asked of a finding, nor wear of what has no limit. */
function sizeProblems(leaf: Leaf): readonly Found[] {
  const id = 'reading' in leaf ? leaf.reading : 'worn' in leaf ? leaf.worn : undefined;
  const kind = id === undefined ? undefined : itemById(id)?.ask.kind;
  if (id === undefined || kind === undefined) return [];
  const isAsked = 'worn' in leaf ? kind !== 'crack' && kind !== 'sag' : true;
  return kind !== 'finding' && isAsked ? [] : [wrong('wrong-question', { item: id })];
}

function trackProblems(leaf: Leaf): readonly Found[] {
  if (!('track' in leaf)) return [];
  return leaf.track
    .filter((track) => !trackKinds.some((kind) => kind === track))
    .map((track) => wrong('unknown-track', { track }));
}

const leafProblems = (leaf: Leaf): readonly Found[] => [
  ...(namedIn(leaf) ? findingProblems(leaf) : []),
  ...sizeProblems(leaf),
  ...trackProblems(leaf),
];

function reasonProblems({ reason }: Rule, knowsMessage: (id: string) => boolean): readonly Found[] {
  if (reason.text !== undefined && reason.text.trim() !== '') return [];
  if (reason.message === 'written') return [wrong('no-text')];
  return knowsMessage(reason.message) ? [] : [strange('unknown-message', { message: reason.message })];
}

function ruleProblems(rule: Rule, set: RuleSet, knowsMessage: (id: string) => boolean): readonly Found[] {
  const named = new Set([...rule.items, ...itemsIn(rule.when)]);
  const unknown = [...named].filter((id) => !itemById(id));
  const isUsed = Object.values(set.covers).some((ids) => ids.includes(rule.id));
  return [
    ...unknown.map((item) => strange('unknown-item', { item })),
    ...leavesOf(rule.when).flatMap(leafProblems),
    ...reasonProblems(rule, knowsMessage),
    ...(isUsed ? [] : [strange('never-used')]),
  ];
}

/** An item is covered only by rules of the set that are about it; a mere fact (no severity) needs none. */
function coverProblemsOf(item: string, needed: readonly string[], rules: readonly Rule[]): readonly Found[] {
  if (needed.length === 0)
    return itemById(item)?.order === 'none' ? [] : [strange('covers-without-rule', { item })];
  return needed.flatMap((id) => {
    const rule = rules.find((each) => each.id === id);
    if (!rule) return [wrong('covers-unknown-rule', { item, missing: id })];
    const isAbout = rule.items.includes(item) || itemsIn(rule.when).includes(item);
    return isAbout ? [] : [strange('covers-by-other-item', { item, other: id })];
  });
}

function coverProblems({ covers, rules }: RuleSet): readonly Found[] {
  const entries = Object.entries(covers);
  if (entries.length === 0) return [strange('covers-nothing')];
  return entries.flatMap(([item, needed]) => [
    ...(itemById(item) ? [] : [strange('covers-unknown-item', { item })]),
    ...coverProblemsOf(item, needed, rules),
  ]);
}

function duplicates(rules: readonly Rule[]): readonly string[] {
  const ids = rules.map(({ id }) => id);
  return [...new Set(ids.filter((id, i) => ids.indexOf(id) !== i))];
}

/**
 * What a rule set contradicts itself in; empty for a sound set. Problems that only warn leave it usable. A set in a
 * later language than ours is not judged, since it is not used.
 * @param knowsMessage whether the catalogue of sentences holds that message
 */
export function checkRules(set: RuleSet, knowsMessage: (id: string) => boolean): readonly RulesProblem[] {
  if (set.language > ruleLanguage) return [strange('newer-language', { language: set.language })];
  return [
    ...duplicates(set.rules).map((rule) => ({ ...wrong('duplicate-id'), rule })),
    ...set.rules.flatMap((rule) =>
      ruleProblems(rule, set, knowsMessage).map((each) => ({ ...each, rule: rule.id })),
    ),
    ...coverProblems(set),
  ];
}
