import { backupCases } from './contract-backup.ts';
import { derivedCases } from './contract-derived.ts';
import { mergeCases } from './contract-merge.ts';
import { photoCases } from './contract-photos.ts';
import { shelfCases } from './contract-shelves.ts';
import { upgradeCases } from './contract-upgrade.ts';
import { writeCases } from './contract-write.ts';
import type { Case } from './lab.ts';

/** What storage promises in every engine; no test framework in it, so that it also runs inside a page. */
export const contract: readonly Case[] = [
  ...writeCases,
  ...mergeCases,
  ...shelfCases,
  ...photoCases,
  ...derivedCases,
  ...backupCases,
  ...upgradeCases,
];
