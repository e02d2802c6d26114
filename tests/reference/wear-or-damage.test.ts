import { describe, expect, test } from 'vitest';
import { damageOf, isSound } from '../../src/core/findings.ts';
import { items, type Item } from '../../src/core/items.ts';
import { score } from '../../src/core/score.ts';
import { trackKinds } from '../../src/core/machine.ts';
import { slotsOf } from '../../src/core/slots.ts';
import { toldBy, wearOrDamage } from '../../src/reference/wear-or-damage.ts';
import { crack, finding, inputOf, machineOf, outcomeAt, read, walkOf } from '../core/made.ts';
import type { Observed } from '../../src/core/readings.ts';

/** The outcome of one reading on a machine that has the item. */
function outcomeOf(item: Item, what: Observed) {
  for (const track of trackKinds) {
    const machine = machineOf(track, { suspension: 'bogie', slidePlate: true });
    const slot = slotsOf(machine).find((each) => each.item.id === item.id);
    if (!slot) continue;
    const readings = [read(slot.place, item.id, what)];
    const walk = walkOf({ opened: [item.id] });
    return outcomeAt(score(inputOf({ machine, walk, readings })), slot.place, item.id);
  }
  throw new Error(`no machine has ${item.id}`);
}

const says = (item: string, name: string) =>
  wearOrDamage.find((each) => each.item === item && each.findings.includes(name))?.is;

describe('[N9] wear or damage, by finding', () => {
  const findings = items.flatMap((item) =>
    item.ask.kind === 'finding' ? item.ask.findings.map((name, i) => [item.id, name, i, item] as const) : [],
  );

  test.each(findings)('[RC50] %s %s is what the table with its sources says', (id, name, index, item) => {
    const outcome = outcomeOf(item, finding(name));
    expect(damageOf([outcome]).length > 0).toBe(says(id, name) === 'damage');
    expect(isSound(outcome.state)).toBe(index === 0 || says(id, name) === 'wear');
    if (says(id, name) === 'damage')
      expect(toldBy({ item: id, finding: name }).text.length).toBeGreaterThan(10);
  });

  const cracks = items.find(({ id }) => id === 'crack');
  test.each([
    ['no crack', crack(0, 0), false, true],
    ['a crack that shows no cord', crack(20, 3), false, false],
    ['a crack that shows the cord', crack(20, 3, true), true, false],
  ])('[RC51] %s', (_, what, isDamage, sound) => {
    if (!cracks) throw new Error('no item crack');
    const outcome = outcomeOf(cracks, what);
    expect(damageOf([outcome]).length > 0).toBe(isDamage);
    expect(isSound(outcome.state)).toBe(sound);
  });

  test('[RC52] every row is about findings that its item has', () => {
    for (const { item, findings: named } of wearOrDamage) {
      const found = items.find(({ id }) => id === item);
      const known = found?.ask.kind === 'finding' ? found.ask.findings : ['cord-visible'];
      expect(known).toEqual(expect.arrayContaining([...named]));
    }
  });
});
