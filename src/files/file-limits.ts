/** A whole document is held in memory while it is read; ours are a hundredth of this. A backup has no such limit. */
export const mostDocumentBytes = 25_000_000;

/** Values (numbers, texts, lists, objects) in a document; a list of nothing but brackets would fill the memory. */
export const mostValues = 2_000_000;

/** The deepest record of ours is 8 levels below the 3 of the envelope; `deepestJson` bounds the value itself. */
export const deepestDocument = 40;

export const mostRecords = 100_000;

/** Readings of one walk in a file; a full walk of a large machine has some hundred and fifty. */
export const mostReadings = 2000;

/** Seals in a file, each of which is checked against all its records; a seal of a usual walk has 100 kB. */
export const mostSeals = 1000;

/** Versions of one key in a file; each side of a clash is scored. */
export const mostSides = 100;

/** What one record may take, as text; sync takes no larger ones either. */
export const mostRecordBytes = 65_536;

/** What a record of a backup may take: what is on a phone must come back, even if it could not be sent. */
export const mostBackupRecordBytes = 1_048_576;

/** Refused records that are listed one by one. */
export const mostFaultsListed = 100;

/** Entries of a bundle; a backup of 8,000 pictures still fits. */
export const mostBundleEntries = 9000;

/** Bytes that the entries of a bundle may unpack to, together; the container that we write ends at 4 GB. */
export const mostBundleBytes = 4_000_000_000;

/** How much larger than its packed form an entry may be; JSON of ours packs to a tenth. */
export const mostRatio = 100;

/** Bytes of one picture; the app makes them of 2048 pixels, half a megabyte each. */
export const mostPhotoBytes = 8_000_000;

/** Of one picture: 100 MB once decoded. The app makes 4, an original of a usual camera has 12. */
export const mostPhotoMegapixels = 25;
