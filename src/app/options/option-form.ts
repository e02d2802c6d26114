import { mostNameLength } from '../../core/costs.ts';
import { minorDigits } from '../../core/currency.ts';
import { trackKinds } from '../../core/machine.ts';
import { optionSchema, type How, type Option } from '../../core/option.ts';
import { err, ok, type Result } from '../../core/result.ts';
import { parseMoney, type Typed } from '../../core/typed.ts';
import {
  countFields,
  fitFields,
  knownOf,
  lengthFields,
  massShown,
  massUnitOf,
  parseFitting,
  parseLife,
  parseMonths,
  parseOffset,
  parsePercent,
  parsePieces,
  parseSideMass,
  parseSize,
  shown,
  stepsShown,
  unitOf,
  type FitField,
  type OptionFaults,
  type OptionTexts,
} from './option-texts.ts';

/** Reads the fields of a form and notes those that cannot be read. */
class Reader {
  readonly faults: string[] = [];
  readonly texts: OptionTexts;

  constructor(texts: OptionTexts) {
    this.texts = texts;
  }

  text(field: string): string | undefined {
    const text = this.texts[field]?.trim() ?? '';
    return text === '' ? undefined : text;
  }

  /** Undefined where nothing was typed, and where what was typed cannot be read, which is noted. */
  number<T>(field: string, parse: (text: string) => Typed<T>): T | undefined {
    const text = this.text(field);
    if (text === undefined) return undefined;
    const read = parse(text);
    if (read.ok) return read.value;
    this.faults.push(field);
    return undefined;
  }

  /** The same of what has to be more than nothing. */
  above<T>(field: string, parse: (text: string) => Typed<T>, size: (value: T) => number): T | undefined {
    const value = this.number(field, parse);
    if (value === undefined || size(value) > 0) return value;
    this.faults.push(field);
    return undefined;
  }

  how(field: string): How {
    const how = this.texts[`${field}How`];
    return how === 'measured' || how === 'read' ? how : 'assumed';
  }
}

const itself = (value: number): number => value;

const entered = (text: string | undefined) => ({ mark: 'entered', text: text ?? '' }) as const;

function priceOf(reader: Reader, before: Option | undefined): Option['price'] {
  const currency = reader.text('currency') ?? '';
  const minor = reader.number('price', (text) => parseMoney(text, minorDigits(currency)));
  if (minor !== undefined && !/^[A-Z]{3}$/.test(currency)) reader.faults.push('currency');
  if (minor === undefined) return undefined;
  const was = before?.price;
  const isSame = was?.minor === minor && was.currency === currency;
  const source = reader.text('priceSource');
  const kept = isSame && (was?.source?.text ?? '') === (source ?? '');
  return { ...was, minor, currency, source: kept && was?.source ? was.source : entered(source) };
}

function lifeOf(reader: Reader, before: Option | undefined): Option['life'] {
  const hours = reader.above('life', parseLife, itself);
  const low = reader.above('lifeLow', parseLife, itself);
  const high = reader.above('lifeHigh', parseLife, itself);
  if (hours === undefined) {
    if (low !== undefined || high !== undefined) reader.faults.push('life');
    return undefined;
  }
  if (low !== undefined && low > hours) reader.faults.push('lifeLow');
  if (high !== undefined && high < hours) reader.faults.push('lifeHigh');
  const { lowHours: _low, highHours: _high, ...was } = before?.life ?? {};
  const source = reader.text('lifeSource');
  const isSame =
    before?.life?.hours === hours &&
    _low === low &&
    _high === high &&
    (before.life.source?.text ?? '') === (source ?? '');
  return {
    ...was,
    hours,
    ...(low !== undefined && { lowHours: low }),
    ...(high !== undefined && { highHours: high }),
    source: isSame && before?.life?.source ? before.life.source : entered(source),
  };
}

function warrantyOf(reader: Reader, before: Option | undefined): Option['warranty'] {
  const months = reader.above('months', parseMonths, itself);
  const steps = Array.from({ length: stepsShown(reader.texts) }, (_, at) => at).flatMap((at) => {
    const toHours = reader.above(`toHours${at}`, parseLife, itself);
    const percent = reader.number(`percent${at}`, parsePercent);
    if (toHours === undefined && percent === undefined) return [];
    if (toHours === undefined) reader.faults.push(`toHours${at}`);
    if (percent === undefined) reader.faults.push(`percent${at}`);
    return toHours === undefined || percent === undefined ? [] : [{ toHours, percent }];
  });
  if (months === undefined && steps.length === 0) return undefined;
  const { months: _months, ...was } = before?.warranty ?? {};
  const rising = [...steps].sort((a, b) => a.toHours - b.toHours);
  return { ...was, ...(months !== undefined && { months }), steps: rising };
}

