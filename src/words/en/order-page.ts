/** The page for a parts desk. */
export const orderPage = {
  title: (machine: string): string => `Parts for ${machine}`,
  ask: 'Please quote each line, and say what differs from what is written here.',
  legend:
    'Measured: with a tool, or counted. Read: off the part, its plate or its papers. Assumed: nobody has looked. Missing: still to be looked at.',
  facts: (part: string): string => `What is known of it: ${part}`,
  fact: 'Fact',
  value: 'Value',
  how: 'How it is known',
  leftOut: (count: number): string =>
    count === 1 ? 'One line is left out.' : `${count} lines are left out.`,
  none: 'No line is left on this list.',
  noPin: 'The PIN is missing. Look at the plate before you order.',
  day: 'Walk of',
  summary: 'The list',
} as const;
