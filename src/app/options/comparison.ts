import { useMemo } from 'preact/hooks';
import { meanPressureKpa, peakRigidKpa, type ContactLength } from '../../core/ground-pressure.ts';
import type { BuiltIn } from '../../core/assemble.ts';
import type { Machine, TrackKind } from '../../core/machine.ts';
import { currentTrack } from '../../core/option-current.ts';
import type { OptionPrices } from '../../core/option-cost.ts';
import type { CurrentTrack } from '../../core/option-match.ts';
import type { LearntLife, OptionMachine } from '../../core/option-life.ts';
import type { NamedOption } from '../../core/option-answer.ts';
import { optionsFor, type OptionsResult } from '../../core/options.ts';
import type { Use } from '../../core/use.ts';
import { startingCostsFor, startingPricesFor } from '../../reference/cost-classes.ts';
import { optionTablesWith } from '../../reference/options.ts';
import { trackKindWords } from '../../words/en/choices.ts';
import { quoted } from '../../words/quoted.ts';
import { answerText, type AnswerText } from '../../words/option-answer.ts';
import type { PressureNeeds, PressureOf } from '../../words/option-lines.ts';
import { loadBuiltIn } from '../data/built-in.ts';
import { formatter } from '../data/format.ts';
import { useLoaded } from '../data/use-loaded.ts';
import { useBooks, type Book } from '../data/books.ts';
import { usualShape } from '../data/usual-shape.ts';
import { kindOf, lengthIn, massIn, wantedOf, type ControlTexts } from './controls.ts';
import { useOptions, type KeptOption } from './option-shelf.tsx';

/** For which machine it is asked; none of one's own where the question is asked alone. */
export interface Subject {
  /** The address of the comparison. */
  readonly base: string;
  readonly back: string;
  readonly name: string | undefined;
  readonly machineKey: string | undefined;
  readonly machine: Machine | undefined;
  /** What is known of the work before anything is set here. */
  readonly use: Use;
  /** How long tracks last on this machine by its own walks. */
  readonly learnt?: LearntLife | undefined;
}

export interface Compared {
  readonly result: OptionsResult;
  readonly use: Use;
  readonly machine: OptionMachine;
  readonly current: CurrentTrack | undefined;
  readonly nameOf: (id: string) => string;
  readonly pressure: PressureOf;
}

/** The comparison in words, by how this person reads numbers. */
export const answerOf = ({ result, nameOf, use }: Compared): AnswerText =>
  answerText({ result, nameOf, groundKnown: use.ground !== undefined, format: formatter.value });

/** The machine that is asked about; one that is not bought yet has what most of its kind have. */
function machineOf({ machine }: Subject, texts: ControlTexts): OptionMachine {
  if (machine) return machine;
  const kind = kindOf(texts) ?? 'excavator';
  const massKg = massIn(texts, 'mass');
  return { kind, shape: usualShape(kind, 'rubber-cored'), ...(massKg !== undefined && { massKg }) };
}

const startingId = (track: TrackKind): string => `starting/${track}`;

/** The kinds that are worth asking about on such a machine. */
function kindsFor({ kind }: OptionMachine, current: CurrentTrack | undefined): readonly TrackKind[] {
  const belt = current?.track === 'rubber-coreless' || (kind === 'track-loader' && current === undefined);
  const usual: readonly TrackKind[] = [
    'rubber-cored',
    ...(belt ? (['rubber-coreless'] as const) : []),
    'steel',
    'steel-pads',
  ];
  return current && !usual.includes(current.track) ? [current.track, ...usual] : usual;
}

/** Options of this phone, and each kind that there is none of, by starting figures. */
function withStarting(own: readonly NamedOption[], kinds: readonly TrackKind[]): readonly NamedOption[] {
  const missing = kinds.filter((kind) => !own.some(({ option }) => option.track === kind));
  return [
    ...own,
    ...missing.map((track) => ({
      id: startingId(track),
      option: { v: 1 as const, name: trackKindWords[track].label, track },
    })),
  ];
}

function ownFor(all: readonly KeptOption[], machineKey: string | undefined): readonly NamedOption[] {
  return all.flatMap(({ key, value }) =>
    value && (value.machine === undefined || value.machine === machineKey)
      ? [{ id: key, option: value }]
      : [],
  );
}

