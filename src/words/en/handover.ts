/** Files that come in from outside the app, and those that leave it. */
export const handover = {
  inbox: 'Files for Sagline',
  inboxEmpty: 'No file is waiting here.',
  inboxHow: 'Share a walk file or a bundle with Sagline, or open it with Sagline, and it appears here.',
  lost: 'The shared files did not arrive, or not all of them: Sagline takes 20 at a time. If the app was not open before, it is ready now: share them once more.',
  ask: 'Nothing of it is taken in before you say so.',
  takeIn: (name: string): string => `Take in ${name}`,
  leaveOut: (name: string): string => `Leave out ${name}`,
  noName: 'a file without a name',
  title: 'Hand over',
  walk: 'The whole walk',
  walkLine:
    'Readings, photos, sheets, rules and seals in one file: for another phone, for the office, or for whoever wants to check that nothing was changed.',
  unfinishedLine:
    'This walk is not finished. Another phone that takes the file goes on where this one stopped.',
  table: 'A table for a spreadsheet',
  tableLine: 'Numbers as numbers, lengths in millimetres, days as year-month-day.',
  items: 'Every item with its call',
  readings: 'Every reading as it was made',
  plan: 'The job plan with its costs',
  event: (day: string, what: string): string => `${day}: ${what}`,
  dates: 'Dates for a calendar',
  noDates: 'What lies ahead of this machine could not be worked out, so there are no dates.',
  share: (what: string): string => `Share: ${what}`,
  save: (what: string): string => `Save: ${what}`,
  working: 'Putting the file together …',
  notMade: 'The file could not be made. Nothing was changed; try it once more.',
  demo: 'This is the demo. Its machines are invented, so nothing of it leaves the phone.',
  readMe:
    'This bundle was written by Sagline, which judges the undercarriages of tracked machines.\n\nwalk.json or backup.json holds the records as open JSON; its schema is published with the app under /schema/walk-file.json.\nphotos/ holds the photos, each named by the SHA-256 of its bytes.\nreport.pdf, where it is there, is the report for people.\n\nTo check that nothing was changed, open the bundle with Sagline under Check a file, or run: sagline check FILE\n',
} as const;
