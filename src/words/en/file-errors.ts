import type { Fault, Problem } from '../../core/problem.ts';
import { unreachable } from '../../core/result.ts';
import { entry } from '../entry.ts';
import { quoted } from '../quoted.ts';

/** Why a file cannot be taken, as `files` finds it. */
export type FileProblem =
  | {
      readonly kind:
        'empty' | 'not-text' | 'truncated' | 'wrong-format' | 'no-records' | 'damaged' | 'unreadable';
    }
  | { readonly kind: 'too-large'; readonly mostBytes: number }
  | { readonly kind: 'too-deep' | 'too-many'; readonly most: number }
  | { readonly kind: 'not-json'; readonly line: number; readonly column: number }
  | {
      readonly kind: 'repeated-name' | 'forbidden-name';
      readonly name: string;
      readonly line: number;
      readonly column: number;
    }
  | { readonly kind: 'bad-entry' | 'wrong-photo'; readonly name: string }
  | { readonly kind: 'large-photo'; readonly name: string; readonly mostMegapixels: number }
  | { readonly kind: 'newer-version'; readonly version: number }
  | ({ readonly kind: 'bad-header' } & Fault)
  | ({ readonly kind: 'bad-record'; readonly key: string } & Fault)
  | { readonly kind: 'record-too-large'; readonly key: string; readonly mostBytes: number }
  | { readonly kind: 'bad-key' | 'bad-stamp' | 'duplicate-record'; readonly key: string };

/** The types of JSON, as somebody who writes a file by hand would say them. */
const types: Readonly<Record<string, string>> = {
  string: 'a text in quotes',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
  array: 'a list in square brackets',
  object: 'an object in curly brackets',
  record: 'an object in curly brackets',
};

function problemLine(problem: Problem): string {
  switch (problem.kind) {
    case 'missing':
      return 'it is missing';
    case 'malformed':
    case 'no-alternative':
      return 'it does not have the form that is asked for';
    case 'too-deep':
      return 'it is nested too deep';
    case 'not-finite':
      return 'it is not a finite number';
    case 'lone-surrogate':
      return 'its text is broken';
    case 'not-json':
      return 'it cannot be written as JSON';
    case 'wrong-type':
      return `it must be ${entry(types, problem.expected) ?? problem.expected}`;
    case 'not-one-of':
      return `it must be one of ${problem.options.join(', ')}`;
    case 'above':
      return `it is above ${problem.most}`;
    case 'below':
      return `it is below ${problem.least}`;
    case 'longer':
      return `it is longer than ${problem.most} characters`;
    case 'shorter':
      return `it is shorter than ${problem.least} characters`;
    case 'more':
      return `it holds more than ${problem.most}`;
    case 'fewer':
      return `it holds fewer than ${problem.least}`;
    case 'unknown-field':
      return `it has a field ${quoted(problem.name)} that is not known`;
    default:
      return unreachable(problem);
  }
}

/** What is wrong with a value, and at which field: `massKg: it is below 0`. */
export function faultLine({ path, problem }: Fault): string {
  const field = path.join('.');
  const line = problemLine(problem);
  return field === '' ? line : `at ${quoted(field)} ${line}`;
}

const plain = {
  empty: 'The file is empty.',
  'not-text': 'This is not a file of ours: it holds no readable text.',
  truncated: 'The file breaks off before its end. Have it sent again, or export it again.',
  'wrong-format': 'This is not a walk file, limit sheet, rule set or backup of Sagline.',
  'no-records': 'The file holds no records.',
  damaged: 'The file was damaged on its way. Have it sent again, or export it again.',
  unreadable: 'The file could not be read. Copy it to this device first, then choose it again.',
} as const;

/** Why a file cannot be taken, and where one can how to mend it. */
export function fileErrorLine(error: FileProblem): string {
  switch (error.kind) {
    case 'too-large':
      return `The file is larger than ${error.mostBytes / 1e6} MB, more than anything we write.`;
    case 'too-deep':
      return 'The file is nested deeper than anything we write.';
    case 'too-many':
      return `The file holds more than we take at once (${error.most}).`;
    case 'not-json':
      return `The text of the file is not JSON: line ${error.line}, column ${error.column}.`;
    case 'repeated-name':
      return `The name ${quoted(error.name)} stands twice in one place: line ${error.line}, column ${error.column}.`;
    case 'forbidden-name':
      return `The name ${quoted(error.name)} is not allowed: line ${error.line}, column ${error.column}.`;
    case 'bad-entry':
      return `The bundle holds ${quoted(error.name)}, which no bundle of ours does. Have it sent again as it was exported.`;
    case 'wrong-photo':
      return `The photo ${quoted(error.name)} in the bundle is not the one that was taken: its bytes were changed.`;
    case 'large-photo':
      return `The photo ${quoted(error.name)} in the bundle has more than ${error.mostMegapixels} megapixels. Make it smaller, or leave it out.`;
    case 'newer-version':
      return `The file is from a newer version of Sagline (format ${error.version}). Update, then import it again.`;
    case 'bad-header':
      return `The head of the file is not right: ${faultLine(error)}.`;
    case 'bad-record':
      return `The record ${quoted(error.key)} is not right: ${faultLine(error)}.`;
    case 'bad-key':
      return `The file holds a record under a key that is not known: ${quoted(error.key)}.`;
    case 'bad-stamp':
      return `The stamp of the record ${quoted(error.key)} is not right.`;
    case 'record-too-large':
      return `The record ${quoted(error.key)} is larger than ${error.mostBytes / 1024} kB.`;
    case 'duplicate-record':
      return `The record ${quoted(error.key)} stands twice in the file.`;
    default:
      return plain[error.kind];
  }
}

export const nothingImported = 'Nothing was imported; everything here is as it was.';
