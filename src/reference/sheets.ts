import { dozerSheets } from './sheets-dozer.ts';
import { excavatorSheets } from './sheets-excavator.ts';
import { rubberSheets } from './sheets-rubber.ts';
import type { Sheet } from './sheet-rows.ts';

/** Every starting sheet, rubber first, then steel by mass. */
export const startingSheets: readonly Sheet[] = [...rubberSheets, ...excavatorSheets, ...dozerSheets];
