import type { Person } from '../core/person.ts';
import type { ObservedAt } from '../core/readings.ts';
import type { ChargeList } from '../core/rental.ts';
import type { RentalInput, RentalWalk } from '../core/rental-input.ts';
import { isToSettle, type ChargeLine } from '../core/rental-line.ts';
import { fingerprintText } from '../seal/fingerprint.ts';
import {
  amountText,
  hoursText,
  lineRows,
  lineTitle,
  ownerText,
  standingText,
  type ToldBy,
  upFrontTexts,
} from '../words/charge-text.ts';
import type { Dates } from '../words/dates.ts';
import { charge as words } from '../words/en/charge.ts';
import { groundWords } from '../words/en/choices.ts';
import { report as reportWords } from '../words/en/report.ts';
import { roleWords } from '../words/en/sealing.ts';
import type { Formatter } from '../words/format.ts';
import { sourceText } from '../words/source-text.ts';
import type { Block, Report } from './blocks.ts';
import { chargeDays } from './charge-days.ts';
import { blankSignature, page } from './page.ts';
import { facts, heading, list, section, text } from './parts.ts';
import type { ReportSeal } from './report-input.ts';
import { sealSection, signature } from './seal-section.ts';

/** Who walked, and the last seal of the walk. */
export interface ChargeWalk {
  readonly by: string | undefined;
  readonly seal: ReportSeal | undefined;
}

/** A charge list with all that stands on its page. */
export interface ChargeReportInput {
  readonly list: ChargeList;
  readonly input: RentalInput;
  readonly agreed: boolean;
  readonly invented: boolean;
  /** What was signed, where the list was worked out anew from something that was changed since. */
  readonly anew?: string | undefined;
  /** The walk names a contract that is not here. */
  readonly gone?: boolean;
  readonly handOut: ChargeWalk | undefined;
  readonly returned: ChargeWalk;
  /** Those who signed the return, the inspector too. */
  readonly people: readonly Person[];
  readonly seals: readonly ReportSeal[] | 'not-checked';
  readonly toldBy: ToldBy;
  readonly format: Formatter;
  readonly dates: Dates;
}

type Of = ChargeReportInput;

const money = ({ format, list: { currency } }: Of, minor: number): string => format.money(minor, currency);

const endOf = ({ input: { walk } }: RentalWalk): ObservedAt | undefined => walk.finishedAt ?? walk.startedAt;

function answer(of: Of): readonly Block[] {
  const { list: charged, input, agreed, format } = of;
  const toSettle = charged.lines.filter(isToSettle).length;
  const open = charged.lines.filter(({ standing }) => standing.kind === 'open').length;
  const { taxPercent, charges } = input.contract;
  const sum =
    charged.grossMinor > 0
      ? words.toPay(money(of, charged.grossMinor))
      : open > 0
        ? words.nothingYet
        : words.nothing;
  const tax =
    taxPercent === undefined
      ? words.noTax
      : words.withTax(money(of, charged.netMinor), format.percent(taxPercent), money(of, charged.taxMinor));
  return [
    text(sum, 'lead'),
    ...(charged.grossMinor > 0 ? [text(tax)] : []),
    ...(toSettle > 0 ? [text(words.toSettleCount(toSettle))] : []),
    ...(open > toSettle ? [text(words.openCount(open - toSettle))] : []),
    text(agreed ? (charges === 'damage' ? words.damageOnly : words.damageAndWear) : words.noContractOnRecord),
    ...(input.handOut ? [] : [text(words.noHandOutOnRecord, 'caution')]),
    ...(charges === 'damage-and-wear' ? [text(hoursText(charged, format))] : []),
    ...upFrontTexts(charged, format).map((line) => text(line)),
    ...(charged.otherGround === undefined
      ? []
      : [text(words.otherGround(groundWords[charged.otherGround]), 'caution')]),
  ];
}

