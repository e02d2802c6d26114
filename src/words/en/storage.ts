/** How this phone keeps what was entered: what is wrong and how to mend it. */
export interface StorageWords {
  readonly title: string;
  readonly line: string;
  readonly button?: string;
}

export const storageStates = {
  opening: { title: 'Opening …', line: 'Your walks are being opened.' },
  slow: {
    title: 'Opening takes long',
    line: 'The phone does not answer yet. We keep trying. If it goes on, close other tabs of Sagline or restart the browser; nothing is lost by that.',
    button: 'Try again',
  },
  blocked: {
    title: 'Another tab stands in the way',
    line: 'Sagline is open in another tab with an older version. Close that tab, and this one goes on.',
    button: 'Try again',
  },
  superseded: {
    title: 'Updated in another tab',
    line: 'Another tab now runs a newer version. What was saved is safe; load this page again to go on.',
    button: 'Load again',
  },
  newer: {
    title: 'The data are from a newer version',
    line: 'A newer version of Sagline wrote them and this one cannot open them. Go online and update; nothing is lost.',
    button: 'Look for the update',
  },
  denied: {
    title: 'This phone cannot save',
    line: 'The browser refuses to keep data, as in a private window or with cookies blocked. Open Sagline in an ordinary window, or allow data for this site. Nothing entered here would last.',
    button: 'Try again',
  },
  full: {
    title: 'The phone is full',
    line: 'What you last entered is still on the screen but not saved. Free some space (photos, apps you do not need), then try again.',
    button: 'Try again',
  },
  lost: {
    title: 'The connection to the storage was lost',
    line: 'It is being opened again. What you last entered stays on the screen until it is saved.',
    button: 'Try again',
  },
  corrupt: {
    title: 'The stored data cannot be read',
    line: 'Restart the browser first. If that does not help, restore your last backup. Export what is still shown here before you do.',
    button: 'Export what is here',
  },
  unknown: {
    title: 'Saving failed',
    line: 'What you last entered is still on the screen. Try again; if it fails again, export it as a file.',
    button: 'Try again',
  },
  insecure: {
    title: 'This address is not secure',
    line: 'Sagline needs an https address to keep your walks and to work with no network. Open it under https.',
  },
  framed: {
    title: 'Open Sagline by itself',
    line: 'Inside another page the browser keeps data apart. Open Sagline in a tab of its own.',
  },
} as const satisfies Readonly<Record<string, StorageWords>>;

export type StorageState = keyof typeof storageStates;

export const persistence = {
  kept: 'The browser has promised to keep the data.',
  notPromised: 'The browser may clear data when the phone is full. Export a backup now and then.',
  iosTab:
    'In a Safari tab, data can vanish after a week without use. Add Sagline to the home screen before the first walk.',
} as const;