function fitValue(reader: Reader, field: FitField, before: Option | undefined): string | number | undefined {
  const unit = unitOf(reader.texts);
  const was = knownOf(before?.fit, field);
  const text = reader.text(field);
  // A size that was not touched stays as it is, whatever unit it is shown in.
  if (was !== undefined && text === shown(field, was, unit)) return was.value;
  if (field === 'offsetMm') return reader.number(field, (typed) => parseOffset(typed, unit))?.mm;
  if (lengthFields.some((each) => each === field))
    return reader.above(
      field,
      (typed) => parseSize(typed, unit),
      ({ mm }) => mm,
    )?.mm;
  return countFields.some((each) => each === field) ? reader.above(field, parsePieces, itself) : text;
}

function fitOf(reader: Reader, before: Option | undefined): Option['fit'] {
  const known = fitFields.flatMap((field) => {
    const value = fitValue(reader, field, before);
    return value === undefined
      ? []
      : [[field, { ...knownOf(before?.fit, field), value, how: reader.how(field) }]];
  });
  const rest = Object.entries(before?.fit ?? {}).filter(([name]) => !fitFields.some((each) => each === name));
  const all = [...rest, ...known];
  return all.length === 0 ? undefined : (Object.fromEntries(all) as Option['fit']);
}

function massOf(reader: Reader, before: Option | undefined): Option['massKg'] {
  const unit = massUnitOf(reader.texts);
  const was = before?.massKg;
  const how = reader.how('mass');
  if (was && reader.text('mass') === massShown(was.value, unit)) return { ...was, how };
  const read = reader.above(
    'mass',
    (text) => parseSideMass(text, unit),
    ({ kg }) => kg,
  );
  return read && { ...was, value: read.kg, how };
}

const filled = <T extends object>(value: T): T =>
  Object.fromEntries(Object.entries(value).filter(([, each]) => each !== undefined)) as T;

/**
 * The option that the form describes, on top of what the record holds besides.
 * @param machine the key of the machine that it may be bound to
 */
export function optionOf(
  texts: OptionTexts,
  before: Option | undefined,
  machine: string | undefined,
): Result<Option, OptionFaults> {
  const reader = new Reader(texts);
  const name = reader.text('name');
  const track = trackKinds.find((each) => each === texts['track']);
  if (name === undefined || name.length > mostNameLength) reader.faults.push('name');
  if (track === undefined) reader.faults.push('track');
  const origin = reader.text('origin') as Option['origin'];
  const isBound = texts['bound'] === 'yes';
  const made = {
    ...before,
    v: 1 as const,
    name,
    machine: isBound ? (before?.machine ?? machine) : undefined,
    fitted: isBound && texts['fitted'] === 'yes' ? true : undefined,
    track,
    origin,
    make: reader.text('make'),
    price: priceOf(reader, before),
    fittingHours: reader.number('fittingHours', parseFitting),
    life: lifeOf(reader, before),
    warranty: warrantyOf(reader, before),
    massKg: massOf(reader, before),
    fit: fitOf(reader, before),
    note: reader.text('note'),
  };
  const option = filled(made) as Option;
  const faults = reader.faults.length > 0 ? reader.faults : faultsIn(option, texts);
  return faults.length > 0 ? err([...new Set(faults)]) : ok(option);
}

/** The field that shows what stands at a path of the record, where they are not called the same. */
const fieldAt: Readonly<Record<string, string>> = {
  'price.minor': 'price',
  'price.currency': 'currency',
  'price.source': 'priceSource',
  'life.hours': 'life',
  'life.lowHours': 'lifeLow',
  'life.highHours': 'lifeHigh',
  'life.source': 'lifeSource',
  'warranty.months': 'months',
};

/** What a file may not hold is refused when it is typed, and not when the file is read elsewhere. */
function faultsIn(option: Option, texts: OptionTexts): OptionFaults {
  const checked = optionSchema.safeParse(option);
  return (checked.error?.issues ?? []).map(({ path: [first, second] }) => {
    const [top, inner] = [String(first), String(second)];
    if (top === 'fit') return inner;
    if (top === 'massKg') return 'mass';
    if (top === 'warranty' && inner === 'steps') return sameStep(texts);
    return fieldAt[`${top}.${inner}`] ?? top;
  });
}

/** The later one of two steps up to the same hours. */
function sameStep(texts: OptionTexts): string {
  const hours = Array.from({ length: stepsShown(texts) }, (_, at) => {
    const read = parseLife(texts[`toHours${at}`] ?? '');
    return read.ok ? read.value : undefined;
  });
  const at = hours.findIndex((each, index) => each !== undefined && hours.indexOf(each) < index);
  return `toHours${Math.max(0, at)}`;
}
