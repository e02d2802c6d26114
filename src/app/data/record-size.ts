/** What one version of a record may take as text; a larger one could be neither exported nor sent. */
const mostBytes = 65_536;

/** The envelope around a value: key, stamp and what its author had seen. */
const envelopeBytes = 1024;

export const isTooLarge = (value: object): boolean =>
  new TextEncoder().encode(JSON.stringify(value)).length + envelopeBytes > mostBytes;
