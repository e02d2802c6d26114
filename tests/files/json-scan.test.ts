import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { scanJson } from '../../src/files/json-scan.ts';

const limits = { deepest: 40, mostValues: 1000 };
const scan = (text: string) => scanJson(text, limits);

function parses(text: string): boolean {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
}

describe('JSON is walked before it is parsed', () => {
  test.each([
    '0',
    '-0',
    '-12.5e+3',
    '1E-2',
    '1e5',
    '"\\u00e9\\n\\"\\\\\\/\\b\\f\\r\\t"',
    '"é 😀"',
    '[]',
    '{}',
    ' [ 1 , "a" , null , true , false , { "a" : [ ] , "b" : { } } ] ',
    '\t\r\n{"a":1}\n',
    '[[],[[]],{}]',
  ])('[F8] %s reads', (text) => {
    expect(scan(text)).toBeUndefined();
    expect(parses(text)).toBe(true);
  });

  test.each<[string, number]>([
    ['}', 0],
    [']', 0],
    [',', 0],
    ['[1}', 2],
    ['{"a":1]', 6],
    ['[1,]', 3],
    ['{"a":1,}', 7],
    ['{,}', 1],
    ['{a:1}', 1],
    ["{'a':1}", 1],
    ['{"a"1}', 4],
    ['{"a",1}', 4],
    ['{1:2}', 1],
    ['[1 2]', 3],
    ['{} {}', 3],
    ['01', 1],
    ['-01', 2],
    ['+1', 0],
    ['.5', 0],
    ['1.e5', 2],
    ['1e+x', 3],
    ['-x', 1],
    ['0x10', 1],
    ['NaN', 0],
    ['Infinity', 0],
    ['undefined', 0],
    ['truE', 3],
    ['nul!', 3],
    ['faLse', 2],
    ['"a\nb"', 2],
    ['"a\u0000"', 2],
    ['"\\x41"', 2],
    ['"\\u00g0"', 3],
    ['// no', 0],
    ['\u00a01', 0],
  ])('[F8] %s is no JSON, and it is said where', (text, at) => {
    expect(scan(text)).toEqual({ kind: 'not-json', at });
    expect(parses(text)).toBe(false);
  });

  test('[F9] whatever is cut off anywhere breaks off there', () => {
    const text = '{"aé":[1.5e-3,-20,true,false,null,"x\\u00e9\\n",{"b":{}},[]]}';
    for (let end = 0; end < text.length; end += 1) {
      expect(scan(text.slice(0, end)), text.slice(0, end)).toEqual({ kind: 'truncated', at: end });
    }
  });

  test('[F8] a name may stand once in an object, however it is escaped', () => {
    expect(scan('{"a":1,"b":{"a":2},"a":3}')).toEqual({ kind: 'repeated-name', at: 19, name: 'a' });
    expect(scan('{"a":1,"\\u0061":3}')).toEqual({ kind: 'repeated-name', at: 7, name: 'a' });
    expect(scan('[{"a":1},{"a":1}]')).toBeUndefined();
  });

  test('[F8] __proto__ is no name, however it is escaped', () => {
    expect(scan('{"__proto__":1}')).toEqual({ kind: 'forbidden-name', at: 1, name: '__proto__' });
    expect(scan('{"a":{"__proto\\u005f_":1}}')).toEqual({ kind: 'forbidden-name', at: 6, name: '__proto__' });
    expect(scan('["__proto__"]')).toBeUndefined();
  });

  test('[F10] nesting is counted, not followed', () => {
    expect(scan('['.repeat(40) + ']'.repeat(40))).toBeUndefined();
    expect(scan('['.repeat(41) + ']'.repeat(41))).toEqual({ kind: 'too-deep', at: 40 });
    expect(scan('{"a":'.repeat(5_000_000))).toEqual({ kind: 'too-deep', at: 200 });
  });

  test('[F10] values are counted, brackets too', () => {
    expect(scan(`[${Array(999).fill('0').join()}]`)).toBeUndefined();
    expect(scan(`[${Array(1000).fill('0').join()}]`)).toMatchObject({ kind: 'too-many' });
    expect(scan(`[${Array(1000).fill('[]').join()}]`)).toMatchObject({ kind: 'too-many' });
  });

  test('[F8] what JSON.stringify writes reads', () => {
    const noRepeats = fc.jsonValue({ maxDepth: 6 }).map((value) => JSON.stringify(value));
    fc.assert(
      fc.property(noRepeats, (text) => {
        fc.pre(!text.includes('__proto__'));
        expect(scan(text)).toBeUndefined();
      }),
    );
  });

  test('[F8] one wrong character is found wherever JSON.parse finds it', () => {
    const pieces = [
      '{',
      '}',
      '[',
      ']',
      ',',
      ':',
      '"',
      '\\',
      'u',
      '0',
      '1',
      '.',
      'e',
      '-',
      'true',
      'null',
      ' ',
      'a',
    ];
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...pieces), { maxLength: 12 }), (parts) => {
        const text = parts.join('');
        const fault = scan(text);
        if (fault?.kind === 'repeated-name') return;
        expect(fault === undefined, text).toBe(parses(text));
      }),
      { numRuns: 2000 },
    );
  });
});
