import { leftOf } from './appraisal-parts.ts';
import { askedSigns, type AppraisalSettings, type AskedSign } from './appraisal-settings.ts';
import type { MeterCheck } from './appraisal-meter.ts';
import { signsOf } from './findings.ts';
import { sides, type Side } from './machine.ts';
import type { Outlook } from './outlook.ts';
import type { ItemOutcome } from './score.ts';
import type { Work } from './walk.ts';

/** Something that tells a buyer of more than itself, from readings of this walk. */
export type Sign =
  | { readonly kind: 'found'; readonly outcome: ItemOutcome }
  /** A person looked and saw it. */
  | { readonly kind: AskedSign }
  | { readonly kind: 'meter'; readonly says: 'low' | 'high' | 'changed' | 'back' | 'too-fast' }
  /** Percent left of what is newer and of what is older. */
  | {
      readonly kind: 'shoes-on-old-chain' | 'tracks-on-worn-sprocket';
      readonly side: Side;
      readonly newer: number;
      readonly older: number | undefined;
    }
  /** Whole years since each side's track was fitted. */
  | { readonly kind: 'ages-differ'; readonly left: number; readonly right: number }
  | { readonly kind: 'adjuster-pumped'; readonly side: Side; readonly outcome: ItemOutcome }
  | {
      readonly kind: 'sides-differ';
      readonly item: string;
      readonly left: number;
      readonly right: number;
    };

// Where newer and older parts and two sides are told apart: common practice, no source.
const newLeft = 75;
const oldLeft = 40;
const apart = 25;

const at = (outcomes: readonly ItemOutcome[], side: Side, item: string): ItemOutcome | undefined =>
  outcomes.find(({ state }) => state.side === side && state.item.id === item && state.known);

const leftAt = (outcomes: readonly ItemOutcome[], side: Side, item: string): number | undefined => {
  const found = at(outcomes, side, item);
  return found && leftOf(found);
};

const isWorn = (outcome: ItemOutcome | undefined): boolean =>
  ['worn', 'hooked', 'broken'].includes(outcome?.state.finding ?? '');

function newerOnOlder(outcomes: readonly ItemOutcome[], side: Side): readonly Sign[] {
  const left = (item: string): number | undefined => leftAt(outcomes, side, item);
  const chain = ['link-height', 'pitch', 'bushing-od'].flatMap((item) => left(item) ?? []);
  const older = Math.min(...chain);
  const [shoes, lugs] = [left('grouser'), left('lug-depth')];
  const signs: Sign[] = [];
  if (shoes !== undefined && shoes >= newLeft && older <= oldLeft)
    signs.push({ kind: 'shoes-on-old-chain', side, newer: shoes, older });
  if (lugs !== undefined && lugs >= newLeft && isWorn(at(outcomes, side, 'sprocket-teeth')))
    signs.push({ kind: 'tracks-on-worn-sprocket', side, newer: lugs, older: undefined });
  return signs;
}

/** Sag that was brought right by the last of the adjuster says nothing of the chain: it is stretched. */
function pumpedOut(outcomes: readonly ItemOutcome[], side: Side): readonly Sign[] {
  const outcome = at(outcomes, side, 'adjuster-travel');
  const travel = outcome?.state.finding;
  const sag = at(outcomes, side, 'sag')?.state.sag?.state;
  const eye = at(outcomes, side, 'sag-by-eye')?.state.finding;
  const isRight = sag === 'right' || sag === 'tight' || (sag === undefined && eye === 'right');
  return outcome && isRight && (travel === 'little' || travel === 'end')
    ? [{ kind: 'adjuster-pumped', side, outcome }]
    : [];
}

/** The same measure far apart on both sides, by more than the readings are off. */
function sidesDiffer(outcomes: readonly ItemOutcome[]): readonly Sign[] {
  const items = ['lug-depth', 'link-height', 'pitch', 'bushing-od', 'grouser', 'pad-height'];
  return items.flatMap((item): readonly Sign[] => {
    const [left, right] = [at(outcomes, 'left', item), at(outcomes, 'right', item)];
    const [a, b] = [left && leftOf(left), right && leftOf(right)];
    if (a === undefined || b === undefined) return [];
    const off = 2 * Math.hypot(left?.state.wear?.u ?? 0, right?.state.wear?.u ?? 0);
    return Math.abs(a - b) > Math.max(apart, off) ? [{ kind: 'sides-differ', item, left: a, right: b }] : [];
  });
}

function meterSigns({ says, isChanged, fault, isTooFast }: MeterCheck): readonly Sign[] {
  const signs: Sign[] = [];
  if (says === 'low' || says === 'high') signs.push({ kind: 'meter', says });
  if (fault === 'meter-back') signs.push({ kind: 'meter', says: 'back' });
  if (isTooFast) signs.push({ kind: 'meter', says: 'too-fast' });
  if (isChanged) signs.push({ kind: 'meter', says: 'changed' });
  return signs;
}

/** Years of age of the tracks, where those of both sides are known and differ. */
function agesDiffer(rubber: Outlook['rubber']): readonly Sign[] {
  const [left, right] = [rubber?.left, rubber?.right].map((risk) =>
    risk?.yearsLeft === undefined ? undefined : risk.years - risk.yearsLeft,
  );
  return left === undefined || right === undefined || left === right
    ? []
    : [{ kind: 'ages-differ', left, right }];
}

const isSameSide = (a: Work['side'], b: Work['side']): boolean => a === b || a === 'whole' || b === 'whole';

/** Whether a link is on record as taken out of a chain that has not been renewed since. */
export const isLinkRemoved = (work: readonly Work[]): boolean =>
  work.some(
    (removed) =>
      removed.kind === 'link-removed' &&
      !work.some(
        ({ kind, component, side, meterHours = 0 }) =>
          kind === 'fitted' &&
          component === 'track' &&
          isSameSide(side, removed.side) &&
          meterHours > (removed.meterHours ?? 0),
      ),
  );

/** All warning signs of a walk: what was found, what readings tell together, and what somebody looked for and saw. */
export function warningSigns(
  outcomes: readonly ItemOutcome[],
  meter: MeterCheck,
  { seen }: Pick<AppraisalSettings, 'seen'>,
  { rubber, work }: Pick<Outlook, 'rubber' | 'work'>,
): readonly Sign[] {
  const pumped = sides.flatMap((side) => pumpedOut(outcomes, side));
  const told = new Set(pumped.map((sign) => (sign.kind === 'adjuster-pumped' ? sign.outcome : undefined)));
  const found = signsOf(outcomes).filter((outcome) => !told.has(outcome));
  return [
    ...meterSigns(meter),
    ...sides.flatMap((side) => newerOnOlder(outcomes, side)),
    ...pumped,
    ...sidesDiffer(outcomes),
    ...agesDiffer(rubber),
    ...found.map((outcome): Sign => ({ kind: 'found', outcome })),
    ...askedSigns
      .filter((each) => seen[each] === 'yes' || (each === 'removed-link' && isLinkRemoved(work)))
      .map((kind): Sign => ({ kind })),
  ];
}
