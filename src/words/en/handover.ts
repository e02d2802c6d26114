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
} as const;
