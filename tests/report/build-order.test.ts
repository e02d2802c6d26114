import { describe, expect, test } from 'vitest';
import type { Machine } from '../../src/core/machine.ts';
import { partsToOrder } from '../../src/core/parts-to-order.ts';
import type { Walk } from '../../src/core/walk.ts';
import { orderPageOf } from '../../src/report/build-order.ts';
import { makeDates } from '../../src/words/dates.ts';
import { orderPage as words } from '../../src/words/en/order-page.ts';
import { ordering } from '../../src/words/en/ordering.ts';
import { report as reportWords } from '../../src/words/en/report.ts';
import { makeFormatter } from '../../src/words/formatter.ts';
import { demoMap, mini, outlookAt } from '../core/ahead-made.ts';
import { linesOf } from './report-made.ts';

const metric = { locale: 'en', depth: 'mm', length: 'mm', mass: 'kg' } as const;
const demo = demoMap();

function pageOf(
  more: Partial<Machine> = {},
  preferences: typeof metric | { length: 'in' } = metric,
): readonly string[] {
  const machine = { ...(demo.get('demo/machine/mini') as Machine), ...more };
  const { plan } = outlookAt(demo, mini);
  const input = { machine, outcomes: [], sheets: {}, work: [], tools: {}, plan, walk: mini };
  return linesOf(
    orderPageOf({
      machine,
      walk: demo.get(mini) as Walk,
      order: partsToOrder(input),
      whenText: ({ kind }) => kind,
      invented: true,
      format: makeFormatter({ ...metric, ...preferences }),
      units: { ...metric, ...preferences },
      dates: makeDates('en'),
    }),
  );
}

describe('the page for a parts desk', () => {
  test('[PO23] it names machine and PIN, every part with how many and why, and every fact with how it is known', () => {
    const page = pageOf();
    expect(page).toContain('DEMO-0001');
    expect(page).toContain('Rubber track, right');
    expect(page.join('\n')).toMatch(/To renew the track: lug depth wears out/);
    expect(page).toContain('300 × 52.5 × 84');
    expect(page).toContain('read off the moulded size');
    expect(page).toContain('missing');
    expect(page).toContain(reportWords.invented);
  });

  test('[PO24] a missing PIN is asked for, part number and match stand in the list', () => {
    const line = 'right.renew-track.rubber-track';
    const { pin: _pin, ...machine } = demo.get('demo/machine/mini') as Machine;
    const without = pageOf({
      ...machine,
      pin: undefined,
      ordered: [{ line, partNumber: 'RT 84', match: true }],
    });
    expect(without).toContain(words.noPin);
    expect(without).toContain(`RT 84. ${ordering.match}`);
    expect(pageOf()).not.toContain(words.noPin);
  });

  test('[PO25] what is left out is counted, and nothing else of it is said', () => {
    const line = 'right.renew-track.rubber-track';
    const page = pageOf({ ordered: [{ line, walk: mini, out: true }] });
    expect(page).toContain(words.leftOut(1));
    expect(page).not.toContain('Rubber track, right');
    expect(page).toContain('Rubber track, left');
  });

  test('[PO29] it says what order it is for, and neither whose machine it is nor what was noted of it', () => {
    const page = pageOf({ note: 'owes us two invoices' }).join('\n');
    expect(page).toContain('DEMO-1');
    for (const told of ['owes us two invoices', 'Example Earthworks', 'A. Sample'])
      expect(page).not.toContain(told);
  });

  test('[PO26] lengths are in millimetres for every reader, with inches beside them for one who reads inches', () => {
    expect(pageOf()).toContain('52.5\u00a0mm');
    expect(pageOf({}, { length: 'in' })).toContain('52.5\u00a0mm (2.067\u00a0in)');
  });
});
