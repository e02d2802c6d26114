import { unreachable } from '../core/result.ts';
import { faultAt, scalarEnd, stringEnd, type ScanFault } from './json-scalar.ts';

export interface ScanLimits {
  readonly deepest: number;
  readonly mostValues: number;
}

/** What may come next; after a comma the closing bracket may not. */
type Expected = 'value' | 'value-or-end' | 'name' | 'name-or-end' | 'colon' | 'comma-or-end' | 'end';

interface Scan {
  readonly text: string;
  readonly limits: ScanLimits;
  /** The open lists (undefined) and the open objects, each with the names that it has had. */
  readonly open: (Set<string> | undefined)[];
  at: number;
  values: number;
  expected: Expected;
}

const isSpace = (char: string | undefined): boolean =>
  char === ' ' || char === '\n' || char === '\r' || char === '\t';

/**
 * Walks once over a text and says why it is not JSON that we read, or undefined if it is. Takes no more stack for
 * deep nesting and no more time than the text is long. Stricter than JSON.parse: a name may stand only once in an
 * object (RFC 7493), and `__proto__` not at all, since assigning to it changes what an object is.
 */
export function scanJson(text: string, limits: ScanLimits): ScanFault | undefined {
  const scan: Scan = { text, limits, open: [], at: 0, values: 0, expected: 'value' };
  for (;;) {
    while (isSpace(text[scan.at])) scan.at += 1;
    const char = text[scan.at];
    if (char === undefined) return scan.expected === 'end' ? undefined : faultAt(text, scan.at);
    const fault = step(scan, char);
    if (fault) return fault;
  }
}

function step(scan: Scan, char: string): ScanFault | undefined {
  switch (scan.expected) {
    case 'value':
      return value(scan, char);
    case 'value-or-end':
      return char === ']' ? close(scan) : value(scan, char);
    case 'name':
      return name(scan);
    case 'name-or-end':
      return char === '}' ? close(scan) : name(scan);
    case 'colon':
      return char === ':' ? go(scan, 'value') : faultAt(scan.text, scan.at);
    case 'comma-or-end':
      return afterValue(scan, char);
    case 'end':
      return faultAt(scan.text, scan.at);
    default:
      return unreachable(scan.expected);
  }
}

function go(scan: Scan, expected: Expected, to = scan.at + 1): undefined {
  scan.at = to;
  scan.expected = expected;
}

/** A value is over; outside of everything the document is. */
const valueEnds = (scan: Scan, to: number): undefined =>
  go(scan, scan.open.length === 0 ? 'end' : 'comma-or-end', to);

function close(scan: Scan): undefined {
  scan.open.pop();
  valueEnds(scan, scan.at + 1);
}

function afterValue(scan: Scan, char: string): ScanFault | undefined {
  const inObject = scan.open.at(-1) !== undefined;
  if (char === ',') return go(scan, inObject ? 'name' : 'value');
  return char === (inObject ? '}' : ']') ? close(scan) : faultAt(scan.text, scan.at);
}

function value(scan: Scan, char: string): ScanFault | undefined {
  scan.values += 1;
  if (scan.values > scan.limits.mostValues) return { kind: 'too-many', at: scan.at };
  if (char === '{') return enter(scan, new Set());
  if (char === '[') return enter(scan, undefined);
  const end = scalarEnd(scan.text, scan.at);
  return typeof end === 'number' ? valueEnds(scan, end) : end;
}

function enter(scan: Scan, names: Set<string> | undefined): ScanFault | undefined {
  if (scan.open.length >= scan.limits.deepest) return { kind: 'too-deep', at: scan.at };
  scan.open.push(names);
  return go(scan, names ? 'name-or-end' : 'value-or-end');
}

const nameIn = (quotedName: string): string =>
  quotedName.includes('\\') ? String(JSON.parse(quotedName)) : quotedName.slice(1, -1);

function name(scan: Scan): ScanFault | undefined {
  const end = stringEnd(scan.text, scan.at);
  if (typeof end !== 'number') return end;
  const found = nameIn(scan.text.slice(scan.at, end));
  const names = scan.open.at(-1);
  if (found === '__proto__') return { kind: 'forbidden-name', at: scan.at, name: found };
  if (names?.has(found)) return { kind: 'repeated-name', at: scan.at, name: found };
  names?.add(found);
  return go(scan, 'colon', end);
}
