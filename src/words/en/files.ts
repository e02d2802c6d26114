/** Backup, import and export. */
export const files = {
  title: 'Import and export',
  backup: 'Back up this phone',
  backupLine: 'Everything on this phone in one file.',
  backupDone: (name: string): string => `Backup written: ${name}`,
  backupWithoutPictures: (name: string): string =>
    `Backup written without photos, which are too many for one file: ${name}. Hand over walks one by one to keep theirs.`,
  lastBackup: (when: string): string => `last backup ${when}`,
  noBackup: 'No backup yet. If the phone is lost, so are the walks.',
  restoreLine: 'Adds what is in the file to what is here. Nothing here is overwritten.',
  importFile: 'Import a file',
  importLine: 'A walk file, bundle, limit sheet, rule set, price list or backup.',
  check: 'Check a file',
  cancelled: 'Import cancelled; nothing was changed.',
  share: 'Share',
  tapAgain: 'The phone wants one more tap to share the file.',
  added: (count: number): string => (count === 1 ? '1 record added' : `${count} records added`),
  had: (count: number): string => (count === 1 ? '1 was already here' : `${count} were already here`),
  refused: (count: number): string => (count === 1 ? '1 was refused' : `${count} were refused`),
  nothingNew: 'Everything in this file is already here.',
  demoLeftOut: 'The demo is never exported with real data.',
  written: (name: string): string => `File written: ${name}`,
  walkName: 'walk',
  aWalk: 'A walk',
  backupName: 'sagline-backup',
  backupCancelled: 'Backup cancelled; no file was written.',
  backupCount: (count: number): string =>
    count === 1 ? 'Backing up: 1 record' : `Backing up: ${count} records`,
  checkedShare: (share: string): string => `Reading the file: ${share}`,
  cancelledAfter: (count: number): string =>
    `Import cancelled. ${count === 1 ? '1 record was' : `${count} records were`} added already; importing the file again goes on from there.`,
  clashes: (count: number): string =>
    count === 1
      ? '1 record was written differently on another phone. Open it and choose which one counts.'
      : `${count} records were written differently on another phone. Open them and choose which one counts.`,
  leftOut: (count: number): string =>
    `${count === 1 ? '1 sheet, rule set or price list of the app stands' : `${count} sheets, rule sets or price lists of the app stand`} in the file with other values and was left out: what comes with the app stays as it is. Give it another key to import it.`,
  sealsAltered: (count: number): string =>
    `${count === 1 ? 'A seal in the file was altered and was' : `${count} seals in the file were altered and were`} not taken. What it sealed is here, but nothing proves it.`,
  picturesMissing: (count: number): string =>
    `${count === 1 ? '1 photo is' : `${count} photos are`} not in the file and not on this phone. Ask for the bundle with the photos.`,
  countsAhead:
    'The file counts its changes far ahead of any phone, which no phone of ours does. It was not taken.',
  aloneDay:
    'Work of more than a day is on this phone only. Back it up, so that it is not lost with the phone.',
  aloneDays: (days: number): string =>
    `Work of ${days} days is on this phone only. If the phone is lost, so is the work. Back it up now.`,
  notStoredPartly:
    'Only a part of the file could be saved. What is saved is right; importing it again goes on from there.',
  notStored: 'The file was read, but could not be saved. Nothing was changed.',
} as const;
