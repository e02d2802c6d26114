import { report as words } from '../words/en/report.ts';
import { shellWords } from '../words/shell.ts';
import type { Block, Report } from './blocks.ts';
import { plain, plainBlock } from './plain.ts';

/** A page of blocks, every text in plain characters; its running head is its title where nothing else is given. */
export const page = (title: string, blocks: readonly Block[], running: string = title): Report => ({
  lang: shellWords.lang,
  title: plain(title),
  running: plain(running),
  pageOf: words.pageOf,
  blocks: blocks.map(plainBlock),
});

/** A line to sign on by hand, under the name where it is known. */
export const blankSignature = (role: string, name = ''): Block => ({
  kind: 'signature',
  name,
  role,
  strokes: [],
  alt: words.noSignature(role),
});
