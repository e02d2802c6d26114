/** What the app is, and what it is not. */
export const about = {
  title: 'About',
  what: 'Sagline guides a walk round a tracked machine, works out percent worn, calls and a verdict on this device, and names the reason and the source of each.',
  offline: 'It needs no account and no network. What is entered stays on this device until it is exported.',
  numbers:
    'There is no wear limit that fits every machine. Starting sheets are wide and say where each number is from; enter the values of your own manual.',
  cautions: 'Cautions',
  cautionsLine:
    'They stand before every stop they matter at, to be ticked by hand. Here they are all together.',
  keyboard: 'With a keyboard or a caliper',
  keys: [
    ['Tab, Shift + Tab', 'to the next or the previous control'],
    ['Arrow keys', 'between the choices of one question'],
    [
      'Space, Enter',
      'choose; in a number, Enter goes on to the next field, and from the last one to the reading',
    ],
    ['A caliper that types', 'number, Enter: the reading is made as if it had been typed'],
  ],
  more: 'Where the numbers are from',
  schema: 'Format of our files (JSON Schema)',
  licences: 'Licences',
  own: 'Sagline is free software under the MIT licence.',
  showLicences: 'Show the licences of all parts',
  noLicences: 'The list of licences comes with the installed app and could not be opened here.',
} as const;
