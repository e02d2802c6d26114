/** What the entries of a bundle are called. */
export const walkEntry = 'walk.json';
export const backupEntry = 'backup.json';
export const reportEntry = 'report.pdf';
export const readMeEntry = 'read-me.txt';

const photoPattern = /^photos\/([0-9a-f]{64})(?:\.jpg)?$/;

/** The name of a picture: its SHA-256, with an ending that every desk machine opens. */
export const photoEntry = (sha256: string): string => `photos/${sha256}.jpg`;

/** The SHA-256 that an entry is named by; undefined where it is no picture. */
export const photoOf = (name: string): string | undefined => photoPattern.exec(name)?.[1];

const others: ReadonlySet<string> = new Set([walkEntry, backupEntry, reportEntry, readMeEntry, 'photos/']);

/** Whether a bundle of ours may hold an entry of this name; no other is even looked at. */
export const isOurs = (name: string): boolean => others.has(name) || photoPattern.test(name);
