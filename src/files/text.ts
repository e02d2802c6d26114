import { err, ok, type Result } from '../core/result.ts';
import type { FileError, TextPlace } from './file-error.ts';
import { deepestDocument, mostValues } from './file-limits.ts';
import { scanJson } from './json-scan.ts';
import type { ScanFault } from './json-scalar.ts';

/** PowerShell redirects what a program prints as UTF-16; everything else writes UTF-8. */
const encodingOf = (bytes: Uint8Array): 'utf-8' | 'utf-16le' =>
  bytes[0] === 0xff && bytes[1] === 0xfe ? 'utf-16le' : 'utf-8';

/** Decodes a file's bytes; half a character is damage in the middle and truncation at the end. */
export function decode(bytes: Uint8Array): Result<string, FileError> {
  const decoder = new TextDecoder(encodingOf(bytes), { fatal: true });
  let text: string;
  try {
    text = decoder.decode(bytes, { stream: true });
  } catch {
    return err({ kind: 'not-text' });
  }
  try {
    return ok(text + decoder.decode());
  } catch {
    return err({ kind: 'truncated' });
  }
}

/** Where a character of a text is, as an editor counts. */
function placeOf(text: string, at: number): TextPlace {
  const before = text.slice(0, at).split('\n');
  return { line: before.length, column: (before.at(-1) ?? '').length + 1 };
}

function errorOf(fault: ScanFault, text: string): FileError {
  switch (fault.kind) {
    case 'truncated':
      return { kind: 'truncated' };
    case 'too-deep':
      return { kind: 'too-deep', most: deepestDocument };
    case 'too-many':
      return { kind: 'too-many', most: mostValues };
    case 'not-json':
      return { kind: 'not-json', ...placeOf(text, fault.at) };
    default:
      return { kind: fault.kind, name: fault.name, ...placeOf(text, fault.at) };
  }
}

/** Parses a text that may be hostile, with bounded memory and stack. */
export function parseJson(text: string): Result<unknown, FileError> {
  if (text.trim() === '') return err({ kind: 'empty' });
  const fault = scanJson(text, { deepest: deepestDocument, mostValues });
  if (fault) return err(errorOf(fault, text));
  return ok(JSON.parse(text) as unknown);
}
