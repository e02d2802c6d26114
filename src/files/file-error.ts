import type { Fault } from '../core/problem.ts';

/** One record of a file that cannot be taken, by the key that stands there. */
export type RecordFault =
  | { readonly kind: 'bad-key'; readonly key: string; readonly index: number }
  | ({ readonly kind: 'bad-record'; readonly key: string; readonly index: number } & Fault)
  | { readonly kind: 'bad-stamp'; readonly key: string; readonly index: number }
  | {
      readonly kind: 'record-too-large';
      readonly key: string;
      readonly index: number;
      readonly mostBytes: number;
    }
  | { readonly kind: 'duplicate-record'; readonly key: string; readonly index: number };

/** A place in a text: lines and columns from 1. */
export interface TextPlace {
  readonly line: number;
  readonly column: number;
}

/** Why a file cannot be taken. Nothing of it was, and nothing that was here has changed. */
export type FileError =
  | {
      readonly kind:
        'empty' | 'not-text' | 'truncated' | 'wrong-format' | 'no-records' | 'damaged' | 'unreadable';
    }
  | { readonly kind: 'too-large'; readonly mostBytes: number }
  | { readonly kind: 'too-deep' | 'too-many'; readonly most: number }
  | ({ readonly kind: 'not-json' } & TextPlace)
  | ({ readonly kind: 'repeated-name' | 'forbidden-name'; readonly name: string } & TextPlace)
  /** An entry of a bundle that is none of ours, or not what the bundle says of it. */
  | { readonly kind: 'bad-entry' | 'wrong-photo'; readonly name: string }
  | { readonly kind: 'large-photo'; readonly name: string; readonly mostMegapixels: number }
  | { readonly kind: 'newer-version'; readonly version: number }
  | ({ readonly kind: 'bad-header' } & Fault)
  | RecordFault;
