import type { Block, Report } from '../../src/report/blocks.ts';

/** What a reader has to be told of each block, in order; pictures by their words. `shown` is what is seen of a text. */
export const textsOf = ({ blocks }: Report, shown = (text: string) => text): readonly string[] =>
  blocks.flatMap((block) => {
    const alts = 'alt' in block ? [block.alt] : [];
    return [...alts, ...seenTextsOf(block).map(shown)];
  });

/** What is seen of a block. */
export function seenTextsOf(block: Block): readonly string[] {
  switch (block.kind) {
    case 'heading':
    case 'text':
    case 'bar':
      return [block.text];
    case 'list':
      return block.items;
    case 'facts':
      return block.rows.flat();
    case 'table':
      return [block.caption, ...block.head, ...block.rows.flat()];
    case 'call':
      return [block.word, block.text];
    case 'photo':
    case 'code':
      return [block.caption];
    case 'signature':
      return [block.name, block.role];
  }
}
