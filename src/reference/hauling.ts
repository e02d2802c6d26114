import type {
  HaulRule,
  HaulRuleName,
  HaulStep,
  RuleStep,
  UpperLimit,
  Vehicles,
} from '../core/hauling-rules.ts';
import type { Hold, TieRules } from '../core/hauling-ties.ts';
import type { PrintedMass } from '../core/hauling.ts';
import type { Source } from '../core/source.ts';
import { common, fromMemory, published, weakly } from './sources.ts';

export const regions = ['us', 'gb', 'eu'] as const;
export type Region = (typeof regions)[number];

const kg = (value: number): PrintedMass => ({ value, unit: 'kg' });
const lb = (value: number): PrintedMass => ({ value, unit: 'lb' });

const to = (of: Vehicles, mass: PrintedMass): UpperLimit => ({ of, is: 'to', mass });
const under = (of: Vehicles, mass: PrintedMass): UpperLimit => ({ of, is: 'under', mass });

const step = (name: HaulStep, ...any: readonly (readonly UpperLimit[])[]): RuleStep => ({ step: name, any });

/** What is left when nothing less is enough. */
const last = (name: HaulStep): RuleStep => step(name, []);

const cdl: HaulRule = {
  rule: 'us-licence',
  by: 'greater',
  steps: [
    // A pair of 26,001 lb counts only with a trailer above 10,000 lb: both tests must be met.
    step(
      'no-cdl',
      [under('truck', lb(26_001)), under('combination', lb(26_001))],
      [under('truck', lb(26_001)), to('trailer', lb(10_000))],
    ),
    step('cdl-b', [to('trailer', lb(10_000))]),
    last('cdl-a'),
  ],
  source: published(
    '49 CFR 383.5, commercial motor vehicle; the definition of the combination’s rating of 79 FR 15245',
  ),
  since: '2014-04-18',
};

const commercial: HaulRule = {
  rule: 'us-safety-rules',
  by: 'greater',
  steps: [step('no-safety-rules', [under('combination', lb(10_001))]), last('safety-rules')],
  source: published(
    '49 CFR 390.5, commercial motor vehicle; the definition of the combination’s rating of 79 FR 15245',
  ),
  since: '2014-04-18',
};

const light = [to('truck', kg(3500)), to('trailer', kg(750))] as const;

/** Trucks above 3,500 kg have the same categories in the EU and in Great Britain. */
const trucks: readonly RuleStep[] = [
  step('c1', [to('truck', kg(7500)), to('trailer', kg(750))]),
  step('c1e', [to('truck', kg(7500)), to('combination', kg(12_000))]),
  step('c', [to('trailer', kg(750))]),
  last('ce'),
];

const gbLicence: HaulRule = {
  rule: 'gb-licence',
  by: 'rated',
  steps: [step('b', [to('truck', kg(3500)), to('trailer', kg(3500))]), ...trucks],
  source: published(
    'GOV.UK on towing, in trade press and PIB 2022; category C1E: 12,000 kg with its trailer',
  ),
  since: '2021-12-16',
};

const euLicence: HaulRule = {
  rule: 'eu-licence',
  by: 'rated',
  steps: [
    step('b', light, [to('truck', kg(3500)), to('combination', kg(3500))]),
    step('b96', [to('truck', kg(3500)), to('combination', kg(4250))]),
    step('be', [to('truck', kg(3500)), to('trailer', kg(3500))]),
    ...trucks,
  ],
  source: published('Directive 2006/126/EC, article 4'),
  since: '2013-01-19',
};

const tachograph = (rule: HaulRuleName, source: Source, since?: string): HaulRule => ({
  rule,
  by: 'rated',
  steps: [step('no-tachograph', [to('combination', kg(3500))]), last('tachograph')],
  source,
  ...(since !== undefined && { since }),
});

const euAbroad: HaulRule = {
  rule: 'eu-abroad',
  by: 'rated',
  steps: [step('no-tachograph', [to('combination', kg(2500))]), last('tachograph')],
  source: published('Regulation (EC) 561/2006, article 2(1)(aa), by Regulation (EU) 2020/1054'),
  since: '2026-07-01',
};

/** What the law asks of driver and vehicles, by where one drives. */
export const haulRules: Readonly<Record<Region, readonly HaulRule[]>> = {
  us: [cdl, commercial],
  gb: [
    gbLicence,
    tachograph('gb-tachograph', published('Trade press on GB drivers’ hours and operator licences')),
  ],
  eu: [euLicence, tachograph('eu-tachograph', published('Regulation (EC) 561/2006'), '2007-04-11'), euAbroad],
};

/** Ties by 49 CFR part 393; the rules of heavy machines start at 10,000 lb, where its own texts differ by a pound. */
export const usTies: TieRules = {
  heavyFrom: lb(10_000),
  heavyTies: 4,
  lightTies: 2,
  aggregateShare: 0.5,
  directShare: 0.5,
  short: { lengthFt: 5, mass: lb(1100) },
  lengthStepFt: 10,
  eachTie: lb(5000),
  since: '2002-12-26',
  sources: {
    count: published('49 CFR 393.130(c); 67 FR 61225'),
    lightCount: weakly('49 CFR 393.128 and 393.130(a), as practitioners read them for lighter machines'),
    length: published('49 CFR 393.110, as FMCSA’s Cargo Securement Rules give it'),
    aggregate: published('49 CFR 393.106(d)'),
    eachTie: fromMemory('North American model rule on heavy machines'),
  },
};

interface HoldTable {
  readonly holds: readonly Hold[];
  readonly source: Source;
  readonly since?: string;
}

const usHolds: HoldTable = {
  holds: [
    { by: 'working-load', to: 'front', share: 0.435 },
    { by: 'working-load', to: 'rear', share: 0.5 },
    { by: 'working-load', to: 'side', share: 0.25 },
    { by: 'breaking', to: 'front', share: 0.8 },
    { by: 'breaking', to: 'rear', share: 0.5 },
    { by: 'breaking', to: 'side', share: 0.5 },
    { by: 'working-load', to: 'up', share: 0.2 },
  ],
  source: published('49 CFR 393.102(a)(1), (a)(2) and (b); 71 FR 35833'),
  since: '2006-07-24',
};

const europeanHolds: HoldTable = {
  holds: [
    { by: 'standard', to: 'front', share: 0.8 },
    { by: 'standard', to: 'rear', share: 0.5 },
    { by: 'standard', to: 'side', share: 0.5 },
  ],
  source: published('EN 12195-1:2010, road, for vehicles above 3,500 kg and loads that cannot tip'),
};

/** What ties and blocking must hold, by where one drives. */
export const haulHolds: Readonly<Record<Region, HoldTable>> = {
  us: usHolds,
  gb: europeanHolds,
  eu: europeanHolds,
};

/** The driver whom an operating mass counts. */
export const operatorMass = {
  kg: 75,
  source: published('ISO 16754:2021, 3.1: operating mass with a driver of 75 kg'),
};

/** How a haul’s mass is put together, and how much of a trailer its nose carries. */
export const loadedMassSource = common;

/** The day on which these laws were looked up; laws change. */
export const haulLawsReadOn = '2026-11-25';
