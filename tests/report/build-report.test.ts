import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { ReportInput } from '../../src/report/report-input.ts';
import { checkWords } from '../../src/words/en/sealing.ts';
import { buildReport } from '../../src/report/build-report.ts';
import { formOf } from '../../src/report/build-form.ts';
import { mini, steel } from '../core/ahead-made.ts';
import { lawOfWalks } from '../core/law.ts';
import {
  entered,
  entryOf,
  limitAt,
  machineOf,
  mm,
  read,
  sag,
  bandOf,
  sheetOf,
  walkOf,
} from '../core/made.ts';
import { randomWalks } from '../core/random-walks.ts';
import { startingRules } from '../../src/reference/rules-starting.ts';
import { demoInput, inputOf, linesOf, reportOf, textsOf } from './report-made.ts';

const hash = 'ab'.repeat(32);
const key = 'cd'.repeat(32);

const small = (more: Partial<ReportInput> = {}): ReportInput => ({
  ...inputOf({
    machine: { ...machineOf('rubber-cored'), name: 'Digger', pin: 'PIN0001', massKg: 1700 },
    walk: walkOf({ meterHours: 1234, customer: 'Quarry Ltd', inspector: 'Jo', note: 'wet ground' }),
    sheets: {
      left: sheetOf(
        [entryOf('lug-depth', 25, [limitAt(5, { source: entered })])],
        [bandOf(10, 20, { derailAbove: 40 })],
      ),
    },
    rules: startingRules,
    readings: [
      read('left.track', 'lug-depth', mm(9), { spot: 1, tool: 'depth-gauge', note: 'torn beside it' }),
      read('left.track', 'lug-depth', mm(7), { n: 2, spot: 2, tool: 'depth-gauge' }),
      read('left.track', 'sag', sag(30)),
    ],
  }),
  ...more,
});

const sealed: ReportInput['seals'][number] = {
  hash,
  fingerprint: key,
  sealedAt: { utc: '2026-03-01T10:00:00Z', offsetMinutes: 60 },
  state: 'intact',
};

const photo: ReportInput['photos'][number] = {
  sha256: hash,
  photo: {
    v: 1,
    type: 'image/jpeg',
    bytes: 10,
    width: 4,
    height: 3,
    original: { sha256: key, bytes: 20 },
    shows: [{ place: 'left.track' as never, item: 'lug-depth' }],
    scale: 'close',
    from: 'gallery',
    takenAt: '2026-03-01 09:30',
    note: 'a long cut',
  },
};

const person = { v: 1, role: 'inspector', name: 'Jo Miller', salt: 'ef'.repeat(32) } as const;

describe('what a report says', () => {
  const said = reportOf(small());
  test.each([
    ['the machine', ['Digger', 'PIN0001', 'excavator', '1,700\u00a0kg']],
    ['the walk', ['1,234\u00a0h', 'Quarry Ltd', 'wet ground', 'This walk is not finished.']],
    ['a size with its doubt and its spots', ['7\u00a0mm, give or take', 'the worst of 2 spots', '8\u00a0mm']],
    [
      'how it was read',
      ['depth gauge; spots: 9\u00a0mm, 7\u00a0mm', 'torn beside it', 'straightedge, to the shoe'],
    ],
    ['against what', ['new 25\u00a0mm; replace limit 5\u00a0mm (entered by a person: made up for a test)']],
    ['the band of a sag', ['right from 10\u00a0mm to 20\u00a0mm; may come off above 40\u00a0mm']],
    ['how worn', ['90\u00a0% worn, give or take']],
    ['a call with its rule', ['adjust', 'The track is too loose', '(rule ']],
    ['what is open', ['Not read yet.', 'Read at 2 of 3 spots.']],
    ['whose word comes first', ['The maker’s manual']],
    ['what it was checked against', ['Limit sheet, left', 'Limit sheet, right', startingRules.name]],
    ['that nobody signed or sealed it', ['Nobody has signed this.', 'Not sealed']],
  ])('[RP1] It says %s', (_what, texts) => {
    for (const text of texts) expect(said).toContain(text);
  });

  test('[RP2] A walk of each demo machine has hours with their range, and a plan with sums', () => {
    for (const walk of [mini, steel]) {
      const { blocks } = buildReport(demoInput(walk));
      const tables = blocks.filter((block) => block.kind === 'table');
      expect(tables.map(({ caption }) => caption)).toContain('Hours left of each measured part');
      expect(tables.some(({ head }) => head.includes('Standing still'))).toBe(true);
      for (const { head, rows } of tables) for (const row of rows) expect(row.length).toBe(head.length);
      expect(blocks.flatMap(textsOf).join('\n')).toContain('An invented machine');
    }
  });

  test('[RP3] Headings come in order, and a heading is followed by something', () => {
    const { blocks } = buildReport(demoInput(steel));
    let level = 0;
    for (const [at, block] of blocks.entries()) {
      if (block.kind !== 'heading') continue;
      expect(block.level).toBeLessThanOrEqual(level + 1);
      level = block.level;
      const next = blocks[at + 1];
      expect(next === undefined || (next.kind === 'heading' && next.level <= level)).toBe(false);
    }
  });

  test('[RP4] Numbers are in the units of the person', () => {
    const inches = reportOf({
      ...small(),
      format: inputOf(small().input, { locale: 'en', depth: 'in/32', length: 'in', mass: 'lb' }).format,
    });
    expect(inches).toContain('/32\u00a0in');
    expect(inches).toContain('3,748\u00a0lb');
    // What is printed keeps the unit in which it is printed.
    expect(inches).toContain('new 25\u00a0mm');
  });

  test('[RP5] A picture is named where its item is, and tells what it shows', () => {
    const { blocks } = buildReport(small({ photos: [photo] }));
    expect(blocks.filter(({ kind }) => kind === 'photo')).toEqual([
      {
        kind: 'photo',
        sha256: hash,
        alt: 'Photo of lug depth, left track',
        caption: expect.stringContaining('close up, taken 2026-03-01 09:30, from the gallery, a long cut'),
      },
    ]);
    const rows = blocks.flatMap((block) => (block.kind === 'facts' ? block.rows : []));
    expect(rows).toContainEqual(['Photos', '1']);
  });

  test('[RP13] A size that was taken from a picture says so', () => {
    const { input } = small();
    const [first, ...rest] = input.readings;
    if (!first) throw new Error('a reading');
    const reading = { ...first.reading, from: { photo: hash } as never };
    const readings = [{ ...first, reading }, ...rest];
    expect(reportOf(small())).not.toContain('from photo');
    expect(reportOf(inputOf({ ...input, readings }))).toContain('from photo, depth gauge');
  });

  test.each([
    [{ way: 'drawn', strokes: [[0, 0, 1, 1]] } as const, 'Signature of Jo Miller, inspector'],
    [{ way: 'typed' } as const, 'Jo Miller, inspector: signed by typing the name.'],
    [
      { way: 'refused', objection: 'It was torn before.' } as const,
      'Jo Miller does not agree: It was torn before.',
    ],
  ])('[RP6] Who signed is said as they signed: %j', (how, line) => {
    expect(reportOf(small({ people: [{ ...person, ...how } as never] }))).toContain(line);
  });

  test('[RP7] A seal is shown with its fingerprints, and what its QR code holds', () => {
    const { blocks } = buildReport(small({ seals: [sealed] }));
    const code = blocks.find((block) => block.kind === 'code');
    expect(code?.content.split('\n')).toEqual([
      `sagline-seal:${hash}`,
      `key:${key}`,
      expect.stringMatching(/^verdict:\w+; meanwhile [\w ]+$/),
    ]);
    const lines = blocks.flatMap(textsOf);
    expect(lines).toContain('abab abab abab abab abab abab abab abab');
    expect(lines).toContain('Intact. Nothing was changed since it was sealed.');
    expect(lines.join()).not.toContain('Not sealed');
  });

  test.each([
    [{ ...sealed, state: 'changed' }, 'Changed after the seal'],
    [{ ...sealed, state: 'later' }, 'Intact, and changed since'],
    [{ ...sealed, state: 'alone' }, 'nothing to compare'],
  ] as const)('[RP8] A seal that holds tells how what lies beside it differs: %j', (seal, line) => {
    expect(reportOf(small({ seals: [seal] }))).toContain(line);
  });

  test.each(['altered', 'unreadable', 'too-large'] as const)(
    '[RP12] Of a seal that is %s nothing is shown but that',
    (state) => {
      const { blocks } = buildReport(small({ seals: [{ hash, state }] }));
      const said = blocks.flatMap(textsOf).join();
      expect(said).toContain(checkWords[state].line);
      expect(said).not.toContain('abab abab');
      expect(blocks.some(({ kind }) => kind === 'code')).toBe(false);
    },
  );
});

