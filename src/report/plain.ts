import { unreachable } from '../core/result.ts';
import type { Block } from './blocks.ts';

// Controls, marks that turn the direction of writing, and halves of characters.
const unseen = /[\p{Cc}\p{Cs}\p{Co}\u202a-\u202e\u2066-\u2069\ufeff]/gu;

/** A text as one line of plain characters: what would steer a terminal, a printer or the order of letters is shown. */
export const plain = (text: string): string =>
  text
    .replace(/[\t\n\v\f\r ]+/g, ' ')
    .replace(unseen, '\ufffd')
    .trim();

/** A block whose every text is plain, whoever wrote it. */
export function plainBlock(block: Block): Block {
  switch (block.kind) {
    case 'heading':
    case 'text':
    case 'bar':
      return { ...block, text: plain(block.text) };
    case 'list':
      return { ...block, items: block.items.map(plain) };
    case 'facts':
      return { ...block, rows: block.rows.map(([name, value]) => [plain(name), plain(value)] as const) };
    case 'table':
      return {
        ...block,
        caption: plain(block.caption),
        head: block.head.map(plain),
        rows: block.rows.map((row) => row.map(plain)),
      };
    case 'call':
      return { ...block, word: plain(block.word), text: plain(block.text) };
    case 'photo':
    case 'code':
      return { ...block, alt: plain(block.alt), caption: plain(block.caption) };
    case 'signature':
      return { ...block, name: plain(block.name), role: plain(block.role), alt: plain(block.alt) };
    default:
      return unreachable(block);
  }
}
