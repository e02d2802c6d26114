/** Set by the build: a hash over everything the build is made from. */
declare const __BUILD_ID__: string;
