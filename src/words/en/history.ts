import type { Doubt } from '../../core/hours-left.ts';
import type { HistoryFault } from '../../core/history.ts';

/** What is so, and what to do about it. */
export interface WhatAndMend {
  readonly what: string;
  readonly mend: string;
}

/** Why a part has no hours left. */
export const historyFaultWords: Readonly<Record<HistoryFault, WhatAndMend>> = {
  'no-hours': {
    what: 'No walk has the hours of the meter.',
    mend: 'Enter the meter reading before the start of a walk.',
  },
  'meter-back': {
    what: 'The meter stood higher on an earlier walk.',
    mend: 'If the meter was changed, enter that as work with the last reading of the old one; else correct the reading.',
  },
  'old-meter-unknown': {
    what: 'The meter was changed, and what the old one showed last is not on record.',
    mend: 'Enter the old meter’s last reading with that work.',
  },
  'no-reading': {
    what: 'Nothing was measured since it was fitted or turned.',
    mend: 'Measure it on the next walk.',
  },
  'work-hours': {
    what: 'Work on it is noted at hours that the machine cannot have had on that day.',
    mend: 'Put the hours or the day of that work right, or the hours at which the machine says its tracks were fitted.',
  },
  'no-life-figure': {
    what: 'There is no life figure for such a part.',
    mend: 'Hours left follow from the second walk of a machine whose parts have one.',
  },
  improved: {
    what: 'It measured better than before by more than reading error explains.',
    mend: 'Was it changed or turned? Enter the work. Else measure again at the marked place, and see that the sheet is the right one.',
  },
  'life-zero': {
    what: 'Its life figure is not a range above zero.',
    mend: 'Put the figure right.',
  },
};

/** What looks wrong although it was reckoned with. */
export const doubtWords: Readonly<Record<Doubt, WhatAndMend>> = {
  'too-fast': {
    what: 'It wore far faster than its earlier readings and the life figure let expect.',
    mend: 'Wrong place or sheet, a changed meter, or hard work since? Measure again.',
  },
  'too-slow': {
    what: 'It wore far less than its earlier readings and the life figure let expect.',
    mend: 'Was it changed or turned, or measured at another place? Enter the work or measure again.',
  },
  'meter-fast': {
    what: 'Between two walks the meter ran more hours than the days have.',
    mend: 'Check the meter readings and the dates of the walks.',
  },
  'fitted-unknown': {
    what: 'When it was fitted is not known, so the first reading says nothing of the pace.',
    mend: 'Enter when it was fitted, and the range gets narrower.',
  },
  'one-reading': {
    what: 'There is one reading only: the pace is the book’s.',
    mend: 'A second walk shows this part’s own.',
  },
};

/** The wear history of a machine. */
export const history = {
  title: 'Wear history',
  part: 'Part',
  nothing: 'No finished walk has measured a part of this machine yet.',
  nothingRead: 'Nothing has been measured of it yet.',
  lastRead: (percent: string, hours: string): string => `Read last at ${hours}: ${percent} worn.`,
  left: (text: string): string => `Hours left: ${text}.`,
  asTable: 'Show as a table',
  asPlot: 'Show as a plot',
  legend:
    'Circles are readings with their error. The hatched band is where eight of ten such parts go from here, the dashed line its middle: an estimate. The thick line is the limit.',
  limit: 'limit, 100 %',
  marks: { fitted: 'fitted', stepped: 'work done' },
  axisHours: 'hours on the meter',
  axisPercent: '% worn',
  enterWork: 'Enter the work',
  readings: (part: string): string => `Read: ${part}`,
  expected: 'Expected from here (estimates)',
  date: 'Walk',
  meter: 'Meter, h',
  size: 'Size',
  worn: 'Worn, %',
  low: '1 in 10 below, %',
  middle: 'Middle, %',
  high: '1 in 10 above, %',
} as const;
