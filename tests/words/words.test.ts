import { describe, expect, test } from 'vitest';
import { items } from '../../src/core/items.ts';
import { cautions } from '../../src/core/walk.ts';
import { openKinds } from '../../src/core/reason.ts';
import { sagMethods } from '../../src/core/limits.ts';
import { plausibility } from '../../src/core/plausible.ts';
import { tools } from '../../src/reference/tools.ts';
import { makeFormatter } from '../../src/words/formatter.ts';
import { cautionWords } from '../../src/words/en/cautions.ts';
import { toolWords } from '../../src/words/en/choices.ts';
import { entry } from '../../src/words/entry.ts';
import { help as helpWords } from '../../src/words/en/help.ts';
import { findingLabel, groupPass, itemName, itemWords, placeName } from '../../src/words/en/items.ts';
import { openLine } from '../../src/words/en/open.ts';
import { questionLine } from '../../src/words/en/questions.ts';
import { itemById } from '../../src/core/items.ts';

const format = makeFormatter({ locale: 'en', depth: 'mm', length: 'mm', mass: 'kg' });
const seen = (text: string): string => text.replaceAll('\u00a0', ' ');

describe('words of items', () => {
  test.each(items.map(({ id }) => id))('[L1] %s has a name and one plain question', (id) => {
    const words = itemWords[id];
    expect(words?.name.length).toBeLessThanOrEqual(28);
    expect(words?.ask).toMatch(/[?.)]$/);
    expect(words?.ask.length).toBeLessThanOrEqual(90);
  });

  test('[L2] every finding has a label of at most three words, and no two of an item read alike', () => {
    for (const { id, ask } of items) {
      if (ask.kind !== 'finding') continue;
      const labels = ask.findings.map((finding) => itemWords[id]?.findings?.[finding]);
      expect(labels, id).not.toContain(undefined);
      expect(new Set(labels).size, id).toBe(labels.length);
      for (const label of labels) expect(label?.split(' ').length, `${id}: ${label}`).toBeLessThanOrEqual(3);
    }
  });

  test('[L3] no words are kept for items that are not asked', () => {
    const known = new Set(items.map(({ id }) => id));
    expect(Object.keys(itemWords).filter((id) => !known.has(id))).toEqual([]);
    expect(findingLabel('crack', 'cord-visible')).toBe('cord visible');
  });

  test('[L18] a name from a hostile file is shown as it is and finds nothing of ours', () => {
    for (const name of ['constructor', 'toString', '__proto__']) {
      expect(findingLabel('cord', name)).toBe(name);
      expect(findingLabel(name, 'cut')).toBe('cut');
      expect(itemName(name)).toContain(name);
      expect(placeName({ side: 'left', component: name })).toBe(`left ${name}`);
      expect(entry(helpWords, name)).toBeUndefined();
    }
  });

  test.each([
    [{ side: 'left', component: 'bottom-roller', number: 3 }, 'left bottom roller 3'],
    [{ side: 'left', component: 'track' }, 'left track'],
    [{ side: 'whole', component: 'machine' }, 'machine'],
    [{ side: 'right', component: 'of-tomorrow', number: 1 }, 'right of-tomorrow 1'],
  ] as const)('[L4] a place is named as a mechanic says it: %j', (place, name) => {
    expect(placeName(place)).toBe(name);
  });

  test.each([
    ['bottom-roller', 7, [], 'All seven bottom rollers looked at, fine'],
    ['bottom-roller', 7, [2], 'All seven bottom rollers looked at, fine except 2'],
    ['bottom-roller', 13, [2, 3, 5], 'All 13 bottom rollers looked at, fine except 2, 3 and 5'],
    ['idler', 2, [], 'Both idlers looked at, fine'],
    ['sprocket', 1, [], 'The sprocket looked at, fine'],
  ] as const)('[L5] one tap on %s × %d says: %s %s', (component, count, except, text) => {
    expect(groupPass(component, count, except)).toBe(text);
  });

  test('[L6] every tool of the reference has a name', () => {
    expect(tools.map(({ id }) => id).filter((id) => !(id in toolWords))).toEqual([]);
  });
});

