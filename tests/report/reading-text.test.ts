import { expect, test } from 'vitest';
import { notesText } from '../../src/report/reading-text.ts';
import { report } from '../../src/words/en/report.ts';
import { mm, read } from '../core/made.ts';

test('[RW15] a report says where the mark of a reading is, before what was noted', () => {
  const mark = 'yellow paint, third lug';
  expect(notesText([read('left.track', 'lug-depth', mm(21), { mark, note: 'muddy' })])).toBe(
    `${report.mark(mark)}, muddy`,
  );
  expect(notesText([read('left.track', 'lug-depth', mm(21))])).toBe('');
});