function parties({ input, format, dates }: Of): readonly Block[] {
  const { contract, handOut, returned } = input;
  const { machine, walk } = returned.input;
  const hours = (value: number | undefined): string | undefined =>
    value === undefined ? undefined : format.hours(value);
  return section(
    words.parties,
    facts([
      [words.owner, contract.owner],
      [words.renter, contract.renter ?? walk.customer],
      [words.number, contract.number],
      [words.clause, contract.clause],
      [words.from, contract.from && dates.date(contract.from)],
      [words.to, contract.to && dates.date(contract.to)],
      [words.machine, [machine.name, machine.maker, machine.model].filter(Boolean).join(', ')],
      [words.pin, machine.pin],
      [words.meterOut, hours(handOut?.input.walk.meterHours)],
      [words.meterBack, hours(walk.meterHours)],
    ]),
  );
}

function walkText(walk: RentalWalk, { by, seal }: ChargeWalk, dates: Dates): string {
  const at = endOf(walk);
  const when = at ? dates.moment(at) : '';
  const said =
    seal?.fingerprint === undefined ? words.unsealed(when) : words.sealed(when, fingerprintText(seal.hash));
  return [said, by === undefined || by === '' ? undefined : words.walkedBy(by)].filter(Boolean).join(', ');
}

function walks(of: Of): readonly Block[] {
  const { input, handOut, returned, dates } = of;
  return section(
    words.walks,
    facts([
      [words.walkOut, input.handOut && handOut ? walkText(input.handOut, handOut, dates) : words.noWalk],
      [words.walkBack, walkText(input.returned, returned, dates)],
    ]),
  );
}

/** Pictures of the plate and the hour meter, of both walks. */
function plateAndMeter({ input: { handOut, returned } }: Of): readonly Block[] {
  const shots = ({ photos }: RentalWalk, caption: string): readonly Block[] =>
    photos.flatMap(({ sha256, photo: { shot } }) =>
      shot === 'plate' || shot === 'meter'
        ? [{ kind: 'photo', sha256, alt: caption, caption: pictureText(caption, sha256) }]
        : [],
    );
  return section(words.plateAndMeter, [
    ...(handOut ? shots(handOut, words.pairOut) : []),
    ...shots(returned, words.pairBack),
  ]);
}

const pictureText = (caption: string, sha256: string): string =>
  `${caption}. ${reportWords.photoHash(sha256.slice(0, 16))}`;

/** Both pictures follow each other and stand side by side; which of them is missing is said. */
function pair(line: ChargeLine, { input }: Of): readonly Block[] {
  const { before, after } = line.photos;
  const title = lineTitle(line);
  const card = (sha256: string | undefined, alt: string, caption: string, walk: RentalWalk | undefined) =>
    sha256 === undefined || !walk
      ? []
      : [{ kind: 'photo', sha256, alt, caption: pictureText(caption, sha256) } as const];
  if (before === undefined && after === undefined)
    return line.kind === 'damage' ? [text(words.noPair, 'small')] : [];
  return [
    ...(before === undefined ? [text(words.noPairOut, 'small')] : []),
    ...(after === undefined ? [text(words.noPairBack, 'small')] : []),
    ...card(before, words.altOut(title), words.pairOut, input.handOut),
    ...card(after, words.altBack(title), words.pairBack, input.returned),
  ];
}

function lineBlocks(line: ChargeLine, of: Of): readonly Block[] {
  const why = standingText(line);
  return [
    heading(3, lineTitle(line)),
    ...(why === '' ? [] : [text(why)]),
    ...facts(lineRows(line, of.input.contract, of.format, of.toldBy)),
    ...pair(line, of),
  ];
}

const linesWhere = (of: Of, title: string, is: (line: ChargeLine) => boolean): readonly Block[] =>
  section(
    title,
    of.list.lines.filter(is).flatMap((line) => lineBlocks(line, of)),
  );

