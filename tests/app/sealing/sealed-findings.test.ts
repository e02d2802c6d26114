import { expect, test } from 'vitest';
import { assemble } from '../../../src/core/assemble.ts';
import { canonicalJson, jsonFault } from '../../../src/core/canonical-json.ts';
import { assert } from '../../../src/core/result.ts';
import { score } from '../../../src/core/score.ts';
import { builtIn } from '../../../src/reference/built-in.ts';
import { sealedAhead, sealedOpen, sealedVerdict } from '../../../src/app/sealing/sealed-findings.ts';
import { demoMap, mini, outlookAt, shelfWith, steel } from '../../core/ahead-made.ts';

/** Every number that is no whole one, by its path. */
function fractions(value: unknown, path = ''): readonly string[] {
  if (typeof value === 'number') return Number.isInteger(value) ? [] : [path];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([name, part]) => fractions(part, `${path}/${name}`));
}

test.each([mini, steel])(
  '[SG8] what is sealed of %s is JSON, its hours are whole and its money in minor units',
  (key) => {
    const ahead = sealedAhead(outlookAt(demoMap(), key));
    expect(jsonFault(ahead)).toBeUndefined();
    expect(fractions(ahead)).toEqual([]);
    expect(canonicalJson(ahead)).toContain('"visits":[{"jobs":[{');
  },
);

test('[SG9] the verdict is sealed with the reason of every call, and what is open with why', () => {
  const made = assemble(shelfWith(demoMap()), builtIn, mini);
  assert(made.ok, 'a walk');
  const scored = score(made.value.input);
  const verdict = sealedVerdict(scored) as { call: string; needs: { reasons: unknown[] }[] };
  expect(jsonFault(verdict)).toBeUndefined();
  expect(verdict.needs.length).toBeGreaterThan(0);
  expect(verdict.needs.every(({ reasons }) => reasons.length > 0)).toBe(true);
  const open = sealedOpen(scored) as readonly { couldPark: boolean; why: string[] }[];
  expect(open.length).toBe(scored.verdict.openParking.length + scored.verdict.openOther.length);
  expect(open.map(({ couldPark }) => couldPark)).toEqual(
    [...open.map(({ couldPark }) => couldPark)].sort().reverse(),
  );
  expect(open.every(({ why }) => why.length > 0)).toBe(true);
});
