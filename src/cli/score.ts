import { assemble, type AssembleError, type Shelf } from '../core/assemble.ts';
import { flipsOf } from '../core/flips.ts';
import { isKind, type RecordKey } from '../core/keys.ts';
import { err, ok, type Result } from '../core/result.ts';
import { factsOf, score } from '../core/score.ts';
import { displayed } from '../core/versions.ts';
import { scoredWalk, type ScoredWalk } from '../files/scored.ts';
import { shelfOf } from '../files/shelf.ts';
import { readWalkFile } from '../files/walk-file.ts';
import { builtIn } from '../reference/built-in.ts';
import { cli } from '../words/en/cli.ts';
import { fileErrorLine } from '../words/en/file-errors.ts';
import { makeFormatter } from '../words/formatter.ts';

/** What `sagline score` prints. */
export interface ScoredFile {
  readonly format: 'sagline-scored';
  readonly version: 1;
  readonly walks: readonly ScoredWalk[];
}

const format = makeFormatter({ locale: 'en', depth: 'mm', length: 'mm', mass: 'kg' });

function whyNot({ kind, key }: AssembleError, walk: string): string {
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

/** Scores every walk of a file, or says in one sentence why not. */
export function scoreFile(bytes: Uint8Array): Result<ScoredFile, string> {
  const content = readWalkFile(bytes);
  if (!content.ok) return err(fileErrorLine(content.error));
  const shelf = shelfOf(content.value);
  const keys = shelf.keys.filter((key) => isKind(key, 'walk') && isThere(shelf, key));
  if (keys.length === 0) return err(cli.noWalk);
  const walks: ScoredWalk[] = [];
  for (const key of keys) {
    const scored = scoreOne(shelf, key);
    if (!scored.ok) return scored;
    walks.push(scored.value);
  }
  return ok({ format: 'sagline-scored', version: 1, walks });
}