const hostile = '<script>alert(1)</script>\u202e\u0000\n=HYPERLINK("x")\ud800';
const clean = '<script>alert(1)</script>\ufffd\ufffd =HYPERLINK("x")\ufffd';

describe('whatever a report is made of', () => {
  test('[RP9] What a stranger wrote comes through as plain text on one line, and nothing more', () => {
    const base = small({ photos: [{ ...photo, photo: { ...photo.photo, note: hostile } }] });
    const { machine, walk, readings } = base.input;
    const of: ReportInput = {
      ...base,
      people: [{ ...person, name: hostile, way: 'refused', objection: hostile }],
      input: {
        ...base.input,
        machine: {
          ...machine,
          name: hostile,
          maker: hostile,
          model: hostile,
          pin: hostile,
          note: hostile,
          left: { make: hostile, size: hostile },
        },
        walk: {
          ...walk,
          customer: hostile,
          site: hostile,
          jobNumber: hostile,
          contact: hostile,
          inspector: hostile,
          note: hostile,
        },
        sheets: {
          left: sheetOf([
            { ...entryOf('lug-depth', 25, [limitAt(5, { source: { mark: 'entered', text: hostile } })]) },
          ]),
        },
        readings: readings.map((each) => ({
          ...each,
          reading: { ...each.reading, note: hostile, tool: hostile },
        })),
      },
    };
    const lines = linesOf(buildReport(of));
    // eslint-disable-next-line no-control-regex
    for (const line of lines) expect(line).not.toMatch(/[\u0000-\u001f\u202a-\u202e\ud800-\udfff]/);
    expect(lines.filter((line) => line.includes(clean)).length).toBeGreaterThan(15);
    expect(linesOf(formOf(of)).join()).toContain(clean);
  });

  test('[RP10] Any walk has a report and a form without a hole in any text, the same each time', () => {
    lawOfWalks(
      fc.property(randomWalks, ({ input }) => {
        const of = inputOf(input);
        for (const make of [buildReport, formOf]) {
          const lines = linesOf(make(of));
          for (const line of lines) expect(line).not.toMatch(/undefined|NaN|Infinity|\[object|\bnull\b/);
          expect(linesOf(make(of))).toEqual(lines);
        }
      }),
    );
  }, 60_000);

  test('[RP11] Every item that is known or open is in the report, by name', () => {
    lawOfWalks(
      fc.property(randomWalks, ({ input }) => {
        const of = inputOf(input);
        const said = reportOf(of).toLowerCase();
        for (const { state } of of.scored.outcomes)
          if (state.known || state.open.length > 0) expect(said).toContain(of.format.item(state.item.id));
      }),
    );
  }, 60_000);
});
