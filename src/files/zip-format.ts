/** Signatures and sizes of the container (APPNOTE.TXT of the ZIP format, version 6.3.10, sections 4.3.7 to 4.3.16). */
export const localSignature = 0x04034b50;
export const centralSignature = 0x02014b50;
export const endSignature = 0x06054b50;
export const localLength = 30;
export const centralLength = 46;
export const endLength = 22;

/** What says that the true number stands in a field for files above 4 GB, which we neither write nor read. */
export const elsewhere32 = 0xffffffff;
export const elsewhere16 = 0xffff;

export const flagEncrypted = 1;
export const methodStored = 0;
export const methodDeflated = 8;

/** Version 2.0: folders and deflate. */
export const versionNeeded = 20;

/** 1 January 1980, the first day the format knows: when a bundle was packed is nobody's business. */
export const noDate = 0x0021;
