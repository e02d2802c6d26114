/** Words of forms and lists that more than one screen has. */
export const forms = {
  drop: 'Drop the changes',
  dropped: 'Changes dropped',
  mend: 'Something above needs another look first; nothing is lost.',
  newer: 'Made by a newer version of the app. It is kept as it is and cannot be changed here.',
  clash: 'Two phones wrote this differently. Choose the one that counts; the other is put behind it.',
  keepThis: 'This one counts',
  removedThere: 'Removed there',
  changedElsewhere:
    'This was changed somewhere else since you began. Saving now puts your version in its place.',
  changedMeanwhile: 'It was changed elsewhere meanwhile. Look at it again before you save.',
  notSavedNewer: 'Not saved: it was made by a newer version of the app.',
  notSavedClash: 'Not saved: two versions stand side by side. Choose one first.',
  notSaved: 'Not saved. What you typed is still here; see the message at the top.',
} as const;
