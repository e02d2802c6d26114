import { expect, it } from 'vitest';
import { reportFont } from '../../src/app/report-font.mjs';
import { font } from './make-pdf.ts';

it('[PD30] the font that is kept is the one that its script makes', async () => {
  expect(Buffer.compare(await reportFont(), font)).toBe(0);
});
