import { describe, expect, it } from 'vitest';
import { machineOf, machineTexts, shapeOf, type MachineDraft } from '../../src/app/data/machine-form.ts';
import { pinHints } from '../../src/app/data/pin.ts';
import { machineSchema, type Machine } from '../../src/core/machine.ts';
import { demoRecords } from '../../src/reference/demo.ts';

const few: MachineDraft = { name: ' Yard 7 ', kind: 'excavator', track: 'rubber-cored' };
const made = (draft: MachineDraft, before?: Machine, fits?: string) =>
  machineOf(before, machineTexts(before, draft, 'kg'), 'kg', fits);

const machines = demoRecords().flatMap(({ key, value }) =>
  key.startsWith('demo/machine/') ? [value as Machine] : [],
);

describe('the form of a machine', () => {
  it('[A9] name, kind and track make a whole machine with the sheet that fits', () => {
    const machine = made(few, undefined, 'limits/starting-rubber-mini');
    expect(machine.ok && machineSchema.safeParse(machine.value).success).toBe(true);
    expect(machine.ok && machine.value).toMatchObject({
      name: 'Yard 7',
      sheet: 'limits/starting-rubber-mini',
      shape: { bottomRollers: 4, drive: 'oval' },
    });
  });

  it.each([
    ['name', { ...few, name: ' ' }],
    ['kind', { name: 'a', track: 'steel' }],
    ['track', { name: 'a', kind: 'dozer' }],
    ['mass', { ...few, mass: '2t' }],
    ['meter', { ...few, meter: '1,234' }],
    ['rightFitted', { ...few, rightFitted: '-5' }],
  ] as const)('[A3] without a readable %s there is no machine, and the form says so', (field, draft) => {
    const answer = made(draft);
    expect(answer.ok ? [] : answer.error).toContain(field);
  });

  it.each(machines.map((machine) => [machine.name, machine] as const))(
    '[A1] an untouched form gives %s back, and keeps what it does not show',
    (_name, machine) => {
      const kept = { ...machine, kept: 'by a newer build' };
      const answer = made({}, kept);
      expect(answer.ok && answer.value).toEqual(kept);
    },
  );

  it('[A1] a mass that is read in pounds and not touched keeps its kilograms', () => {
    const [machine] = machines;
    const texts = machine && machineTexts(machine, {}, 'lb');
    const answer = texts && machineOf(machine, texts, 'lb', undefined);
    expect(answer?.ok && answer.value.massKg).toBe(machine?.massKg);
  });

  it('[A10] what was put right stays when kind or track are changed afterwards', () => {
    const texts = machineTexts(undefined, { ...few, bottomRollers: '6', kind: 'track-loader' }, 'kg');
    expect(shapeOf(texts)).toMatchObject({ bottomRollers: 6, drive: 'high' });
  });
});

describe('PIN', () => {
  it.each([
    ['ABC12345E67890123', []],
    ['ABC1234516789012', ['length']],
    ['ABC12345167890123', ['check-letter']],
    ['ABC12345EI7890123', ['letters']],
    ['20134', []],
    ['OIQ-1', []],
    [' abc 12345e-67890123 ', []],
  ] as const)('[A11] %s is kept, with %j said', (pin, hints) => {
    expect(pinHints(pin)).toEqual(hints);
  });
});
