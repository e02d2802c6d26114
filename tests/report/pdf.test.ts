import { beforeAll, describe, expect, it } from 'vitest';
import type { Block } from '../../src/report/blocks.ts';
import { makePdf, reportOf } from './make-pdf.ts';
import { textsOf } from './model-text.ts';
import { objectsOf, operatorsOf, readPdf, spoken, type ReadPdf, type TreeNode } from './read-pdf.ts';
import { samplePhoto, sampleReport } from './sample-report.ts';

const words = (texts: readonly string[]): string =>
  texts.join(' ').normalize('NFC').replace(/\s+/g, ' ').trim();

/** Roles with the text or the words of each, in reading order. */
function outline({ pages }: ReadPdf): readonly { role: string; text: string }[] {
  return pages.flatMap(({ marked, tree }) => {
    const texts = new Map(marked.map(({ id, text }) => [id, text.trim()]));
    const walk = (node: TreeNode): { role: string; text: string }[] => {
      const own = (node.children ?? []).filter(({ type }) => type === 'content');
      const text = node.alt ?? own.map(({ id }) => texts.get(id) ?? '').join(' ');
      return [
        { role: node.role ?? '', text },
        ...(node.children ?? []).filter(({ role }) => role).flatMap(walk),
      ];
    };
    return tree === null ? [] : walk(tree);
  });
}

const textsWith = (pdf: ReadPdf, role: string): readonly string[] =>
  outline(pdf)
    .filter((node) => node.role === role)
    .map(({ text }) => text);

describe.each(['a4', 'letter'] as const)('a report on %s paper', (paper) => {
  let bytes: Uint8Array;
  let pdf: ReadPdf;
  beforeAll(async () => {
    bytes = await makePdf(sampleReport, { paper });
    pdf = await readPdf(bytes);
  });

  it('[PD1] the text taken out of the PDF is that of the report, in its order', async () => {
    expect(words(await spoken(bytes))).toBe(words(textsOf(sampleReport)));
  });

  it('[PD2] the pages have the size of the paper', () => {
    const size = paper === 'a4' ? [0, 0, 595.28, 841.89] : [0, 0, 612, 792];
    expect(pdf.pages.map(({ view }) => view)).toEqual(pdf.pages.map(() => size));
  });

  it('[PD3] the tree has headings, heads of columns and rows, lists, and figures with words', () => {
    const texts = (kind: Block['kind']): readonly string[] =>
      sampleReport.blocks.flatMap((block) => (block.kind === kind && 'text' in block ? [block.text] : []));
    expect([...textsWith(pdf, 'H1'), ...textsWith(pdf, 'H2'), ...textsWith(pdf, 'H3')].sort()).toEqual(
      [...texts('heading')].sort(),
    );
    const tables = sampleReport.blocks.filter((block) => block.kind === 'table');
    expect(textsWith(pdf, 'TH')).toEqual(
      tables.flatMap(({ head, rows }) => [...head, ...rows.map(([first]) => first)]),
    );
    const alts = sampleReport.blocks.flatMap((block) => ('alt' in block ? [block.alt] : []));
    expect(textsWith(pdf, 'Figure')).toEqual(alts);
    expect(textsWith(pdf, 'LI')).toHaveLength(3 + 5 + 2);
  });

  it('[PD4] what is no part of the report is told apart: the running line, the page number, heads said again', () => {
    const beside = pdf.pages.map(({ marked }) =>
      marked
        .filter(({ id, text }) => id === undefined && text.trim() !== '')
        .map(({ text }) => text.trim().split('\n')[0]),
    );
    const head = ['What'];
    const pageOf = (page: number): string => sampleReport.pageOf(page, pdf.pages.length);
    expect(beside.map((texts) => texts.slice(0, 2))).toEqual(
      pdf.pages.map((_, index) => [sampleReport.running, pageOf(index + 1)]),
    );
    expect(beside[1]?.slice(2, 3)).toEqual(head);
  });

  it('[PD5] it says its language and its title, and shows the title', async () => {
    expect(pdf.title).toBe(sampleReport.title);
    expect(pdf.lang).toBe('en');
    const catalog = (await objectsOf(bytes)).find((object) => object.includes('/Catalog')) ?? '';
    expect(catalog).toMatch(/\/MarkInfo <<\s*\/Marked true/);
    expect(catalog).toMatch(/\/DisplayDocTitle true/);
    expect(catalog).toMatch(/\/StructTreeRoot \d+ 0 R/);
  });

  it('[PD6] heads of tables say what they are the head of, figures where they stand', async () => {
    const elements = (await objectsOf(bytes)).filter((object) => object.includes('/StructElem'));
    const heads = elements.filter((object) => /\/S \/TH\b/.test(object));
    expect(heads.filter((object) => /\/Scope \/(?:Column|Row)/.test(object))).toEqual(heads);
    expect(heads.filter((object) => object.includes('/Scope /Column'))).toHaveLength(6 + 4);
    const figures = elements.filter((object) => /\/S \/Figure\b/.test(object));
    expect(figures.filter((object) => /\/BBox \[/.test(object))).toEqual(figures);
  });
});

it('[PD7] the same report gives the same bytes', async () => {
  expect(Buffer.compare(await makePdf(sampleReport), await makePdf(sampleReport))).toBe(0);
});

it('[PD8] a picture of more than 80 kB is refused', async () => {
  const photo: Block = { kind: 'photo', sha256: 'a'.repeat(64), alt: 'a', caption: 'c' };
  const picture = { bytes: new Uint8Array(80_001), width: 10, height: 10 };
  await expect(makePdf(reportOf(photo), { photo: () => Promise.resolve(picture) })).rejects.toThrow(
    'too large',
  );
});

it('[PD9] a picture that is shown twice is in the file once, and one that is gone leaves a figure with its words', async () => {
  const photo = (sha256: string): Block => ({ kind: 'photo', sha256, alt: `alt ${sha256}`, caption: 'c' });
  const bytes = await makePdf(reportOf(photo('1'), photo('1'), photo('f')));
  const images = (await objectsOf(bytes)).filter((object) => object.includes('/Subtype /Image'));
  expect(images).toHaveLength(1);
  expect(textsWith(await readPdf(bytes), 'Figure')).toEqual(['alt 1', 'alt 1', 'alt f']);
});

it('[PD10] a signature is drawn as lines', async () => {
  const signature: Block = {
    kind: 'signature',
    name: 'N',
    role: 'r',
    alt: 'a',
    strokes: [[0, 0, 0.5, 0.25]],
  };
  const [page] = await operatorsOf(await makePdf(reportOf(signature)));
  expect(page).toMatch(/\/Figure <<\/MCID 0>> BDC\nq .* \d+(?:\.\d+)? \d+(?:\.\d+)? m \d.* l S Q/);
});

it('[PD11] a typical report with ten photos is small enough to be sent', async () => {
  const photos = Array.from({ length: 10 }, (_, index): Block => ({
    kind: 'photo',
    sha256: String(index),
    alt: 'a',
    caption: 'c',
  }));
  const bytes = await makePdf(
    reportOf(...sampleReport.blocks.filter(({ kind }) => kind !== 'photo'), ...photos),
  );
  const pictures = await Promise.all(photos.map((_, index) => samplePhoto(String(index))));
  const shown = pictures.reduce((sum, picture) => sum + (picture?.bytes.length ?? 0), 0);
  console.log(`a report with ten photos: ${bytes.length} bytes, ${bytes.length - shown} without the photos`);
  expect(bytes.length - shown).toBeLessThan(60_000);
}, 30_000);
