import {
  JpegEmbedder,
  PDFContext,
  PDFHexString,
  PDFRef,
  PDFStreamWriter,
  PDFString,
  type PDFObject,
} from '@cantoo/pdf-lib';

/** An object inside a PDF that others point to. */
export type Ref = PDFRef;

/** A value of a PDF: text in code is a name, `undefined` is left out. */
export type Value =
  string | number | boolean | PDFObject | readonly Value[] | { readonly [key: string]: Value | undefined };

/** Text that a person reads. */
export const textValue = (text: string): Value => PDFHexString.fromText(text);

/** Text in ASCII without parentheses: dates, languages. */
export const plainValue = (text: string): Value => PDFString.of(text);

interface Dictionary {
  readonly [key: string]: Value;
}

/** The objects of one PDF. Only this file knows the library that writes them. */
export interface Objects {
  readonly reserve: () => Ref;
  readonly set: (ref: Ref, value: Value) => void;
  readonly add: (value: Value) => Ref;
  /** Bytes with a dictionary; compressed unless they are already. */
  readonly stream: (bytes: Uint8Array | string, dictionary?: Dictionary) => Ref;
  readonly plainStream: (bytes: Uint8Array | string, dictionary: Dictionary) => Ref;
  readonly jpeg: (bytes: Uint8Array) => Promise<Ref>;
  readonly write: (root: Ref, info: Ref) => Promise<Uint8Array<ArrayBuffer>>;
}

/** An empty PDF. */
export function newObjects(): Objects {
  const context = PDFContext.create();
  const made = (value: Value): PDFObject => context.obj(value as Parameters<typeof context.obj>[0]);
  const dictionaryOf = (dictionary: Dictionary): Record<string, PDFObject> =>
    Object.fromEntries(Object.entries(dictionary).map(([key, value]) => [key, made(value)]));
  return {
    reserve: () => context.nextRef(),
    set: (ref, value) => context.assign(ref, made(value)),
    add: (value) => context.register(made(value)),
    stream: (bytes, dictionary = {}) =>
      context.register(context.flateStream(bytes, dictionaryOf(dictionary))),
    plainStream: (bytes, dictionary) => context.register(context.stream(bytes, dictionaryOf(dictionary))),
    jpeg: async (bytes) => (await JpegEmbedder.for(bytes)).embedIntoContext(context),
    write: async (root, info) => {
      context.trailerInfo.Root = root;
      context.trailerInfo.Info = info;
      return PDFStreamWriter.forContext(context, 200).serializeToBuffer();
    },
  };
}
