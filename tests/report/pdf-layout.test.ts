import fc from 'fast-check';
import decodeQr from 'qr/decode.js';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { describe, expect, it } from 'vitest';
import type { Block } from '../../src/report/blocks.ts';
import { makePdf, reportOf } from './make-pdf.ts';
import { operatorsOf, readPdf, type TreeNode } from './read-pdf.ts';
import { sampleReport } from './sample-report.ts';

const nodesOf = (node: TreeNode): readonly TreeNode[] => [node, ...(node.children ?? []).flatMap(nodesOf)];

const heading = (text: string, level: 1 | 2 | 3 = 2): Block => ({ kind: 'heading', level, text });
const text = (length: number): Block => ({ kind: 'text', text: 'word '.repeat(length) });

const anyFiller = fc.oneof(
  fc.nat(120).map(text),
  fc
    .integer({ min: 1, max: 8 })
    .map((count): Block => ({ kind: 'list', items: Array(count).fill('an item') })),
  fc.constantFrom('1', '2').map((sha256): Block => ({ kind: 'photo', sha256, alt: 'a', caption: 'c' })),
);

describe('where pages part', () => {
  it('[PD12] no row is cut, and the head stands above the rows of every page', async () => {
    const words = fc.nat(40).map((count) => 'word '.repeat(count + 1));
    await fc.assert(
      fc.asyncProperty(
        fc.array(anyFiller, { maxLength: 8 }),
        fc.array(fc.tuple(words, words), { minLength: 1, maxLength: 60 }),
        async (before, rows) => {
          const table: Block = { kind: 'table', caption: 'Table', head: ['One', 'Two'], figures: [], rows };
          const { pages } = await readPdf(await makePdf(reportOf(...before, table)));
          const rowsOf = (tree: TreeNode | null): readonly TreeNode[] =>
            tree === null ? [] : nodesOf(tree).filter(({ role }) => role === 'TR');
          const found = pages.map(({ tree }) => rowsOf(tree).length);
          expect(found.reduce((sum, count) => sum + count, 0)).toBe(rows.length + 1);
          const heads = pages.map(({ marked }) => marked.some(({ text: shown }) => shown.trim() === 'One'));
          expect(heads).toEqual(found.map((count) => count > 0));
        },
      ),
      { numRuns: 40 },
    );
  }, 60_000);

  it('[PD13] a heading stands on the page of what it is the heading of', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(anyFiller, { maxLength: 8 }), anyFiller, async (before, after) => {
        const report = reportOf(...before, heading('First'), heading('Second', 3), after, text(3));
        const { pages } = await readPdf(await makePdf(report));
        for (const { tree } of pages) {
          const parts = tree?.children?.[0]?.children ?? [];
          expect(parts.at(-1)?.role).not.toMatch(/^H/);
        }
      }),
      { numRuns: 60 },
    );
  }, 60_000);

  it('[PD14] a paragraph leaves no line alone on a page', async () => {
    // The second paragraph goes over the foot of the page with each of its lines in turn.
    for (let length = 800; length < 1100; length += 10) {
      const { pages } = await readPdf(await makePdf(reportOf(text(length), text(120))));
      const lines = pages.flatMap(({ tree }) =>
        (tree?.children?.[0]?.children ?? []).map(({ children = [] }) => children.length),
      );
      expect(lines.filter((count) => count < 2)).toEqual([]);
    }
  });
});

it('[PD15] the headings are listed beside the pages, and lead to theirs', async () => {
  const task = getDocument({ data: await makePdf(sampleReport), verbosity: 0 });
  const document = await task.promise;
  const outline = await document.getOutline();
  const wanted = sampleReport.blocks.flatMap((block) => (block.kind === 'heading' ? [block.text] : []));
  expect(outline.map(({ title }) => title)).toEqual(wanted);
  const pages = await Promise.all(
    outline.map(({ dest }) =>
      document.getPageIndex((dest as Parameters<typeof document.getPageIndex>[]).at(0) as never),
    ),
  );
  expect(pages).toEqual([...pages].sort((a, b) => a - b));
  expect(pages.at(-1)).toBeGreaterThan(0);
  await task.destroy();
});

/** The squares of the first figure as a picture, 4 pixels to a point. */
function rasterOf(operators: string): { width: number; height: number; data: Uint8Array } {
  const figure = /\/Figure <<\/MCID 0>> BDC\n([^]*?)EMC/.exec(operators)?.[1] ?? '';
  const corners = [...figure.matchAll(/([\d.]+) ([\d.]+) m [\d.]+ [\d.]+ l ([\d.]+) ([\d.]+) l/g)];
  const boxes = corners.map((match) => match.slice(1).map(Number));
  const least = (at: number): number => Math.min(...boxes.map((box) => box[at] ?? 0));
  const [left, bottom] = [least(0), least(3)];
  const side = 4 * 110;
  const data = new Uint8Array(side * side * 4).fill(255);
  const edge = (value: number, from: number): number => Math.round((value - from) * 4) + 20;
  for (const [x = 0, top = 0, right = 0, low = 0] of boxes)
    for (let row = edge(low, bottom); row < edge(top, bottom); row++)
      for (let column = edge(x, left); column < edge(right, left); column++)
        data.fill(0, 4 * ((side - row) * side + column), 4 * ((side - row) * side + column) + 3);
  return { width: side, height: side, data };
}

it('[PD16] the QR code on the page holds its content', async () => {
  const content = `sagline:seal:${'0123456789abcdef'.repeat(4)}`;
  const [page = ''] = await operatorsOf(
    await makePdf(reportOf({ kind: 'code', content, alt: 'code', caption: 'Seal' })),
  );
  expect(decodeQr(rasterOf(page))).toBe(content);
});
