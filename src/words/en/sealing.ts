import type { SignerRole } from '../../core/person.ts';
import type { Choice } from './choices.ts';

/** A field to sign in. */
export const padWords = {
  here: 'Sign here',
  nothing: (whose: string): string => `${whose}: nothing drawn yet`,
  drawn: (whose: string): string => `${whose}: drawn`,
  clear: 'Clear',
  putBack: 'Put it back',
} as const;

export const roleWords: Readonly<Record<SignerRole, string>> = {
  inspector: 'inspector',
  renter: 'renter',
  buyer: 'buyer',
  owner: 'owner',
};

const some = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

/** The screen on which a walk is sealed. */
export const sealForm = {
  title: 'Sign and seal',
  what: 'What will be sealed',
  readings: 'Readings',
  photos: 'Photos',
  openList: 'What is open',
  hours: 'Hours on the meter',
  nothingOpen: 'Everything that this walk asks for is known.',
  sealedAsOpen: (count: number): string =>
    `${some(count, 'item is', 'items are')} sealed as open: the seal says that ${count === 1 ? 'it was' : 'they were'} not known.`,
  after: 'After the seal any change shows. A correction is a new walk that says which one it corrects.',
  again: 'This walk is sealed already. A second seal stands beside the first; neither replaces the other.',
  inspector: 'Inspector',
  name: 'Name',
  signatureOf: (role: SignerRole): string => `Signature of the ${roleWords[role]}`,
  signatureIfGiven: (role: SignerRole): string => `Signature of the ${roleWords[role]}, if they sign that`,
  byName: 'My typed name is my signature',
  byNameOther: 'The typed name is the signature',
  byNameLine: 'For whoever cannot draw on this screen.',
  else: 'Is somebody else here to sign?',
  nobody: 'nobody',
  answer: 'What do they say?',
  answers: {
    agrees: { label: 'Signs', line: 'Has seen the findings and signs.' },
    objects: { label: 'Objects', line: 'Does not agree, and says why.' },
    refuses: { label: 'Would not sign', line: 'Is here and does not sign.' },
  } satisfies Readonly<Record<string, Choice>>,
  objection: 'What do they not agree with?',
  objectionHint: 'In their own words',
  nameIfGiven: 'Name, if they give it',
  seal: 'Seal',
  sealing: 'Sealing …',
  sealed: 'Sealed. It is saved on this phone.',
  demo: 'The demo is invented and is not sealed. Walk round a machine of your own to seal a walk.',
  faults: {
    'inspector-name': 'A seal needs the name of whoever walked.',
    'inspector-sign': 'Sign in the field, or say that the typed name is your signature.',
    answer: 'Say whether they sign, object or would not sign.',
    'other-name': 'Enter their name.',
    'other-sign': 'Let them sign in the field, or say that the typed name is their signature.',
    objection: 'Write down what they do not agree with.',
  },
  noKey:
    'This browser cannot keep a key to sign with. Use the app at a secure address (https), outside a private window.',
  notSealable: 'This walk holds something that cannot be sealed. Export it and have a look at the file.',
  tooLarge: 'This walk is too large for one seal.',
  clash:
    'Two versions of a record stand side by side. Open it, choose the one that counts, then seal the walk.',
} as const;

/** What came of checking a seal, in a few words and in a sentence. */
export const checkWords = {
  intact: { label: 'Intact', line: 'Nothing was changed since it was sealed.' },
  later: {
    label: 'Intact, and changed since',
    line: 'The seal holds. What came after it is listed and is no part of it.',
  },
  changed: {
    label: 'Changed after the seal',
    line: 'The seal itself is whole. What is listed here is not as it was sealed.',
  },
  alone: {
    label: 'The seal is whole',
    line: 'The records it speaks of do not lie beside it, so there is nothing to compare.',
  },
  misplaced: {
    label: 'In another seal’s place',
    line: 'The seal holds, but its record bears the name of another seal. Somebody put it there.',
  },
  altered: {
    label: 'The seal itself was altered',
    line: 'Its signature does not fit what it says. Nothing in it can be relied on.',
  },
  'too-large': {
    label: 'No seal of this app',
    line: 'It is larger than any seal can be, and was not read.',
  },
  unreadable: {
    label: 'Sealed by a newer version',
    line: 'This version of the app cannot read what the seal says. Update the app, then check again.',
  },
} satisfies Readonly<Record<string, Choice>>;

/** A seal, wherever it is shown. */
export const sealCard = {
  sealed: 'Sealed',
  by: 'Signed with the key',
  seal: 'The seal',
  previous: 'Seal before it',
  first: 'none: the first of this machine',
  machine: 'Machine',
  verdict: 'Verdict',
  open: 'Sealed as open',
  own: 'this phone’s own key',
  known: (name: string): string => `known here: ${name}`,
  unknown: 'unknown signer',
  unknownLine:
    'The key is not known on this phone. Compare its fingerprint with the one on the paper, or ask whoever signed.',
  remember: 'Mark this signer as known',
  rememberName: 'Who signs with this key?',
  remembered: (name: string): string => `${name} is known on this phone from now on.`,
  forget: 'No longer known',
  forgotten: (name: string): string => `${name} is no longer known here.`,
  changes: 'Not as it was sealed',
  photos: 'Photos',
  people: 'Who signed',
  drawnBy: (name: string): string => `Signature of ${name}`,
  ways: { drawn: 'signed by hand', typed: 'signed by the typed name', refused: 'would not sign' },
  objects: (text: string): string => `Objects: ${text}`,
  nameless: 'gave no name',
  erased: 'erased',
  erasedLine: 'Name and signature were erased; that somebody signed stays sealed.',
  notHere: 'not in this file',
  otherPerson: 'not the name and signature that were sealed',
  erase: 'Erase this person’s name and signature',
  eraseDone: 'Name and signature erased',
  fork: 'Two seals name the same seal before them: they were made apart, on two phones or from a copy.',
} as const;

