/** What stands there when the app did not start; apart, so that the page that says it is sent no other words. */
export const repairWords = {
  title: 'Sagline did not start',
  text: 'A part of the app is missing on this device. Your walks are kept, and repairing does not touch them.',
  button: 'Fetch the app again',
  busy: 'Fetching the app …',
  offline: 'The app cannot be fetched without a network. Try again where there is one.',
} as const;

/** What is read before the app runs, or where it does not: install screen, console, plain answers. */
export const shellWords = {
  lang: 'en',
  name: 'Sagline',
  description: 'Judge the undercarriage of a tracked machine on the phone, with no network.',
  narrowScreenshot: 'A walk round a machine on the phone',
  wideScreenshot: 'A walk round a machine on a desk screen',
  noScript: 'Sagline needs JavaScript: please switch it on for this address.',
  notFound: 'There is nothing at this address.',
  serverFault: 'Something went wrong in the server.',
  badRequest: 'The server does not understand this request.',
  serving: (address: string): string => `Sagline is at ${address}`,
  cannotListen: (address: string): string => `Sagline cannot listen at ${address}: is it in use?`,
  badPort: (text: string): string =>
    `PORT must be a whole number from 0 to 65535, not ${JSON.stringify(text)}.`,
  halfTls: 'TLS_CERT and TLS_KEY must be given together.',
  unreadable: (path: string): string => `Sagline cannot read ${path}.`,
  unwritable: (path: string): string => `Sagline cannot write to the data folder ${path}.`,
  notBuilt: (path: string): string => `There is no built app in ${path}: run npm run build.`,
} as const;
