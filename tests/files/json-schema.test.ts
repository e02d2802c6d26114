import { Ajv2020 } from 'ajv/dist/2020.js';
import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { demoFile } from '../../src/cli/demo.ts';
import { jsonSchema } from '../../src/files/json-schema.ts';
import { builtIn } from '../../src/reference/built-in.ts';
import { readWalkFile } from '../../src/files/walk-file.ts';
import { writeWalkFile } from '../../src/files/write-walk-file.ts';
import { fileOf, lug, lugKey, machine, machineKey, unstampedList, version, versionList } from './samples.ts';

/** What the published schema has against a text; nothing for one that it takes. */
type Objections = (text: string) => unknown;

function published(): Objections {
  const validate = new Ajv2020({ allErrors: false, strictTypes: false }).compile(jsonSchema());
  return (text) => (validate(JSON.parse(text)) ? undefined : validate.errors);
}

const checks = new URL('../checks/walks/', import.meta.url);
const walks = readdirSync(checks).filter((name) => name.endsWith('.json') && name !== 'expected.json');

describe('the published schema', () => {
  test('[F19] takes the demo, the example and the walks of published values', async () => {
    expect(walks.length).toBeGreaterThanOrEqual(3);
    const example = readFileSync(new URL('../../src/files/example.json', import.meta.url), 'utf8');
    const texts = walks.map((name) => readFileSync(new URL(name, checks), 'utf8'));
    const objections = published();
    for (const text of [await demoFile(), example, ...texts]) expect(objections(text)).toBeUndefined();
  });

  test('[F19] takes whatever is written', () => {
    const objections = published();
    fc.assert(
      fc.property(versionList, unstampedList, (versions, byHand) => {
        expect(objections(writeWalkFile([...versions, ...byHand]))).toBeUndefined();
      }),
      { numRuns: 200 },
    );
  });

  const stamped = version(machineKey, machine);
  const good = { key: machineKey, value: machine };
  const rules = (when: unknown) => ({
    key: 'rules/a',
    value: {
      v: 1,
      language: 1,
      name: 'a',
      covers: {},
      rules: [
        {
          id: 'a',
          items: ['cord'],
          when,
          call: 'park',
          meanwhile: 'nothing',
          reason: { message: 'a' },
          source: { mark: 'estimate', text: '' },
        },
      ],
    },
  });

  const price = (more: object) => ({
    key: 'price/a',
    value: { v: 1, name: 'a', currency: 'EUR', lines: [], ...more },
  });
  const line = { job: 'renew-track', minor: 1, labourHours: 1, source: { mark: 'entered', text: '' } };

  test.each<[string, string]>([
    ['part of a cent', fileOf([price({ lines: [{ ...line, minor: 0.5 }] })])],
    ['a price without its source', fileOf([price({ lines: [{ ...line, source: undefined }] })])],
    ['a currency by its sign', fileOf([price({ currency: '€' })])],
    ['rates without one of them', fileOf([{ ...price({}), key: 'rate/a' }])],
    ['a hold that holds nothing', fileOf([{ key: 'hold/a/left.renew-track', value: { v: 1, skip: false } }])],
    ['another format', fileOf([good], { format: 'other' })],
    ['another version', fileOf([good], { version: 2 })],
    ['a field of its own', fileOf([good], { photos: [] })],
    ['no records', fileOf([])],
    ['no object as record', fileOf([3])],
    ['an unknown kind', fileOf([{ key: 'wheel/a', value: {} }])],
    ['the demo', fileOf([{ ...good, key: 'demo/machine/a' }])],
    ['a field beside the envelope', fileOf([{ ...good, extra: 1 }])],
    ['seen without a stamp', fileOf([{ ...good, seen: {} }])],
    ['an author without a stamp', fileOf([{ ...good, by: 'a' }])],
    ['neither value nor stamp', fileOf([{ key: machineKey }])],
    ['an odd stamp', fileOf([{ ...stamped, stamp: 'x' }])],
    ['a machine without a name', fileOf([{ key: machineKey, value: { ...machine, name: undefined } }])],
    ['a reading of nothing known', fileOf([{ key: lugKey, value: { v: 1, what: { kind: 'smell' } } }])],
    ['a value without v', fileOf([{ key: machineKey, value: { name: 'x' } }])],
    ['a reading as machine', fileOf([{ key: machineKey, value: lug }])],
    ['a condition of another language', fileOf([rules({ smells: 'odd' })])],
    ['a condition deep down', fileOf([rules({ all: [{ not: { any: [{ smells: 'odd' }] } }] })])],
    ['an empty condition', fileOf([rules({})])],
    [
      'a condition with two lists',
      fileOf([rules({ all: [{ unknown: 'cord' }], any: [{ unknown: 'cord' }] })]),
    ],
    ['an empty list of conditions', fileOf([rules({ all: [] })])],
    ['seen that is no object', fileOf([{ ...stamped, seen: 1 }])],
    ['seen of no device', fileOf([{ ...stamped, seen: { phone: 1 } }])],
    ['an author that is no id', fileOf([{ ...stamped, by: 'Some Body' }])],
    ['a value that is no object', fileOf([{ key: 'same/a', value: 1 }])],
    ['a seal that is no text', fileOf([good], { seals: [1] })],
    ['a condition with two heads', fileOf([rules({ unknown: 'cord', track: ['steel'] })])],
  ])('[F19] refuses %s, as the reader does', (_, text) => {
    expect(readWalkFile(text).ok).toBe(false);
    expect(published()(text)).toBeDefined();
  });

  test.each<[string, string]>([
    ['a price of nothing', fileOf([price({ lines: [{ ...line, minor: 0 }] })])],
    ['a hold', fileOf([{ key: 'hold/a/left.renew-track', value: { v: 1, skip: true, from: 1, to: 2 } }])],
    [
      'the prices and rates that come with the app',
      fileOf(Object.entries({ ...builtIn.prices, ...builtIn.rates }).map(([key, value]) => ({ key, value }))),
    ],
    ['a removal', fileOf([version(machineKey, undefined)])],
    ['a value of a later version', fileOf([{ key: machineKey, value: { v: 2 } }])],
    [
      'conditions in conditions',
      fileOf([rules({ all: [{ not: { any: [{ unknown: 'cord' }] } }, { sag: 'tight' }] })]),
    ],
    ['unknown fields of a value', fileOf([{ key: machineKey, value: { ...machine, later: [1] } }])],
  ])('[F19] takes %s, as the reader does', (_, text) => {
    expect(readWalkFile(text).ok).toBe(true);
    expect(published()(text)).toBeUndefined();
  });

  test('[F19] names its dialect, and says of every part what it is', () => {
    const schema = JSON.parse(JSON.stringify(jsonSchema())) as {
      $schema: string;
      properties: { seals: { description: string } };
      $defs: { record: { properties: Record<string, { description: string }> } };
    };
    expect(schema.$schema).toBe('https://json-schema.org/draft/2020-12/schema');
    const parts = Object.entries({ ...schema.$defs.record.properties, seals: schema.properties.seals });
    expect(parts.map(([name]) => name)).toEqual(['key', 'value', 'stamp', 'seen', 'by', 'seals']);
    for (const [name, { description }] of parts) expect(description, name).toMatch(/^[A-Z].*\.$/);
  });

  test('[F19] refers to itself for conditions instead of writing every level out', () => {
    const text = JSON.stringify(jsonSchema());
    expect(text.length).toBeLessThan(60_000);
    expect(text).toContain('"when":{"$ref":"#/$defs/condition"}');
  });
});