/** How a record or a photo differs from what was sealed. */
export const changeWords = {
  changed: (what: string, from: string, to: string): string => `${what}: sealed ${from}, now ${to}`,
  differs: (what: string): string => `${what}: changed`,
  missing: (what: string): string => `${what}: missing`,
  added: (what: string): string => `${what}: added after the seal`,
  photoMissing: 'A photo is missing',
  photoAltered: 'A photo was altered',
  more: (count: number): string => `and ${count} more`,
} as const;

/** Sealed walks, on the verdict and on their own screen. */
export const sealed = {
  title: 'Seals of this walk',
  seal: 'Sign and seal',
  again: 'Seal it again',
  line: (when: string, name: string): string => `Sealed ${when} by ${name}`,
  lineErased: (when: string): string => `Sealed ${when}`,
  fingerprint: (print: string): string => `Key ${print}`,
  show: 'Show the seal',
  late: 'After the seal, not part of it',
  lateLine:
    'This was added, changed or taken back by versions of its own. The seal holds what was there before.',
  lateChanged: (what: string): string => `${what}: read again`,
  lateAdded: (what: string): string => `${what}: new`,
  laterChanged: (what: string): string => `${what}: changed`,
  laterGone: (what: string): string => `${what}: removed`,
  lateGone: (what: string): string => `${what}: taken back`,
  correct: 'Correct it by a new walk',
  correctLine: 'The new walk begins with all that is here, says which walk it corrects, and is sealed anew.',
  correcting: 'A new walk with all readings of the sealed one. Change what was wrong, then seal it.',
  corrects: (when: string): string => `Corrects the walk of ${when}`,
  correctsGone: 'Corrects a walk that is not on this phone',
  correctedBy: (when: string): string => `Corrected by a walk of ${when}`,
  correctedOpen: 'A correction of it is under way',
  none: 'This walk is not sealed yet.',
  notChecked: 'The seal could not be checked: this phone’s storage did not answer.',
} as const;

/** The screen on which anybody checks a file. */
export const check = {
  title: 'Check a file',
  what: 'Choose a walk file or a bundle. It is checked here, with no network, and nothing of it is kept.',
  choose: 'Choose a file',
  another: 'Check another file',
  noSeal: 'There is no seal in this file. Anybody could have written it.',
  backup: 'This is a backup, not a walk file. Import it to check the seals in it.',
  nothingKept: 'Nothing was imported.',
  known: 'Signers known here',
  noneKnown: 'None yet. A signer becomes known when you check a file and mark its key as known.',
  own: 'This phone’s own key',
  noOwn: 'This phone has sealed nothing yet; its key is made with the first seal.',
} as const;

/** What a file is about that is no reading. */
export const recordWords: Readonly<Record<string, string>> = {
  machine: 'machine',
  limits: 'limit sheet',
  rules: 'rule set',
  walk: 'walk',
  photo: 'photo',
  work: 'work',
  price: 'price list',
  rate: 'rates',
  hold: 'hold',
  person: 'person',
  contract: 'contract',
  option: 'option',
  verdict: 'verdict',
  same: 'same machine',
  seal: 'seal',
};

/** Fields that a person knows by another word than their own. */
export const fieldWords: Readonly<Record<string, string>> = {
  mm: 'size',
  typed: 'as typed',
  unit: 'unit',
  finding: 'finding',
  count: 'count',
  share: 'share of the way round',
  lengthMm: 'length',
  depthMm: 'depth',
  centreMm: 'size at the centre',
  linkMm: 'size at the link',
  outerMm: 'outer size',
  innerMm: 'inner size',
  totalMm: 'length over the links',
  links: 'links',
  cordVisible: 'cord visible',
  method: 'how it was measured',
  posture: 'how the machine stood',
  clean: 'how clean',
  tool: 'tool',
  uMm: 'uncertainty',
  from: 'photo and marks that it was measured from',
  at: 'time',
  note: 'note',
  spot: 'spot',
  confirmed: 'confirmed',
  why: 'reason',
  kind: 'kind',
  items: 'items',
  except: 'except',
  seen: 'what was seen',
  name: 'name',
  machine: 'machine',
  purpose: 'purpose',
  meterHours: 'hour meter',
  meterTyped: 'hour meter as typed',
  startedAt: 'start',
  finishedAt: 'end',
  inspector: 'inspector',
  customer: 'customer',
  site: 'site',
  jobNumber: 'job number',
  contact: 'contact',
  sheet: 'limit sheet',
  rules: 'rule set',
  corrects: 'walk that it corrects',
  pin: 'PIN',
  value: 'everything in it',
  stamp: 'version',
  by: 'who wrote it',
};
