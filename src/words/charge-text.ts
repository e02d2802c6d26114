import type { Contract } from '../core/contract.ts';
import { jobTraits } from '../core/job-kinds.ts';
import { compare } from '../core/quantity.ts';
import type { ChargeList } from '../core/rental.ts';
import type { Damage, OwnerFault } from '../core/rental-damage.ts';
import type { ChargeLine } from '../core/rental-line.ts';
import type { SpotReading } from '../core/rental-wear.ts';
import type { Source } from '../core/source.ts';
import {
  charge as words,
  basisWords,
  chargeOpenWords,
  hoursOpenWords,
  notChargedWords,
} from './en/charge.ts';
import { jobWords } from './en/ahead.ts';
import { placeName } from './en/items.ts';
import { sagStateWords } from './en/sag.ts';
import type { Formatter } from './format.ts';
import { capital } from './outcome-text.ts';
import { sizeOf } from './size-of.ts';
import { sourceText } from './source-text.ts';

/** Where a line is, as a mechanic says it. */
function placeOf({ damages: [first], used, side, number, job }: ChargeLine): string {
  const { component } = jobTraits[job];
  const at = first?.place ?? used?.place;
  return placeName({
    side,
    component: at?.split('.')[1] ?? component,
    ...(number !== undefined && { number }),
  });
}

const isUnclear = ({ standing }: ChargeLine): boolean =>
  standing.kind === 'open' && standing.why === 'wear-or-damage';

/** What a line is about. */
export function lineTitle(line: ChargeLine): string {
  const place = placeOf(line);
  if (isUnclear(line)) return capital(words.unclearOf(place));
  return capital(line.kind === 'damage' ? words.damageOf(place) : words.wearOf(place));
}

function damageText({ item, finding, count, unclear }: Damage, format: Formatter): string {
  const crack = unclear ? words.crackBefore : words.crack;
  const label = finding === 'crack' ? crack : format.finding(item, finding);
  const text = `${format.item(item)}: ${label}`;
  return count === undefined || count < 2 ? text : `${text} (${count})`;
}

function beforeText({ before, item }: Damage, format: Formatter): string {
  switch (before.kind) {
    case 'sound':
      return words.sound;
    case 'was-there':
      return words.wasThere;
    case 'got-worse':
      return words.worse(
        before.finding === undefined ? words.crackBefore : format.finding(item, before.finding),
      );
    case 'not-looked-at':
      return words.notLooked;
    case 'no-hand-out':
      return words.noWalk;
  }
}

const readingsText = (item: string, spots: readonly SpotReading[], mean: number, format: Formatter): string =>
  words.readings(spots.map(({ mm }) => sizeOf(item, mm, format)).join(', '), format.percent(mean));

/** A fault of the owner's as found, with its place. */
export function ownerText({ place, item, finding, foundAt }: OwnerFault, format: Formatter): string {
  const [side, component, number] = place.split('.');
  const where = placeName({
    side: side as OwnerFault['side'],
    component: component ?? '',
    ...(number !== undefined && { number: Number(number) }),
  });
  const isSag = item === 'sag' && Object.hasOwn(sagStateWords, finding);
  const label = isSag ? sagStateWords[finding as keyof typeof sagStateWords] : format.finding(item, finding);
  return `${capital(where)}: ${format.item(item)}, ${label} (${words.foundAt[foundAt]})`;
}

/** Why a line stands as it does, in one sentence. */
export function standingText({ standing }: ChargeLine): string {
  switch (standing.kind) {
    case 'charged':
      return standing.by ? words.agreed(standing.by.why ?? '') : '';
    case 'open':
      return chargeOpenWords[standing.why];
    case 'not-charged':
      return standing.by ? words.droppedBy(standing.by.why ?? '') : notChargedWords[standing.why];
  }
}

/** Who says that a finding is damage and not wear. */
export type ToldBy = (damage: Damage) => Source;

type Row = readonly [name: string, value: string | undefined];

function wearRows({ used, excess }: ChargeLine, format: Formatter): readonly Row[] {
  if (!used) return [];
  const { item, before, after, beforePercent, afterPercent, usedPercent, expanded } = used;
  return [
    [words.atHandOut, readingsText(item, before, beforePercent, format)],
    [words.atReturn, readingsText(item, after, afterPercent, format)],
    [words.used, words.within(format.percent(usedPercent), format.percent(expanded))],
    [words.allowed, excess && format.percent(excess.allowedPercent)],
    [words.beyond, excess && excess.excessPercent > 0 ? format.percent(excess.excessPercent) : undefined],
  ];
}