/** Pressure on the ground by what was measured on the machine; what is missing for it is named. */
function pressureBy(
  machine: OptionMachine,
  current: CurrentTrack | undefined,
  texts: ControlTexts,
): PressureOf {
  const centresMm = lengthIn(texts, 'contact');
  const contact: ContactLength | undefined =
    centresMm === undefined ? undefined : { kind: 'centres', centresMm };
  return ({ option, mass }) => {
    const { massKg } = machine;
    const widthMm = option.fit?.widthMm?.value ?? lengthIn(texts, 'width') ?? current?.fit?.widthMm?.value;
    if (massKg === undefined) return both('theMass');
    if (widthMm === undefined) return both('theWidth');
    const loaded = massKg + (mass ? (mass.lowKg + mass.highKg) / 2 : 0);
    const mean = contact ? meanPressureKpa(loaded, widthMm, contact) : undefined;
    const rollerMm = lengthIn(texts, 'roller');
    const pitchMm = option.fit?.pitchMm?.value ?? lengthIn(texts, 'pitch') ?? current?.fit?.pitchMm?.value;
    const peak = (): number | PressureNeeds => {
      if (option.track === 'rubber-coreless') return 'notForBelts';
      if (rollerMm === undefined) return 'theRoller';
      if (pitchMm === undefined) return 'thePitch';
      const rollersPerSide = machine.shape.bottomRollers;
      return peakRigidKpa({ massKg: loaded, rollersPerSide, widthMm, rollerMm }, pitchMm) ?? 'theRoller';
    };
    return { mean: mean ?? 'theContact', peak: peak() };
  };
}

const both = (needs: PressureNeeds) => ({ mean: needs, peak: needs });

interface Books {
  readonly prices: readonly Book<'price'>[];
  readonly rates: readonly Book<'rate'>[];
}

const bookOf = <K extends 'price' | 'rate'>(
  books: readonly Book<K>[],
  key: string | undefined,
): Book<K> | undefined => books.find((each) => each.key === key);

function compare(
  subject: Subject,
  texts: ControlTexts,
  all: readonly KeptOption[],
  { life, ...books }: Books & Pick<BuiltIn, 'life'>,
): Compared {
  const machine = machineOf(subject, texts);
  const use = wantedOf(texts, subject.use);
  const own = ownFor(all, subject.machineKey);
  const current = subject.machine && currentTrack(subject.machine, own);
  const options = withStarting(own, kindsFor(machine, current));
  const starting = startingCostsFor(machine);
  const prices = bookOf(books.prices, subject.machine?.prices ?? (texts['prices'] || starting.prices));
  const rates = bookOf(books.rates, subject.machine?.rates ?? (texts['rates'] || starting.rates));
  const pricesFor = (track: TrackKind): OptionPrices => {
    const like = bookOf(books.prices, startingPricesFor(machine, track));
    return { prices: prices?.value, rates: rates?.value, starting: like?.value };
  };
  const result = optionsFor({
    machine,
    current,
    options,
    use,
    pricesFor,
    tables: optionTablesWith(life),
    learnt: subject.learnt,
  });
  const names = new Map(
    options.map(({ id, option }) => [id, isStarting(id) ? option.name : quoted(option.name)]),
  );
  return {
    result,
    use,
    machine,
    current,
    nameOf: (id) => names.get(id) ?? id,
    pressure: pressureBy(machine, current, texts),
  };
}

/** The currency that a price is most likely typed in: that of the rates which count here. */
export function useCurrency({ machine }: Subject): string {
  const rates = useBooks('rate') ?? [];
  const key = machine && (machine.rates ?? startingCostsFor(machine).rates);
  const found = rates.find((each) => (key === undefined ? each.own : each.key === key));
  return found?.value?.currency ?? 'EUR';
}

/** The comparison, worked out again at every change; undefined until this phone's records are read. */
export function useComparison(subject: Subject, texts: ControlTexts): Compared | undefined {
  const all = useOptions(subject.machineKey);
  const prices = useBooks('price');
  const rates = useBooks('rate');
  const life = useLoaded(loadBuiltIn)?.life;
  return useMemo(
    () =>
      all && prices && rates && life ? compare(subject, texts, all, { prices, rates, life }) : undefined,
    [subject, texts, all, prices, rates, life],
  );
}

/** True for what stands for a kind of track by starting figures alone. */
export const isStarting = (id: string): boolean => id.startsWith('starting/');
