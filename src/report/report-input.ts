import type { Outlook } from '../core/outlook.ts';
import type { Person } from '../core/person.ts';
import type { Photo } from '../core/photo.ts';
import type { ObservedAt } from '../core/readings.ts';
import type { Scored } from '../core/score.ts';
import type { ScoreInput } from '../core/states.ts';
import type { Dates } from '../words/dates.ts';
import type { ReasonTexts } from '../words/en/reason-line.ts';
import type { checkWords } from '../words/en/sealing.ts';
import type { Judged } from '../words/purpose-answers.ts';
import type { Formatter, Preferences } from '../words/format.ts';
import type { Block } from './blocks.ts';

/** A picture of the walk; its bytes stay where they are. */
export interface ReportPhoto {
  readonly sha256: string;
  readonly photo: Photo;
}

/** A seal of the walk as it was checked; SHA-256 of its text and thumbprint of its key as hexadecimal digits. */
export interface ReportSeal {
  readonly hash: string;
  readonly state: keyof typeof checkWords;
  /** Both are there only where the signature holds. */
  readonly fingerprint?: string | undefined;
  readonly sealedAt?: ObservedAt | undefined;
}

/** Everything that a report is made of: a walk, what was worked out from it, and how its reader reads numbers. */
export interface ReportInput {
  /** Machine, walk, sheets, rules and readings. */
  readonly input: ScoreInput;
  readonly scored: Scored;
  /** What lies ahead; undefined where it could not be worked out. */
  readonly outlook: Outlook | undefined;
  /** The sections that the purpose of the walk adds, after the verdict. */
  readonly ofPurpose?: readonly Block[];
  /** A demo machine: said on top, so that nobody takes it for a real one. */
  readonly invented: boolean;
  /** Of a hand-out or a return. */
  readonly rental?: Judged['rental'];
  readonly photos: readonly ReportPhoto[];
  readonly people: readonly Person[];
  /** Each seal of the walk as it was checked, latest last; or that they could not be looked up. */
  readonly seals: readonly ReportSeal[] | 'not-checked';
  readonly format: Formatter;
  readonly units: Pick<Preferences, 'depth' | 'length'>;
  readonly dates: Dates;
  readonly reasonTexts: ReasonTexts;
}