function damageRows(
  { damages, leftPercent, leftFrom }: ChargeLine,
  cutOff: number,
  format: Formatter,
  toldBy: ToldBy,
): readonly Row[] {
  const left =
    leftPercent === undefined
      ? leftFrom && words.leftFrom[leftFrom]
      : [
          `${format.percent(leftPercent)}, ${leftFrom ? words.leftFrom[leftFrom] : ''}`,
          ...(cutOff > 0 ? [words.cutOff(format.percent(cutOff))] : []),
        ].join('; ');
  const sure = damages.filter(({ unclear }) => !unclear);
  return [
    [words.atReturn, damages.map((each) => damageText(each, format)).join('; ')],
    [words.atHandOut, [...new Set(damages.map((each) => beforeText(each, format)))].join('; ')],
    [words.whyDamage, [...new Set(sure.map((each) => sourceText(toldBy(each))))].join('; ') || undefined],
    [words.left, left],
  ];
}

/** The amounts of a line, each rounded for reading. */
export function amountText(line: ChargeLine, currency: string, format: Formatter): string | undefined {
  const { partMinor, labourMinor } = line;
  if (partMinor === undefined) return undefined;
  const money = (minor: number): string => format.money(Math.round(minor), currency);
  if (labourMinor === undefined || labourMinor === 0) return money(partMinor);
  return `${money(partMinor + labourMinor)} (${words.part(money(partMinor))}, ${words.labour(money(labourMinor))})`;
}

const tenth = (value: number): number => Math.round(value * 10) / 10;

/** How the part's amount comes about: the price by what was used beyond, or by the life that was left. */
function reckoning(line: ChargeLine, cutOff: number, format: Formatter): string | undefined {
  const { price, count, partMinor, excess, used, leftPercent } = line;
  if (price?.minor === undefined || partMinor === undefined) return undefined;
  const share = (100 * partMinor) / (price.minor * count);
  const percent = words.percentOf(format.number(tenth(share)));
  if (excess && used)
    return compare(share, '<', excess.excessPercent)
      ? words.reckonedCapped(percent)
      : words.reckonedExcess(percent);
  if (leftPercent === undefined) return undefined;
  return cutOff === 0
    ? percent
    : words.reckonedLeft(percent, format.number(tenth(leftPercent)), format.number(tenth(cutOff)));
}

/** Everything that a line stands on, in the order in which it is reckoned. */
export function lineRows(
  line: ChargeLine,
  { currency, cutOffPercent = 0 }: Contract,
  format: Formatter,
  toldBy: ToldBy,
): readonly Row[] {
  const { price, count, kind, leftFrom, ownerFaults } = line;
  const one = price?.minor === undefined ? undefined : format.money(price.minor, currency);
  const source = price && sourceText(price.source);
  return [
    [words.toDo, kind === 'damage' ? capital(jobWords[line.job]) : undefined],
    ...(kind === 'damage' ? damageRows(line, cutOffPercent, format, toldBy) : wearRows(line, format)),
    [
      words.life,
      kind === 'wear' && price?.lifeHours !== undefined ? format.hours(price.lifeHours) : undefined,
    ],
    [
      leftFrom === 'repair' ? words.repairPrice : words.price,
      one && (count > 1 ? words.each(count, one) : one),
    ],
    [words.priceFrom, price?.minor === undefined ? undefined : source],
    [
      words.reckoned,
      line.standing.kind === 'not-charged' ? undefined : reckoning(line, cutOffPercent, format),
    ],
    [words.amount, line.standing.kind === 'not-charged' ? undefined : amountText(line, currency, format)],
    [words.causedBy, ownerFaults.map((each) => ownerText(each, format)).join('; ') || undefined],
  ];
}

/** What the hours of the hire are, or why they are not known. */
export const hoursText = ({ hours }: ChargeList, format: Formatter): string =>
  hours.kind === 'open'
    ? hoursOpenWords[hours.why]
    : words.hours(format.hours(hours.hours), basisWords[hours.basis]);

/** What must be known before the lines: another limit sheet, and parts of which so short a hire cannot tell wear. */
export const upFrontTexts = (
  { lines, hours, otherSheet }: ChargeList,
  format: Formatter,
): readonly string[] => [
  ...(otherSheet ? [words.otherSheet] : []),
  ...lines.flatMap((line) => {
    const { excess, used, price } = line;
    if (excess?.tooShort !== true || !used || hours.kind === 'open' || price?.lifeHours === undefined)
      return [];
    const usual = format.percent((100 * hours.hours) / price.lifeHours);
    return [words.tooShort(capital(placeOf(line)), usual, format.percent(used.expanded))];
  }),
];
