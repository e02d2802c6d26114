/** A whole document is held in memory while it is read; ours are a hundredth of this. A backup has no such limit. */
export declare const mostDocumentBytes = 25000000;
/** Values (numbers, texts, lists, objects) in a document; a list of nothing but brackets would fill the memory. */
export declare const mostValues = 2000000;
/** The deepest record of ours is 8 levels below the 3 of the envelope; `deepestJson` bounds the value itself. */
export declare const deepestDocument = 40;
export declare const mostRecords = 100000;
/** Readings of one walk in a file; a full walk of a large machine has some hundred and fifty. */
export declare const mostReadings = 2000;
/** Versions of one key in a file; each side of a clash is scored. */
export declare const mostSides = 100;
/** What one record may take, as text; sync takes no larger ones either. */
export declare const mostRecordBytes = 65536;
/** What a record of a backup may take: what is on a phone must come back, even if it could not be sent. */
export declare const mostBackupRecordBytes = 1048576;
/** Refused records that are listed one by one. */
export declare const mostFaultsListed = 100;
/** Entries of a bundle; a backup of 8,000 pictures still fits. */
export declare const mostBundleEntries = 9000;
/** Bytes that the entries of a bundle may unpack to, together; the container that we write ends at 4 GB. */
export declare const mostBundleBytes = 4000000000;
/** How much larger than its packed form an entry may be; JSON of ours packs to a tenth. */
export declare const mostRatio = 100;
/** Bytes of one picture; the app makes them of 2048 pixels, half a megabyte each. */
export declare const mostPhotoBytes = 8000000;
