import type { Block } from './blocks.ts';

type Fact = readonly [name: string, value: string | undefined];

export const heading = (level: 1 | 2 | 3, text: string): Block => ({ kind: 'heading', level, text });

export const text = (line: string, role?: 'lead' | 'caution' | 'small'): Block => ({
  kind: 'text',
  text: line,
  ...(role && { role }),
});

/** A list, or nothing where there is nothing to list. */
export const list = (items: readonly string[]): readonly Block[] =>
  items.length === 0 ? [] : [{ kind: 'list', items }];

/** Names with their values; what is not known is left out. */
export function facts(rows: readonly Fact[]): readonly Block[] {
  const known = rows.flatMap(([name, value]) =>
    value === undefined || value === '' ? [] : [[name, value] as const],
  );
  return known.length === 0 ? [] : [{ kind: 'facts', rows: known }];
}

/** Blocks under a heading, or nothing where there are none. */
export const section = (title: string, blocks: readonly Block[], level: 2 | 3 = 2): readonly Block[] =>
  blocks.length === 0 ? [] : [heading(level, title), ...blocks];

export const unique = (lines: readonly string[]): readonly string[] => [...new Set(lines)];
