import { meterCheck, type MeterCheck } from './appraisal-meter.ts';
import { leftOf } from './appraisal-parts.ts';
import {
  askedSigns,
  percentWanted,
  valuedKindOf,
  type AppraisalSettings,
  type AskedSign,
} from './appraisal-settings.ts';
import { isLinkRemoved, warningSigns, type Sign } from './appraisal-signs.ts';
import { spendWithin, type Spend } from './appraisal-spend.ts';
import { valueLeft, type Value } from './appraisal-value.ts';
import { workTo, type Found, type Work } from './appraisal-work.ts';
import { currencyOf, type CostOpen } from './costs.ts';
import { worstOn } from './findings.ts';
import type { PartHours } from './hours-left.ts';
import type { OpenJob } from './job-plan.ts';
import { newLifeHours } from './jobs.ts';
import type { Shape, Side } from './machine.ts';
import type { Outlook } from './outlook.ts';
import type { ItemOutcome, Scored } from './score.ts';

/** Work that brings a machine to the condition that somebody states. */
export interface StatedWork extends Work {
  /** Parts that cannot be told to be so good, since their wear or hours are not known. */
  readonly unknown: readonly ItemOutcome[];
  /** Parts that are not so good even when new: their usual life is shorter. */
  readonly never: readonly PartHours[];
}

/** What a machine's undercarriage is worth to both sides of a sale; amounts in minor units of the currency. */
export interface Appraisal {
  readonly settings: AppraisalSettings;
  /** Undefined while prices or rates are missing or in two currencies; `closed` then says why. */
  readonly currency: string | undefined;
  readonly closed: CostOpen | undefined;
  /** What to deduct now: work that brings every part to where it can be sold. */
  readonly deduction: Work;
  readonly value: Value;
  readonly stated: StatedWork;
  readonly spend: Spend | { readonly open: readonly OpenJob[] };
  readonly meter: MeterCheck;
  readonly signs: readonly Sign[];
  readonly worst: Readonly<Record<Side, ItemOutcome | undefined>>;
  /** What this walk asks for and does not know, what could park the machine first. */
  readonly notVerified: readonly ItemOutcome[];
  /** Signs that nobody looked for. */
  readonly notLooked: readonly AskedSign[];
}

export interface AppraisalInput {
  readonly shape: Shape;
  readonly scored: Scored;
  readonly outlook: Outlook;
  readonly settings: AppraisalSettings;
}

const isShortOf =
  (percentFor: (item: string) => number) =>
  (outcome: ItemOutcome): boolean => {
    const left = leftOf(outcome);
    return left !== undefined && left < percentFor(outcome.state.item.id);
  };

const partOf = ({ parts }: Found, { state }: ItemOutcome): PartHours | undefined =>
  parts.find(({ history }) => history.place === state.place && history.item.id === state.item.id);

/** Measured items that the walk asks for or knows, and whose wear is not known. */
const unmeasured = ({ outcomes }: Found): readonly ItemOutcome[] =>
  outcomes.filter(({ state }) => valuedKindOf(state.item.id) !== undefined && state.wear === undefined);

function statedWork(found: Found, settings: AppraisalSettings): StatedWork {
  const { stated } = settings;
  if (stated.kind === 'percent') {
    const isShort = isShortOf((item) => percentWanted(stated, item));
    return { ...workTo(found, settings, isShort), unknown: unmeasured(found), never: [] };
  }
  const isDue = (outcome: ItemOutcome): boolean => {
    const left = partOf(found, outcome)?.left;
    return outcome.state.wear !== undefined && left !== undefined && left.middle < stated.hours;
  };
  const figureless = found.outcomes.filter(
    (outcome) => outcome.state.wear !== undefined && partOf(found, outcome)?.left === undefined,
  );
  const due = found.outcomes.filter(isDue).flatMap((outcome) => partOf(found, outcome) ?? []);
  return {
    ...workTo(found, settings, isDue),
    unknown: [...figureless, ...unmeasured(found)],
    never: due.filter((part) => (newLifeHours(part) ?? Infinity) < stated.hours),
  };
}

/** Appraises a machine from a scored walk and what lies ahead of it. */
export function appraise({ shape, scored, outlook, settings }: AppraisalInput): Appraisal {
  const { outcomes, verdict } = scored;
  const found: Found = { shape, outcomes, parts: outlook.hours.parts, costs: outlook.costs };
  const deduction = workTo(
    found,
    settings,
    isShortOf(() => settings.saleable),
  );
  const meter = meterCheck(outlook.hours);
  return {
    settings,
    currency: currencyOf(outlook.costs),
    closed: outlook.costs.open[0],
    deduction,
    value: valueLeft(found, settings, deduction),
    stated: statedWork(found, settings),
    spend: spendWithin(outlook, settings.hours),
    meter,
    signs: warningSigns(outcomes, meter, settings, outlook),
    worst: { left: worstOn(outcomes, 'left'), right: worstOn(outcomes, 'right') },
    notVerified: [...verdict.openParking, ...verdict.openOther],
    notLooked: askedSigns.filter(
      (each) =>
        settings.seen[each] === undefined && !(each === 'removed-link' && isLinkRemoved(outlook.work)),
    ),
  };
}
