import { kpaPerPsi } from '../core/ground-pressure.ts';
import type { MassDifference } from '../core/option-mass.ts';
import type { OptionAnswer, OptionFigures } from '../core/option-answer.ts';
import type { TrackFact } from '../core/option-tables.ts';
import type { Source } from '../core/source.ts';
import { aboutHours, aboutMoney } from './ahead-text.ts';
import type { Formatter } from './format.ts';
import { trackFactWords } from './en/option-facts.ts';
import { optionAnswer as words } from './en/options.ts';
import { needsText } from './option-fit-text.ts';
import { optionOpenText } from './option-open-text.ts';

/** One figure of an option as it is shown, with what it comes from. */
export interface OptionLine {
  readonly name: string;
  readonly text: string;
  readonly sources: readonly Source[];
  /** What is looked at first. */
  readonly isMain?: true;
}

/** What is known of the work, as far as figures are said for it. */
export interface LinesOf {
  readonly hoursAYear: number;
  readonly machineKg: number | undefined;
  /** True where tracks are on already: a change of kind then needs more than tracks. */
  readonly hasTracks: boolean;
  readonly pressure: PressureOf;
  readonly nameOf: (id: string) => string;
  readonly format: Formatter;
}

/** Mean and peak pressure of an option in kPa, or what has to be given for it. */
export type PressureOf = (answer: OptionAnswer) => {
  readonly mean: number | PressureNeeds;
  readonly peak: number | PressureNeeds;
};
export type PressureNeeds = 'theMass' | 'theWidth' | 'theContact' | 'theRoller' | 'thePitch' | 'notForBelts';

const estimate = (text: string): Source => ({ mark: 'estimate', text });

const unique = (sources: readonly Source[]): readonly Source[] => [
  ...new Map(sources.map((each) => [`${each.mark} ${each.text}`, each])).values(),
];

function pressureText(value: number | PressureNeeds, { format }: LinesOf): string {
  return typeof value === 'number'
    ? words.kpa(format.number(Math.round(value)), format.number(Math.round((value / kpaPerPsi) * 10) / 10))
    : value === 'notForBelts'
      ? words.notForBelts
      : words.needsSize(words[value]);
}

const perHourMoney = (minor: number, { currency }: OptionFigures, format: Formatter): string =>
  format.money(Math.round(minor), currency);

function ofItText(figures: OptionFigures, format: Formatter): string {
  const { tracks, fitting, rest, parts, besides } = figures.perHour;
  const said = [
    [tracks, words.ofTracks],
    [fitting, words.ofFitting],
    [rest, words.ofRest],
    [parts, words.ofParts],
    [besides, words.ofBesides],
  ] as const;
  return words.ofItParts(
    said.flatMap(([minor, say]) => (minor >= 0.5 ? [say(perHourMoney(minor, figures, format))] : [])),
  );
}

function payBackText({ payBack }: OptionFigures, { nameOf, format }: LinesOf): string {
  if (payBack.kind === 'cheapest-to-buy') return words.cheapest;
  const than = nameOf(payBack.than);
  return payBack.kind === 'never' ? words.never(than) : words.after(aboutHours(payBack.hours, format), than);
}

function costLines(figures: OptionFigures, of: LinesOf): readonly OptionLine[] {
  const { format, hoursAYear } = of;
  const { costPerHour, currency, cost, yearlyMinor, outlayMinor } = figures;
  const money = (minor: number): string => perHourMoney(minor, figures, format);
  const sources = unique([...cost.sources, ...figures.life.sources]);
  return [
    {
      name: words.costPerHour,
      text: words.range(money(costPerHour.middle), money(costPerHour.low), money(costPerHour.high)),
      sources,
      isMain: true,
    },
    { name: words.ofIt, text: ofItText(figures, format), sources: [] },
    {
      name: words.costYear,
      text:
        yearlyMinor === undefined
          ? words.notKnown
          : words.atHours(aboutMoney(yearlyMinor, currency, format), format.hours(hoursAYear)),
      sources,
    },
    {
      name: words.atOnce,
      text: words.atOnceLine(aboutMoney(outlayMinor, currency, format)),
      sources: unique(cost.sources),
      isMain: true,
    },
    { name: words.payBack, text: payBackText(figures, of), sources },
  ];
}

const byWalks = estimate(words.byWalks);

