import { describe, expect, test } from 'vitest';
import { builtIn } from '../../src/reference/built-in.ts';
import { itemById } from '../../src/core/items.ts';
import { keySchema } from '../../src/core/keys.ts';
import { limitSheetSchema, loads } from '../../src/core/limits.ts';
import type { MachineKind, TrackKind } from '../../src/core/machine.ts';
import { chooseLimit } from '../../src/core/limits.ts';
import { startingRulesKey } from '../../src/reference/rules-starting.ts';
import { startingSheetFor } from '../../src/reference/sheet-classes.ts';
import { startingSheets } from '../../src/reference/sheets.ts';
import { tools } from '../../src/reference/tools.ts';
import { machineOn } from './walkaround.ts';

const sizes = startingSheets.flatMap(({ key, value }) =>
  value.items.map((entry) => [`${key} ${entry.item} ${String(entry.positions ?? '')}`, entry] as const),
);

describe('[N2] the starting sheets', () => {
  test.each(startingSheets.map((each) => [each.key, each.value] as const))(
    '[L1] %s is a limit sheet',
    (key, value) => {
      expect(keySchema.safeParse(key).success).toBe(true);
      expect(limitSheetSchema.safeParse(value).error).toBeUndefined();
      expect(value.rules).toBe(startingRulesKey);
      expect(builtIn.rules[startingRulesKey]).toBeDefined();
    },
  );

  test('[L2] keys occur once', () => {
    expect(new Set(startingSheets.map(({ key }) => key)).size).toBe(startingSheets.length);
    expect(Object.keys(builtIn.limits)).toHaveLength(startingSheets.length);
  });

  test.each(sizes)('[L3] %s has one limit at 100 % for every load', (_, entry) => {
    expect(itemById(entry.item)).toBeDefined();
    for (const load of loads) expect(chooseLimit(entry, 'hundred', load)?.loadAssumed).toBe(false);
    const hundreds = entry.limits.filter((each) => each.hundred);
    for (const load of loads) {
      expect(hundreds.filter((each) => each.loads === undefined || each.loads.includes(load))).toHaveLength(
        1,
      );
    }
  });

  test.each(sizes)('[L4] %s names a source for the new size and every limit', (_, entry) => {
    const sources = [entry.new?.source, ...entry.limits.map(({ source }) => source)];
    for (const source of sources) expect(source?.text).toMatch(/\S/);
  });

  test('[L5] no two bands of a sheet are read in the same way', () => {
    for (const { value } of startingSheets) {
      const ways = value.sag.map(({ method, posture }) => `${method} ${posture}`);
      expect(new Set(ways).size).toBe(ways.length);
    }
  });

  test('[L6] the new size of a class is never passed off as a maker’s', () => {
    const firm = sizes.filter(
      ([, entry]) => entry.new && !['estimate', 'from-memory'].includes(entry.new.source.mark),
    );
    expect(firm.map(([name]) => name)).toEqual([]);
  });
});

const machines: readonly (readonly [MachineKind, TrackKind, number | undefined, string | undefined])[] = [
  ['excavator', 'rubber-cored', undefined, 'rubber-mini'],
  ['excavator', 'rubber-cored', 6000, 'rubber-mini'],
  ['excavator', 'rubber-cored', 6001, 'rubber-midi'],
  ['carrier', 'rubber-cored', 9000, 'rubber-carrier'],
  ['track-loader', 'rubber-cored', 4500, 'rubber-loader'],
  ['track-loader', 'rubber-coreless', undefined, 'rubber-loader-coreless'],
  ['excavator', 'steel', undefined, undefined],
  ['excavator', 'steel', 4500, 'steel-mini'],
  ['excavator', 'steel-pads', 5500, 'steel-5t'],
  ['excavator', 'rubber-shoes', 8000, 'steel-8t'],
  ['excavator', 'steel', 13_500, 'steel-13t'],
  ['excavator', 'steel', 17_000, 'steel-17t'],
  ['excavator', 'steel', 21_000, 'steel-23t'],
  ['other', 'steel', 40_000, 'steel-32t'],
  ['excavator', 'steel', 40_001, undefined],
  ['dozer', 'steel', 9000, 'dozer-small'],
  ['dozer', 'steel', 18_000, 'dozer-mid'],
  ['track-loader', 'steel', 18_000, 'dozer-mid'],
  ['dozer', 'steel', 70_000, 'dozer-large'],
];

describe('[N2] the starting sheet of a machine', () => {
  test.each(machines)('[L7] %s on %s of %s kg gets %s', (kind, track, massKg, id) => {
    const key = startingSheetFor(kind, machineOn(track).shape, massKg);
    expect(key).toBe(id === undefined ? undefined : `limits/starting-${id}`);
    if (key !== undefined) expect(builtIn.limits[key]).toBeDefined();
  });
});

describe('[N3] tools', () => {
  test('[L8] have ids that occur once, a step and an uncertainty', () => {
    expect(new Set(tools.map(({ id }) => id)).size).toBe(tools.length);
    expect(tools.every(({ resolutionMm, uMm }) => resolutionMm > 0 && uMm > 0)).toBe(true);
  });
});
