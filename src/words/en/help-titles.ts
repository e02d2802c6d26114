/** Headings of a help page; its text is data of its own. */
export const helpTitles = {
  steps: 'How to read it',
  wrong: 'What goes wrong',
  from: 'Where the figure comes from',
} as const;
