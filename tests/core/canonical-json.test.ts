import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { canonicalJson, deepestJson, jsonFault } from '../../src/core/canonical-json.ts';

/** The same value with the fields of every object in another order. */
function shuffled(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(shuffled);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .reverse()
      .map(([name, part]) => [name, shuffled(part)]),
  );
}

describe('canonical JSON', () => {
  test('[M8] the example of RFC 8785, section 3.2.2, comes out', () => {
    const text = String.raw`{
      "numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
      "string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/",
      "literals": [null, true, false]
    }`;
    expect(canonicalJson(JSON.parse(text))).toBe(
      String.raw`{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\u000f\nA'B\"\\\\\"/"}`,
    );
  });

  test('[M8] names sort by UTF-16 code units, as in RFC 8785, section 3.2.3', () => {
    const names = ['\u20ac', '\r', '\ufb33', '1', '\ud83d\ude00', '\u0080', '\u00f6'];
    const text = canonicalJson(Object.fromEntries(names.map((name) => [name, 0])));
    const sorted = ['\\r', '1', '\u0080', '\u00f6', '\u20ac', '\ud83d\ude00', '\ufb33'];
    expect(text).toBe(`{${sorted.map((name) => `"${name}":0`).join(',')}}`);
  });

  test('[M8] one value has one text, which reads back as the value', () => {
    fc.assert(
      fc.property(fc.jsonValue({ noUnicodeString: false }), (value) => {
        const text = canonicalJson(value);
        expect(canonicalJson(shuffled(value))).toBe(text);
        expect(canonicalJson(JSON.parse(text))).toBe(text);
      }),
    );
  });

  test('[M8] an undefined field is absent, in a list it is null, alone it is a bug', () => {
    expect(canonicalJson({ a: undefined, b: [undefined, 1] })).toBe('{"b":[null,1]}');
    expect(() => canonicalJson(undefined)).toThrow('undefined has no canonical text');
  });

  const deep = (levels: number): unknown => JSON.parse(`${'['.repeat(levels)}${']'.repeat(levels)}`);
  const faults: readonly (readonly [string, unknown, ReturnType<typeof jsonFault>])[] = [
    ['null', null, undefined],
    ['an absent field', { a: undefined }, undefined],
    ['a boolean', true, undefined],
    ['a pair of surrogates', '\ud83d\ude00', undefined],
    ['a high surrogate alone', 'x\ud83d', 'lone-surrogate'],
    ['a low surrogate alone', ['\ude00x'], 'lone-surrogate'],
    ['a name with a surrogate alone', { '\ud83d': 1 }, 'lone-surrogate'],
    ['not a number', Number.NaN, 'not-finite'],
    ['infinity', { a: [-Infinity] }, 'not-finite'],
    ['a function', () => 1, 'not-json'],
    ['a big integer', 1n, 'not-json'],
    ['a symbol', [Symbol('x')], 'not-json'],
    ['a date', { a: new Date(0) }, 'not-json'],
    ['a map', new Map(), 'not-json'],
    ['an object without prototype', Object.assign(Object.create(null) as object, { a: 1 }), undefined],
    ['the deepest that is allowed', deep(deepestJson), undefined],
    ['one level more', deep(deepestJson + 1), 'too-deep'],
  ];
  test.each(faults)('[M9] %s', (_name, value, fault) => {
    expect(jsonFault(value)).toBe(fault);
  });
});
