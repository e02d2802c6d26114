import { assemble, type AssembleError, type Shelf } from '../core/assemble.ts';
import { appraise } from '../core/appraisal.ts';
import { settingsOf } from '../core/appraisal-settings.ts';
import type { Json } from '../core/canonical-json.ts';
import { flipsOf } from '../core/flips.ts';
import { isKind, type RecordKey } from '../core/keys.ts';
import { err, ok, type Result } from '../core/result.ts';
import { factsOf, score } from '../core/score.ts';
import { displayed } from '../core/versions.ts';
import { hoursOfMachine, planOfMachine, type HoursOfMachine, type PlanOfMachine } from '../files/ahead.ts';
import { appraisalJson } from '../files/appraisal.ts';
import { scoredWalk, type ScoredWalk } from '../files/scored.ts';
import { shelfOf } from '../files/shelf.ts';
import { readWalkFile } from '../files/walk-file.ts';
import { builtIn } from '../reference/built-in.ts';
import { cli } from '../words/en/cli.ts';
import { fileErrorLine } from '../words/en/file-errors.ts';
import { makeFormatter } from '../words/formatter.ts';
import { outlooksOf } from './outlook.ts';

/** What `sagline score` prints. */
export interface ScoredFile {
  readonly format: 'sagline-scored';
  readonly version: 1;
  readonly walks: readonly ScoredWalk[];
  /** Hours left of each machine at its last walk. */
  readonly hours: readonly HoursOfMachine[];
}

/** What `sagline plan` prints. */
export interface PlanFile {
  readonly format: 'sagline-plan';
  readonly version: 1;
  readonly machines: readonly PlanOfMachine[];
}

/** What `sagline appraise` prints. */
export interface AppraisalFile {
  readonly format: 'sagline-appraisal';
  readonly version: 1;
  readonly machines: readonly {
    readonly machine: string;
    readonly name: string;
    readonly walk: string;
    readonly appraisal: Json;
  }[];
}

const format = makeFormatter({ locale: 'en', depth: 'mm', length: 'mm', mass: 'kg' });

/** Why a walk cannot be put together, in one sentence. */
export function whyNot({ kind, key }: AssembleError, walk: string): string {
  if (kind === 'no-machine') return cli.noMachine(walk, key);
  return kind === 'newer-version' ? cli.newerRecord(key) : cli.noWalk;
}

function scoreOne(shelf: Shelf, walk: RecordKey): Result<ScoredWalk, string> {
  const assembled = assemble(shelf, builtIn, walk);
  if (!assembled.ok) return err(whyNot(assembled.error, walk));
  const { input } = assembled.value;
  const scored = score(input);
  const facts = factsOf(input);
  const flips = input.rules ? flipsOf(facts, input.rules, scored) : [];
  return ok(scoredWalk(walk, assembled.value, scored, flips, new Set(facts.states.keys()), format));
}

const isThere = (shelf: Shelf, key: RecordKey): boolean => displayed(shelf.get(key))?.value !== undefined;

interface Read {
  readonly shelf: Shelf;
  readonly walks: readonly RecordKey[];
}

function readWalks(bytes: Uint8Array): Result<Read, string> {
  const content = readWalkFile(bytes);
  if (!content.ok) return err(fileErrorLine(content.error));
  const shelf = shelfOf(content.value);
  const walks = shelf.keys.filter((key) => isKind(key, 'walk') && isThere(shelf, key));
  return walks.length === 0 ? err(cli.noWalk) : ok({ shelf, walks });
}

function scoreAll({ shelf, walks }: Read): Result<readonly ScoredWalk[], string> {
  const all: ScoredWalk[] = [];
  for (const key of walks) {
    const scored = scoreOne(shelf, key);
    if (!scored.ok) return scored;
    all.push(scored.value);
  }
  return ok(all);
}

/** Scores every walk of a file and tells the hours left of its machines, or says in one sentence why not. */
export function scoreFile(bytes: Uint8Array): Result<ScoredFile, string> {
  const read = readWalks(bytes);
  if (!read.ok) return read;
  const walks = scoreAll(read.value);
  if (!walks.ok) return walks;
  const hours = outlooksOf(read.value.shelf, read.value.walks).map(({ machine, walk, outlook }) =>
    hoursOfMachine(machine, walk, outlook),
  );
  return ok({ format: 'sagline-scored', version: 1, walks: walks.value, hours });
}

/** The job plan of every machine of a file at its last walk, or in one sentence why not. */
export function planFile(bytes: Uint8Array): Result<PlanFile, string> {
  const read = readWalks(bytes);
  if (!read.ok) return read;
  // A walk that cannot be scored has no plan, and says why in the same sentence.
  const walks = scoreAll(read.value);
  if (!walks.ok) return walks;
  const machines = outlooksOf(read.value.shelf, read.value.walks).map(({ machine, name, walk, outlook }) =>
    planOfMachine(machine, name, walk, outlook),
  );
  return ok({ format: 'sagline-plan', version: 1, machines });
}

/** What the undercarriage of every machine of a file is worth at its last walk, or in one sentence why not. */
export function appraiseFile(bytes: Uint8Array): Result<AppraisalFile, string> {
  const read = readWalks(bytes);
  if (!read.ok) return read;
  const walks = scoreAll(read.value);
  if (!walks.ok) return walks;
  const machines = outlooksOf(read.value.shelf, read.value.walks).map(
    ({ machine, name, walk, assembled, scored, outlook }) => {
      const { shape } = assembled.input.machine;
      const settings = settingsOf(assembled.input.walk);
      return {
        machine,
        name,
        walk,
        appraisal: appraisalJson(appraise({ shape, scored, outlook, settings })),
      };
    },
  );
  return ok({ format: 'sagline-appraisal', version: 1, machines });
}
