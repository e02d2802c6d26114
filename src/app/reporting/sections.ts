import type { Block } from '../../report/blocks.ts';

/** The blocks under one heading, with the parts under its own headings. */
export interface Part {
  readonly title: string;
  readonly level: 2 | 3;
  readonly blocks: readonly Block[];
}

/** A report in its parts, flat and in reading order; what stands before the first heading has no title. */
export function partsOf(blocks: readonly Block[]): readonly Part[] {
  const parts: { title: string; level: 2 | 3; blocks: Block[] }[] = [{ title: '', level: 2, blocks: [] }];
  for (const block of blocks) {
    if (block.kind !== 'heading') parts.at(-1)?.blocks.push(block);
    // The first heading is the screen's own.
    else if (block.level > 1) parts.push({ title: block.text, level: block.level === 2 ? 2 : 3, blocks: [] });
  }
  return parts.filter(({ title, blocks: own }) => title !== '' || own.length > 0);
}

/** One item of the column: it has a call of its own. */
export const isEntry = ({ level, blocks }: Part): boolean =>
  level === 3 && blocks.some(({ kind }) => kind === 'call');
