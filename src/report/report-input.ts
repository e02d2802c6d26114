import type { Outlook } from '../core/outlook.ts';
import type { Person } from '../core/person.ts';
import type { Photo } from '../core/photo.ts';
import type { Result } from '../core/result.ts';
import type { Scored } from '../core/score.ts';
import type { ScoreInput } from '../core/states.ts';
import type { CheckedSeal } from '../seal/check-seal.ts';
import type { SealFault } from '../seal/seals.ts';
import type { Dates } from '../words/dates.ts';
import type { ReasonTexts } from '../words/en/reason-line.ts';
import type { Formatter, Preferences } from '../words/format.ts';

/** A picture of the walk; its bytes stay where they are. */
export interface ReportPhoto {
  readonly sha256: string;
  readonly photo: Photo;
}

/** Everything that a report is made of: a walk, what was worked out from it, and how its reader reads numbers. */
export interface ReportInput {
  /** Machine, walk, sheets, rules and readings. */
  readonly input: ScoreInput;
  readonly scored: Scored;
  /** What lies ahead; undefined where it could not be worked out. */
  readonly outlook: Outlook | undefined;
  /** A demo machine: said on top, so that nobody takes it for a real one. */
  readonly invented: boolean;
  readonly photos: readonly ReportPhoto[];
  readonly people: readonly Person[];
  /** Each seal of the walk as it was checked, latest last. */
  readonly seals: readonly Result<CheckedSeal, SealFault>[];
  readonly format: Formatter;
  readonly units: Pick<Preferences, 'depth' | 'length'>;
  readonly dates: Dates;
  readonly reasonTexts: ReasonTexts;
}
