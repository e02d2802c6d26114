import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { calls } from '../../src/core/calls.ts';
import type { Block, Report } from '../../src/report/blocks.ts';
import { readFont } from '../../src/report/pdf-font.ts';
import { drawable } from '../../src/report/pdf-text.ts';
import { font, makePdf, reportOf } from './make-pdf.ts';
import { textsOf } from './model-text.ts';
import { objectsOf, operatorsOf, readPdf, spoken, type ReadPdf } from './read-pdf.ts';

const { glyphs } = readFont(font);

const rightToLeft = String.fromCodePoint(0x202e);
const isolate = String.fromCodePoint(0x2067);
const loneSurrogate = String.fromCharCode(0xd83d);

const hostile: readonly (readonly [what: string, text: string])[] = [
  ['control characters', 'a\u0000b\u0007c\u001bd\u007fe\u009ff'],
  ['new lines of every kind', 'a\r\nb\rc\nd\u2028e\u2029f\u0085g'],
  ['what turns text around', `run ${rightToLeft}kcehcer${isolate} end`],
  ['the end of a PDF string', ') Tj ET EMC Q endstream endobj \\) ( < > << >> /JavaScript (alert(1)) \\'],
  ['script', '<script>alert(1)</script>"><img src=x onerror=alert(1)>{{x}}=cmd|/C'],
  ['half of a pair', `${loneSurrogate}x${loneSurrogate}`],
  ['4,000 characters without a space', 'x'.repeat(4000)],
  ['4,000 marks on one letter', `e${'\u0323'.repeat(4000)}`],
  ['scripts that the font lacks', '機械 مرحبا שלום 🚜🏽 नमस्ते'],
  ['nothing', ''],
  ['spaces alone', ' \u00a0\u2009\t '],
];

/** A report with this text in every field that holds text. */
const everywhere = (text: string): Report => ({
  lang: text,
  title: text,
  running: text,
  pageOf: () => text,
  blocks: [
    ...([1, 2, 3] as const).map((level): Block => ({ kind: 'heading', level, text })),
    ...([undefined, 'lead', 'caution', 'small'] as const).map((role): Block => ({
      kind: 'text',
      text,
      ...(role === undefined ? {} : { role }),
    })),
    { kind: 'list', items: [text, text] },
    { kind: 'facts', rows: [[text, text]] },
    {
      kind: 'table',
      caption: text,
      head: [text, text],
      figures: [1],
      rows: [
        [text, text],
        [text, ''],
      ],
    },
    ...([...calls, 'open'] as const).map((call): Block => ({ kind: 'call', call, word: text, text })),
    { kind: 'bar', percent: 130, text },
    { kind: 'photo', sha256: text, alt: text, caption: text },
    { kind: 'signature', name: text, role: text, strokes: [], alt: text },
    { kind: 'code', content: text, alt: text, caption: text },
  ],
});

/** What is seen of a text: what the font lacks is the mark that stands for it. */
const seen = (text: string): string =>
  drawable(text).replace(/\S/gu, (character) =>
    glyphs.has(character.codePointAt(0) ?? 0) ? character : '\ufffd',
  );

const together = (texts: readonly string[]): string => texts.map(drawable).join('').replace(/\s+/g, '');

const forbidden =
  /\/(?:JavaScript|JS|OpenAction|AA|Launch|URI|GoToR|SubmitForm|EmbeddedFile|Annots|AcroForm)\b/;

function strayText({ pages }: ReadPdf): readonly string[] {
  return pages.flatMap(({ view, marked }) => {
    const [left = 0, bottom = 0, right = 0, top = 0] = view;
    return marked
      .filter(({ boxes }) =>
        boxes.some((box) => box.left < left || box.right > right || box.y < bottom || box.y > top),
      )
      .map(({ text }) => text.slice(0, 40));
  });
}

