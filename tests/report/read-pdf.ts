import {
  decodePDFRawStream,
  PDFArray,
  PDFDict,
  PDFDocument,
  PDFHexString,
  PDFName,
  PDFRawStream,
  PDFRef,
  PDFStream,
  type PDFObject,
} from '@cantoo/pdf-lib';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import type { TextItem, TextMarkedContent } from 'pdfjs-dist/types/src/display/api.js';

/** Text between two marks, and where it stands, in points from the lower left corner. */
export interface Marked {
  /** Of its mark; none for what is no content of the document. */
  readonly id: string | undefined;
  readonly text: string;
  readonly boxes: readonly { readonly left: number; readonly right: number; readonly y: number }[];
}

/** A node of the structure tree as a reader of the file sees it. */
export interface TreeNode {
  readonly role?: string;
  readonly type?: string;
  readonly id?: string;
  readonly alt?: string;
  readonly children?: readonly TreeNode[];
}

export interface ReadPage {
  readonly view: readonly number[];
  readonly marked: readonly Marked[];
  readonly tree: TreeNode | null;
}

export interface ReadPdf {
  readonly pages: readonly ReadPage[];
  readonly title: string;
  readonly lang: unknown;
}

/** Reads a PDF with a library that has no part in writing it. */
export async function readPdf(bytes: Uint8Array): Promise<ReadPdf> {
  const task = getDocument({
    data: new Uint8Array(bytes),
    verbosity: 0,
    disableFontFace: true,
    useSystemFonts: false,
  });
  const document = await task.promise;
  const pages: ReadPage[] = [];
  for (let number = 1; number <= document.numPages; number++) {
    const page = await document.getPage(number);
    const { items } = await page.getTextContent({ includeMarkedContent: true, disableNormalization: true });
    pages.push({
      view: page.view,
      marked: markedOf(items),
      tree: (await page.getStructTree()) as TreeNode | null,
    });
  }
  const { info } = (await document.getMetadata()) as { info: { Title?: string; Language?: unknown } };
  await task.destroy();
  return { pages, title: info.Title ?? '', lang: info.Language };
}

function markedOf(items: readonly (TextItem | TextMarkedContent)[]): readonly Marked[] {
  const found: { id: string | undefined; text: string; boxes: Marked['boxes'][number][] }[] = [];
  const open: (string | undefined)[] = [];
  for (const item of items) {
    if ('type' in item) {
      if (item.type === 'endMarkedContent') open.pop();
      else {
        open.push(item.id ?? open.at(-1));
        if (open.length === 1) found.push({ id: item.id ?? undefined, text: '', boxes: [] });
      }
      continue;
    }
    const last = found.at(-1);
    if (last === undefined || open.length === 0) throw new Error(`text without a mark: ${item.str}`);
    last.text += `${item.str}${item.hasEOL ? '\n' : ''}`;
    const left = Number(item.transform[4]);
    last.boxes.push({ left, right: left + item.width, y: Number(item.transform[5]) });
  }
  return found;
}

/**
 * Text of the document in the order of its whole structure tree, page breaks or not: what is read aloud. Figures give
 * their words.
 */
export async function spoken(bytes: Uint8Array): Promise<readonly string[]> {
  const { pages } = await readPdf(bytes);
  const texts = new Map(pages.flatMap(({ marked }) => marked.map(({ id, text }) => [id, text] as const)));
  const { context, catalog } = await PDFDocument.load(bytes, { updateMetadata: false });
  const say = (value: PDFObject | undefined): readonly string[] => {
    const node = context.lookup(value);
    if (node instanceof PDFArray) return node.asArray().flatMap(say);
    if (!(node instanceof PDFDict)) throw new Error(`no part of a structure tree: ${String(node)}`);
    const page = node.get(PDFName.of('Pg'));
    if (page instanceof PDFRef)
      return [texts.get(`p${page.objectNumber}R_mc${String(node.get(PDFName.of('MCID')))}`) ?? ''];
    const alt = node.get(PDFName.of('Alt'));
    return [...(alt instanceof PDFHexString ? [alt.decodeText()] : []), ...say(node.get(PDFName.of('K')))];
  };
  return say(catalog.get(PDFName.of('StructTreeRoot')));
}

/** Every dictionary and array of the file, taken out of its compressed objects, as text; streams without bytes. */
export async function objectsOf(bytes: Uint8Array): Promise<readonly string[]> {
  const { context } = await PDFDocument.load(bytes, { updateMetadata: false });
  return context
    .enumerateIndirectObjects()
    .map(([, object]) => String(object instanceof PDFStream ? object.dict : object));
}

/** The operators of each page, uncompressed. */
export async function operatorsOf(bytes: Uint8Array): Promise<readonly string[]> {
  const document = await PDFDocument.load(bytes, { updateMetadata: false });
  return document.getPages().map(({ node }) => {
    const contents = node.Contents();
    if (!(contents instanceof PDFRawStream)) throw new Error('a page without operators');
    return new TextDecoder().decode(decodePDFRawStream(contents).decode());
  });
}