describe('words of what is open', () => {
  test.each(openKinds)('[L7] %s says what is missing and how to mend it', (kind) => {
    const line = openLine({ kind, params: {} }, format);
    expect(line.match(/[.?]( |$)/g)?.length, line).toBeGreaterThanOrEqual(2);
    expect(line).not.toMatch(/undefined|NaN|\[object/);
  });

  test('[L8] a sag by another datum names the datum of the sheet, for every method', () => {
    for (const wanted of sagMethods) {
      const params = {
        method: wanted === 'string' ? 'retreat' : 'string',
        posture: 'ground',
        wanted,
        wantedPosture: 'raised',
      };
      expect(openLine({ kind: 'not-comparable', params }, format)).toMatch(
        /this sheet measures from .+, raised and blocked\./,
      );
    }
    const load = { method: 'deflection', posture: 'ground', wanted: 'deflection', wantedPosture: 'ground' };
    expect(openLine({ kind: 'not-comparable', params: load }, format)).toContain('another load');
    const dirt = { method: 'string', wanted: 'string', clean: 'working-dirt' };
    expect(openLine({ kind: 'not-comparable', params: dirt }, format)).toContain('in working dirt');
  });

  test('[L9] spots that are still to be read are counted', () => {
    expect(openLine({ kind: 'not-read', params: { have: 1, want: 3 } }, format)).toBe(
      'Read at 1 of 3 spots. Read 2 more spots.',
    );
  });
});

describe('questions about values', () => {
  const source = { mark: 'published', text: 'CV-11, CV-12' } as const;
  const pitchLimits = {
    item: 'pitch',
    unit: 'mm',
    new: { at: 171.5, source },
    limits: [{ at: 174.5, means: 'turn', hundred: true, source }],
  } as const;
  const ask = (id: string, mm: number, links?: number): string => {
    const item = itemById(id);
    const limits = id === 'pitch' ? { ...pitchLimits, limits: [...pitchLimits.limits] } : undefined;
    const params = item && plausibility(item, { mm, uMm: 0 }, limits);
    return params ? seen(questionLine(id, params, format, links)) : 'no question';
  };

  test('[L10] CV-12: four links divided by five pins are recognised', () => {
    expect(ask('pitch', 692 / 5, 5)).toBe(
      'A pitch of 138.4 mm does not fit this chain, new 171.5 mm. Did the tape span 4 links, not 5? Five pins span four links.',
    );
    expect(ask('pitch', 692 / 4, 4)).toBe('no question');
    expect(ask('pitch', 300, 4)).toContain('Count the links again');
  });

  test('[L11] a negative or impossible size is asked about in the person’s unit', () => {
    expect(ask('lug-depth', -3)).toBe('-3 mm is below nothing. Is the minus right?');
    expect(ask('lug-depth', 183)).toContain('183 mm of lug depth? Known machines have 0 mm to 90 mm.');
    expect(
      seen(questionLine('grouser', { why: 'percent', mm: 90, percent: -40, newMm: 57.5 }, format)),
    ).toContain('90 mm would be better than new (57.5 mm)');
    expect(seen(questionLine('grouser', { why: 'percent', mm: 2, percent: 260 }, format))).toContain(
      '260 % worn',
    );
  });
});

describe('cautions', () => {
  test.each(cautions)('[L12] %s has a title and two to five short lines', (caution) => {
    const { title, lines } = cautionWords[caution];
    expect(title.length).toBeGreaterThan(5);
    expect(lines.length).toBeGreaterThanOrEqual(2);
    expect(lines.length).toBeLessThanOrEqual(5);
    for (const line of lines) expect(line.length, line).toBeLessThanOrEqual(125);
  });

  test('[L13] CV-79: the relief valve is opened no more than one turn, whatever the machine', () => {
    const grease = cautionWords.grease.lines.join(' ');
    expect(grease).toContain('no more than one turn');
    expect(grease).toContain('hospital at once, even without pain');
    expect(cautionWords.raised.lines[0]).toContain('only its own hydraulics');
  });

  test('[L14] grease is not spoken of where a threaded spring tightens the track', () => {
    expect(cautionWords.spring.lines.join(' ').toLowerCase()).not.toMatch(/grease|nipple|valve/);
  });
});

describe('help', () => {
  const ids = [...items.map(({ id }) => id), ...sagMethods];

  test.each(ids)('[L15] help for %s has steps, what goes wrong, and where the figure comes from', (id) => {
    const help = entry(helpWords, id);
    expect(help?.steps.length).toBeGreaterThanOrEqual(2);
    for (const step of help?.steps ?? []) expect(step).toMatch(/[.?!]$/);
    expect(help?.wrong.length).toBeGreaterThan(20);
    expect(help?.from).toMatch(/sheet|rule set|practice/i);
  });

  test('[L16] there is no help for what is not asked', () => {
    expect(entry(helpWords, 'of-tomorrow')).toBeUndefined();
  });

  test('[L17] wherever a side is raised, blocking comes before reading', () => {
    for (const method of ['frame-to-shoe', 'frame-to-track', 'roller-gap']) {
      expect(entry(helpWords, method)?.steps[0], method).toContain('BLOCK');
    }
    expect(entry(helpWords, 'roller-gap')?.wrong).toContain('Never a hand');
  });
});