it.each(hostile)(
  '[PD20] with %s in every field it is written, stays on its pages, starts nothing, and its operators are its own',
  async (_what, text) => {
    const bytes = await makePdf(everywhere(text));
    const pdf = await readPdf(bytes);
    expect(strayText(pdf)).toEqual([]);
    expect((await objectsOf(bytes)).filter((object) => forbidden.test(object))).toEqual([]);
    for (const page of await operatorsOf(bytes)) {
      expect(page).not.toMatch(/\(|script|alert/);
      expect(page.match(/BDC/g)?.length).toBe(page.match(/EMC/g)?.length);
      expect(page).toMatch(/^[\x20-\x7e\n]*$/);
    }
  },
  30_000,
);

describe('text as it is drawn', () => {
  it.each([
    ['a control character is seen', 'a\u0000b', 'a\ufffdb'],
    ['half of a pair is seen', `a${loneSurrogate}b`, 'a\ufffdb'],
    ['what turns text around is left out', `a${rightToLeft}b${isolate}c`, 'abc'],
    ['what cannot be seen is left out', 'a\u200bb\u00adc\ufeffd\u200e', 'abcd'],
    ['marks are put on their letters', 'Z\u0307o\u0301l', 'Żól'],
    ['a tab is a space', 'a\tb', 'a b'],
    ['every new line is one', 'a\r\nb\rc\u2028d\u0085e', 'a\nb\nc\nd\ne'],
  ])('[PD21] %s', (_rule, given, drawn) => {
    expect(drawable(given)).toBe(drawn);
  });

  it('[PD22] what the font lacks is seen as a mark and read as what it is', async () => {
    const bytes = await makePdf(reportOf({ kind: 'text', text: 'Rad 機械 rund' }));
    expect((await spoken(bytes)).join('').trim()).toBe('Rad \ufffd\ufffd rund');
    expect((await operatorsOf(bytes))[0]).toContain('/Span <</ActualText <FEFF6A5F68B0>>> BDC');
  });

  it.each([
    ['Polish', 'Zażółć gęślą jaźń'],
    ['Turkish', 'Çağrı İnönü ışık Şşğ'],
    ['Czech, Romanian, Hungarian', 'Příliš žluťoučký kůň Țăranul Ștefan Árvíztűrő'],
    ['Icelandic, Latvian, Lithuanian', 'Þjóð ævi ģimenē ūdens ąčęėįšųū'],
    ['Greek', 'Ξεσκεπάζω την ψυχοφθόρα βδελυγμία, ΐ ΰ Ά Ώ'],
    ['Russian, Ukrainian, Serbian', 'Съешь ещё Їжак ґанок Ђорђе љуљашка'],
    ['numbers and units', '−4 mm ±0.3 mm ≤ 8 × 2 ÷ 3 ≈ ½ ¼ ¾ ⅛ ⅜ ⅝ ⅞ ⁵⁄₈″ 20 °C 5′ 1 000 µm Ø 12 ⌀ № €'],
    ['punctuation and arrows', '“a” „b“ ‘c’ «d» – — … • · → ← ↑ ↓ ☐ ☑ ✓ © ® ™ §'],
  ])('[PD23] %s comes out as it went in', async (_language, text) => {
    const bytes = await makePdf(reportOf({ kind: 'text', text }));
    const [page = ''] = await operatorsOf(bytes);
    expect(page).not.toContain('ActualText');
    expect((await spoken(bytes)).join('').replace(/\s/g, '')).toBe(text.replace(/\s/g, ''));
  });
});

/** Any UTF-16, halves of pairs among it. */
const anyText = fc.oneof(
  fc.string({ maxLength: 60 }),
  fc.lorem({ maxCount: 40 }),
  fc
    .array(fc.integer({ min: 0, max: 0xffff }), { maxLength: 40 })
    .map((units) => String.fromCharCode(...units)),
  fc.string({ unit: 'grapheme', maxLength: 40 }),
  fc.constantFrom('x'.repeat(600), 'Ω'.repeat(300), ''),
);

const anyTable: fc.Arbitrary<Block> = fc.integer({ min: 1, max: 9 }).chain((columns) =>
  fc.record({
    kind: fc.constant('table' as const),
    caption: anyText,
    head: fc.array(anyText, { minLength: columns, maxLength: columns }),
    figures: fc.subarray(Array.from({ length: columns }, (_, index) => index)),
    rows: fc.array(fc.array(anyText, { minLength: columns, maxLength: columns }), { maxLength: 12 }),
  }),
);

const anyBlock: fc.Arbitrary<Block> = fc.oneof(
  fc.record({ kind: fc.constant('heading' as const), level: fc.constantFrom(1, 2, 3), text: anyText }),
  fc.record({
    kind: fc.constant('text' as const),
    text: anyText,
    role: fc.constantFrom('lead', 'caution', 'small'),
  }),
  fc.record({ kind: fc.constant('list' as const), items: fc.array(anyText, { maxLength: 6 }) }),
  fc.record({
    kind: fc.constant('facts' as const),
    rows: fc.array(fc.tuple(anyText, anyText), { maxLength: 6 }),
  }),
  anyTable,
  fc.record({
    kind: fc.constant('call' as const),
    call: fc.constantFrom(...calls, 'open' as const),
    word: anyText,
    text: anyText,
  }),
  fc.record({ kind: fc.constant('bar' as const), percent: fc.double(), text: anyText }),
  fc.record({
    kind: fc.constant('photo' as const),
    sha256: fc.constantFrom('1', '2', 'f'),
    alt: anyText,
    caption: anyText,
  }),
  fc.record({
    kind: fc.constant('signature' as const),
    name: anyText,
    role: anyText,
    strokes: fc.array(fc.array(fc.double({ min: -1, max: 4, noNaN: true }), { maxLength: 9 }), {
      maxLength: 4,
    }),
    alt: anyText,
  }),
  fc.record({ kind: fc.constant('code' as const), content: anyText, alt: anyText, caption: anyText }),
);

const anyReport: fc.Arbitrary<Report> = fc
  .record({
    lang: fc.constant('en'),
    title: anyText,
    running: anyText,
    blocks: fc.array(anyBlock, { maxLength: 14 }),
  })
  .map((report) => ({ ...report, pageOf: (page, pages) => `${page} / ${pages}` }));

it('[PD24] any report is written, whole, in reading order, on a bounded number of pages, none of it beside a page', async () => {
  await fc.assert(
    fc.asyncProperty(anyReport, fc.constantFrom('a4', 'letter'), async (report, paper) => {
      const bytes = await makePdf(report, { paper });
      const pdf = await readPdf(bytes);
      const characters = textsOf(report).join('').length;
      expect(pdf.pages.length).toBeLessThanOrEqual(2 + report.blocks.length + characters / 50);
      expect(strayText(pdf)).toEqual([]);
      expect(together(await spoken(bytes))).toBe(together(textsOf(report, seen)));
    }),
    { numRuns: 40 },
  );
}, 120_000);