function haulageText(of: Of): string {
  const { haulageSource } = of.input.contract;
  return words.haulageFrom(money(of, of.list.haulageMinor), haulageSource ? sourceText(haulageSource) : '');
}

function sums(of: Of): readonly Block[] {
  const { list: charged, input, format } = of;
  const { taxPercent } = input.contract;
  const lines = charged.lines.filter(({ standing }) => standing.kind === 'charged');
  if (lines.length === 0) return section(words.sums, [text(words.nothingCharged)]);
  const rows = [
    ...lines.map((line) => [lineTitle(line), amountText(line, charged.currency, format) ?? '']),
    ...(charged.haulageMinor > 0 ? [[words.haulage, haulageText(of)]] : []),
    [words.net, money(of, charged.netMinor)],
    ...(taxPercent === undefined
      ? []
      : [[words.tax(format.percent(taxPercent)), money(of, charged.taxMinor)]]),
    [words.gross, money(of, charged.grossMinor)],
  ];
  const { line, amount } = words.heads;
  return section(words.sums, [
    { kind: 'table', caption: words.sums, head: [line, amount], figures: [1], rows },
    text(words.rounded, 'small'),
  ]);
}

/** What is not charged, each in a row: a page of facts for it would bury what is. */
function notCharged({ list: { lines }, format }: Of): readonly Block[] {
  const percent = (value: number | undefined): string => (value === undefined ? '' : format.percent(value));
  const rows = lines
    .filter(({ standing }) => standing.kind === 'not-charged')
    .map((line) => [
      lineTitle(line),
      percent(line.used?.usedPercent),
      percent(line.used?.expanded),
      percent(line.excess?.allowedPercent),
      standingText(line),
    ]);
  if (rows.length === 0) return [];
  const { line, used, off, allowed, why } = words.heads;
  const head = [line, used, off, allowed, why];
  return section(words.notCharged, [
    { kind: 'table', caption: words.notCharged, head, figures: [1, 2, 3], rows },
  ]);
}

function ownerSide({ list: { ownerFaults }, format }: Of): readonly Block[] {
  const lines = ownerFaults.map((fault) => ownerText(fault, format));
  return section(
    words.ownerSide,
    lines.length === 0 ? [text(words.ownerNone)] : [text(words.ownerSideLine), ...list(lines)],
  );
}

function signed({ people }: Of): readonly Block[] {
  const hands =
    people.length === 0
      ? [text(words.nobody), blankSignature(roleWords.inspector), blankSignature(roleWords.renter)]
      : people.flatMap(signature);
  return section(words.signatures, [...hands, text(words.objectHow, 'small')]);
}

/** The page of a charge list: what is to pay, what it stands on line by line, and who signed it. */
export function buildCharge(of: ChargeReportInput): Report {
  const { machine } = of.input.returned.input;
  const at = endOf(of.input.returned);
  const title = words.pageTitle(machine.name);
  const blocks: readonly Block[] = [
    heading(1, title),
    ...(of.invented ? [text(words.invented, 'caution')] : []),
    ...(of.anew === undefined ? [] : [text(words.anew(of.anew), 'caution')]),
    ...(of.gone === true ? [text(words.contractGone, 'caution')] : []),
    ...answer(of),
    ...sums(of),
    ...parties(of),
    ...walks(of),
    ...plateAndMeter(of),
    ...linesWhere(of, words.charged, ({ standing }) => standing.kind === 'charged'),
    ...linesWhere(of, words.toSettle, isToSettle),
    ...linesWhere(of, words.missing, (line) => line.standing.kind === 'open' && !isToSettle(line)),
    ...notCharged(of),
    ...ownerSide(of),
    ...chargeDays(of.input.contract, endOf(of.input.returned), of.dates),
    ...signed(of),
    ...sealSection({ seals: of.seals, dates: of.dates, scored: of.input.returned.scored }),
    text(words.aid, 'small'),
  ];
  return page(title, blocks, words.running(machine.name, at === undefined ? '' : of.dates.day(at)));
}