function lifeLine({ lifeHours, life }: OptionFigures, { format }: LinesOf): OptionLine {
  const about = (hours: number): string => aboutHours(hours, format);
  return {
    name: words.life,
    text: words.lifeLine(about(lifeHours.middle), about(lifeHours.low), about(lifeHours.high)),
    sources: life.from === 'walks' ? [byWalks, ...unique(life.sources)] : unique(life.sources),
    isMain: true,
  };
}

function warrantyLine({ option: { warranty } }: OptionAnswer, format: Formatter): readonly OptionLine[] {
  if (!warranty) return [];
  const months = warranty.months === undefined ? [] : [words.months(format.number(warranty.months))];
  const steps = warranty.steps.map(({ toHours, percent }) =>
    words.step(format.percent(percent), format.hours(toHours)),
  );
  const source: Source = { mark: 'entered', text: '' };
  return [{ name: words.warranty, text: [...months, ...steps].join(', '), sources: [source] }];
}

/** To ten kilograms: more is not known of what a track weighs. */
const aboutMass = (kg: number, format: Formatter): string => format.mass(Math.round(kg / 10) * 10);

function massText({ lowKg, highKg }: MassDifference, format: Formatter): string {
  if (Math.round(lowKg) === 0 && Math.round(highKg) === 0) return words.massSame;
  const isMore = lowKg + highKg > 0;
  const [least, most] = isMore ? [lowKg, highKg] : [-highKg, -lowKg];
  if (Math.round(least) === Math.round(most))
    return (isMore ? words.massMore : words.massLess)(aboutMass(most, format));
  return words.massRange(aboutMass(least, format), aboutMass(most, format), isMore);
}

function massLines(answer: OptionAnswer, of: LinesOf): readonly OptionLine[] {
  const { machineKg, hasTracks, format } = of;
  const { mass } = answer;
  const source: Source =
    mass?.from === 'own' ? { mark: 'entered', text: words.massFromTracks } : estimate('');
  const line = mass && {
    name: hasTracks ? words.mass : words.massRubber,
    text: massText(mass, format),
    sources: [source],
  };
  const haul = machineKg === undefined ? undefined : machineKg + (mass ? (mass.lowKg + mass.highKg) / 2 : 0);
  return [
    ...(line ? [line] : []),
    {
      name: words.haul,
      text: haul === undefined ? words.needsSize(words.theMass) : words.haulLine(aboutMass(haul, format)),
      sources: haul === undefined ? [] : [source],
    },
  ];
}

function pressureLines(answer: OptionAnswer, of: LinesOf): readonly OptionLine[] {
  const { mean, peak } = of.pressure(answer);
  const line = (name: string, value: number | PressureNeeds, from: string): OptionLine => ({
    name,
    text: pressureText(value, of),
    sources: typeof value === 'number' ? [estimate(from)] : [],
  });
  return [line(words.meanPressure, mean, words.pressureFrom), line(words.peakPressure, peak, words.peakFrom)];
}

const ofSurface: readonly TrackFact[] = ['spoils-paving', 'scuffs-hot-asphalt', 'marks-when-turning'];
const ofNoise: readonly TrackFact[] = ['rides-quieter', 'rides-louder'];

function factLines({ facts }: OptionAnswer): readonly OptionLine[] {
  const line = (name: string, take: (fact: TrackFact) => boolean): readonly OptionLine[] => {
    const taken = facts.filter(({ fact }) => take(fact));
    if (taken.length === 0) return [];
    return [
      {
        name,
        text: taken.map(({ fact }) => trackFactWords[fact]).join(' '),
        sources: unique(taken.map(({ source }) => source)),
      },
    ];
  };
  const said = [...ofSurface, ...ofNoise];
  return [
    ...line(words.surface, (fact) => ofSurface.includes(fact)),
    ...line(words.noise, (fact) => ofNoise.includes(fact)),
    ...line(words.more, (fact) => !said.includes(fact)),
  ];
}

/** Everything that is known of an option, in the order in which it is asked for. */
export function optionLines(answer: OptionAnswer, of: LinesOf): readonly OptionLine[] {
  const { figures, open } = answer;
  const why = open && {
    name: words.costPerHour,
    text: optionOpenText(open),
    sources: [],
    isMain: true as const,
  };
  return [
    ...(figures ? costLines(figures, of) : []),
    ...(why ? [why] : []),
    ...(figures ? [lifeLine(figures, of)] : []),
    ...(of.hasTracks
      ? [{ name: words.besides, text: needsText(answer.fit), sources: [], isMain: true as const }]
      : []),
    ...pressureLines(answer, of),
    ...massLines(answer, of),
    ...factLines(answer),
    ...warrantyLine(answer, of.format),
  ];
}
