/** Backup, import and export. */
export const files = {
  title: 'Import and export',
  backup: 'Back up this phone',
  backupLine: 'Everything on this phone in one file.',
  backupDone: (name: string): string => `Backup written: ${name}`,
  lastBackup: (when: string): string => `last backup ${when}`,
  noBackup: 'No backup yet. If the phone is lost, so are the walks.',
  backupOld: (days: number): string =>
    days === 1 ? 'The last backup is a day old.' : `The last backup is ${days} days old.`,
  restore: 'Restore a backup',
  restoreLine: 'Adds what is in the file to what is here. Nothing here is overwritten.',
  importFile: 'Import a file',
  importLine: 'A walk file, limit sheet, rule set or backup.',
  choose: 'Choose a file',
  reading: 'Reading the file …',
  checking: (done: number, of: number): string => `Checked ${done} of ${of}`,
  cancelled: 'Import cancelled; nothing was changed.',
  exportWalk: 'Export the walk file',
  exportMachine: 'Export the machine with its walks',
  share: 'Share',
  tapAgain: 'The phone wants one more tap to share the file.',
  added: (count: number): string => (count === 1 ? '1 record added' : `${count} records added`),
  had: (count: number): string => (count === 1 ? '1 was already here' : `${count} were already here`),
  refused: (count: number): string => (count === 1 ? '1 was refused' : `${count} were refused`),
  nothingNew: 'Everything in this file is already here.',
  demoLeftOut: 'The demo is never exported with real data.',
  notStored: 'The file was read, but could not be saved. Nothing was changed.',
} as const;

/** Why a file cannot be taken; each leaves everything as it was. */
export const importErrors = {
  empty: 'The file is empty.',
  'not-json':
    'This is not a file of ours: its text is not JSON. Choose the file again, or have it sent again.',
  truncated: 'The file breaks off before its end. Have it sent again, or export it again.',
  'too-large': 'The file is larger than anything we write (25 MB). It was not read.',
  'too-deep': 'The file is nested deeper than anything we write. It was not read.',
  'wrong-format': 'This JSON is not a walk file, limit sheet, rule set or backup of Sagline.',
  'newer-version': 'The file is from a newer version of Sagline. Update the app, then import it again.',
  'no-records': 'The file holds no records.',
  'too-many': 'The file holds more records than we take at once.',
  unreadable: 'The phone could not read the file. Copy it to the phone first, then choose it again.',
} as const;

export const badRecord = (key: string, why: string): string =>
  `The record ${key} is not right: ${why}. Nothing was imported.`;
export const badKey = (key: string): string =>
  `The file holds a record with a key that we do not know: ${key}. Nothing was imported.`;
export const badStamp = (key: string): string =>
  `The stamp of record ${key} is not right. Nothing was imported.`;
