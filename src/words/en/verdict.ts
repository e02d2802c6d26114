/** Parts of the verdict that all purposes share. */
export const verdict = {
  title: 'Verdict',
  so: 'So far',
  needs: (call: string): string => `Call: ${call}`,
  meanwhile: (meanwhile: string): string => `Meanwhile: ${meanwhile}`,
  theReason: 'The one reason',
  reasons: 'All reasons',
  drives: (item: string, place: string): string => `Driven by ${item}, ${place}`,
  notSeen: 'Not seen',
  openTitle: 'Open',
  openLine: 'Not known yet. An open item never makes the call milder.',
  runExcept: (items: string): string => `run; not seen: ${items}`,
  shortLeaves: (items: string): string => `A short walk does not look at: ${items}.`,
  nothingOpen: 'Everything that this walk asks for is known.',
  flip: 'What could change it',
  flipBy: (item: string, place: string, by: string): string =>
    `Read ${item} again, ${place}: ${by} would change the call.`,
  noFlip: 'No single reading taken again would change the call.',
  rule: (id: string): string => `rule ${id}`,
  source: (text: string): string => `source: ${text}`,
  leansOn: 'Leans on estimates',
  worn: 'Worn',
  everyItem: 'Every other item',
  passed: (count: number): string => `${count} looked at and fine`,
  readAgain: 'Read again',
  fromPhoto: 'From photo: see the marks',
  goBack: 'To the walk',
  report: 'Report',
  chargeList: 'Charge list',
  handOver: 'Hand over: file, table, calendar',
  order: 'Parts to order',
  noReadings: 'Nothing has been read yet. Go round the machine first.',
  aid: 'The numbers are an aid; the maker’s manual, the site’s rules and a qualified person’s judgement come first.',
  aheadWorking: 'Working out hours left and the plan …',
  aheadFailed: 'Hours left and the plan could not be worked out: this phone’s storage did not answer.',
  recheckAt: (hours: string): string => `Look again by ${hours} on the meter.`,
} as const;

/** First screen of a jobsite call. */
export const jobsiteVerdict = {
  mayMove: 'May it move?',
  mayWork: 'May it work?',
  untilWhen: 'Until when?',
  moveYes: 'Yes',
  moveOnly: 'Only straight, level and slow, to the loader',
  moveNo: 'No. Leave it where it stands.',
  workYes: 'Yes',
  workLight: 'Light work only; look at it every day',
  workNo: 'No',
  workNotKnown: 'Not settled: see what is open',
  untilNext: 'Until the next walk',
  untilDone: (call: string): string => `Until this is done: ${call}`,
  untilDay: 'Look at it every day',
  stopNow: 'Stop now',
  bring: 'What to bring',
  bringNothing: 'Nothing but the tools of this walk.',
  bringParts: 'Parts',
  bringTools: 'Tools',
  bringBlocks: 'Blocks or rated stands, and chocks',
  bringSecond: 'A second person',
  bringGrease: 'Grease gun, eye protection',
  notSeen: 'What was not seen',
} as const;

/** First screen of a hand-out; what it shares with a return stands there. */
export const handOutVerdict = {
  fit: 'Is it fit to go out?',
  proof: 'Is the proof complete?',
  goesWith: 'Damage that it goes out with',
  goesSound: 'None found.',
  goesSoundSoFar: 'None found in what was looked at.',
} as const;

/** How something that is damaged at a return was before the hire. */
export const beforeWords = {
  sound: 'was sound at hand-out',
  'was-there': 'was there at hand-out already',
  'got-worse': 'was there at hand-out, less bad',
  'not-looked-at': 'was not looked at at hand-out',
  'no-hand-out': 'nobody looked before the hire',
} as const;

/** First screen of a rental return. */
export const rentalVerdict = {
  outAgain: 'Can it go out again today?',
  outYes: 'Yes',
  outAfter: (call: string): string => `After this is done: ${call}`,
  outNo: 'No',
  outNotKnown: 'Not settled: see what is open',
  chargeable: 'Is anything chargeable?',
  chargeNone: 'No damage found. Wear is charged only where the contract says so.',
  chargeDamage: (count: number): string =>
    count === 1 ? '1 place looks like damage' : `${count} places look like damage`,
  chargeNew: (count: number): string =>
    count === 1
      ? '1 place is damaged that was sound at hand-out'
      : `${count} places are damaged that were sound at hand-out`,
  chargeOld:
    'Nothing that can be proved: what is damaged was damaged at hand-out already, or nobody looked at it then.',
  chargeSomeOpen: 'Not all of it was seen: see what is open.',
  proof: 'Is the proof complete, before the renter leaves?',
  proofYes: 'Yes: every finding has its reading.',
  proofNo: (missing: readonly string[]): string => `No: ${missing.join('; ')}`,
  proofMissing: (count: number): string =>
    count === 1 ? '1 finding lacks its proof' : `${count} findings lack their proof`,
  proofPhotos: (count: number): string =>
    count === 1 ? '1 photo of the sequence is missing' : `${count} photos of the sequence are missing`,
  proofMarks: (count: number): string =>
    count === 1 ? '1 size does not say where its mark is' : `${count} sizes do not say where their mark is`,
  handOut: (day: string): string => `Compared with the hand-out walk of ${day}.`,
  noHandOut: 'No hand-out walk on this phone. Only what is damage in itself can be claimed.',
} as const;

/** First screen of an appraisal. */
export const appraisalVerdict = {
  deduct: 'What to deduct now',
  deductNothing: 'No part needs doing now.',
  sums: 'Sums: see Appraisal.',
  page: 'Appraisal: sums, both sides',
  worstLeft: 'Worst part, left',
  worstRight: 'Worst part, right',
  worstNone: 'nothing read on this side',
  signs: 'Warning signs',
  signsNone: 'None noted.',
  notVerified: 'Not verified',
  allVerified: 'Everything this walk asks for was verified.',
} as const;
