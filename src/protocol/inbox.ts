/** Where the operating system hands files to the app: as a share target, and as what opens a file. */
export const inboxPath = '/inbox';

/** The cache in which the service worker lays down what was shared, until the page has asked what to do with it. */
export const inboxCache = 'sagline-inbox';

/** The name of the form's field, as the manifest gives it. */
export const inboxField = 'files';

/** Files that may lie in the inbox at a time; any page of the web can post to it, so it must not fill the phone. */
export const mostInboxFiles = 20;

/** Bytes of one shared file; no bundle that can be read is larger. */
export const mostInboxFileBytes = 420_000_000;

/** The header under which the cache keeps a file's name, with percent signs for what a header may not hold. */
export const inboxNameHeader = 'x-file-name';
