import { assemble, valueIn, type Shelf } from '../core/assemble.ts';
import type { Contract } from '../core/contract.ts';
import { isHandOutFor, noHandOut } from '../core/hand-out.ts';
import { lastContract, lastHandOut, namedHandOut } from '../core/hire.ts';
import { isDemo, isKind, partsOf, prefixOf, type RecordKey } from '../core/keys.ts';
import type { Photo } from '../core/photo.ts';
import { chargeList } from '../core/rental.ts';
import type { RentalInput, RentalWalk } from '../core/rental-input.ts';
import { err, ok, type Result } from '../core/result.ts';
import { score } from '../core/score.ts';
import type { Walk } from '../core/walk.ts';
import { claimedWalk } from '../seal/claimed.ts';
import { sha256Hex } from '../seal/hash.ts';
import { returnOf, type ReturnOfMachine, type Seals } from '../files/rental.ts';
import { shelfOf } from '../files/shelf.ts';
import { readWalkFile } from '../files/walk-file.ts';
import { builtIn } from '../reference/built-in.ts';
import { toldBy } from '../reference/wear-or-damage.ts';
import { cli } from '../words/en/cli.ts';
import { fileErrorLine } from '../words/en/file-errors.ts';
import { makeFormatter } from '../words/formatter.ts';
import { whyNot } from './score.ts';

/** What `sagline rental` prints. */
export interface RentalFile {
  readonly format: 'sagline-rental';
  readonly version: 1;
  readonly returns: readonly ReturnOfMachine[];
}

type Keyed = Shelf & { readonly keys: readonly RecordKey[] };

const format = makeFormatter({ locale: 'en', depth: 'mm', length: 'mm', mass: 'kg' });

interface Found<T> {
  readonly key: RecordKey;
  readonly value: T;
}

const allOf = <T>(shelf: Keyed, kind: 'contract' | 'walk'): readonly Found<T>[] =>
  shelf.keys.flatMap((key) => {
    const value = isKind(key, kind) ? valueIn<T>(shelf.get(key)) : undefined;
    return value === undefined ? [] : [{ key, value }];
  });

function photosOf(shelf: Shelf, walk: RecordKey): RentalWalk['photos'] {
  const parts = partsOf(walk);
  if (parts.kind !== 'walk') return [];
  const prefix = prefixOf('photo', { owner: parts.id, demo: isDemo(walk) });
  return shelf.under(prefix).flatMap(([key, versions]) => {
    const photo = valueIn<Photo>(versions);
    return photo ? [{ sha256: key.slice(prefix.length), photo }] : [];
  });
}

function walkAt(shelf: Shelf, key: RecordKey): Result<RentalWalk, string> {
  const assembled = assemble(shelf, builtIn, key);
  if (!assembled.ok) return err(whyNot(assembled.error, key));
  const { input } = assembled.value;
  return ok({ key, input, scored: score(input), photos: photosOf(shelf, key) });
}

/** The contract that the return names, else the machine's last one that had begun. */
function contractFor(shelf: Keyed, { key, value }: Found<Walk>): Result<Contract, string> {
  const all = allOf<Contract>(shelf, 'contract');
  if (value.contract === undefined) {
    const last = lastContract(value, all);
    return last ? ok(last.value) : err(cli.noContract(key, value.machine));
  }
  const named = all.find((each) => each.key === value.contract && each.value.machine === value.machine);
  return named ? ok(named.value) : err(cli.contractGone(key, value.contract));
}

/** The hand-out that the return or its contract names, else the last that is not another's; none is no error. */
function handOutFor(
  shelf: Keyed,
  back: Found<Walk>,
  contract: Contract,
): Result<RentalWalk | undefined, string> {
  const { key, value: walk } = back;
  const walks = allOf<Walk>(shelf, 'walk');
  const name = namedHandOut(walk, walk.contract === undefined ? undefined : contract);
  if (name === noHandOut) return ok(undefined);
  if (name === undefined) {
    const last = lastHandOut({ key, walk }, walks);
    return last ? walkAt(shelf, last.key) : ok(undefined);
  }
  const named = walks.find(
    (each) => each.key === name && isHandOutFor({ key, machine: walk.machine }, each.key, each.value),
  );
  return named ? walkAt(shelf, named.key) : err(cli.handOutGone(key, name));
}

function hireOf(shelf: Keyed, back: Found<Walk>): Result<RentalInput, string> {
  const returned = walkAt(shelf, back.key);
  if (!returned.ok) return returned;
  const contract = contractFor(shelf, back);
  if (!contract.ok) return contract;
  const handOut = handOutFor(shelf, back, contract.value);
  if (!handOut.ok) return handOut;
  return ok({ contract: contract.value, handOut: handOut.value, returned: returned.value });
}

/** The names of the seals of each walk, as they say; whether they hold is for `sagline check`. */
async function sealsOf(texts: readonly string[]): Promise<Seals> {
  const named = texts.map(async (jws) => [claimedWalk(jws), await sha256Hex(jws)] as const);
  return Promise.all(named);
}

/** The charge list of every rental return in a file, or why not in one sentence. */
export async function rentalFile(bytes: Uint8Array): Promise<Result<RentalFile, string>> {
  const content = readWalkFile(bytes);
  if (!content.ok) return err(fileErrorLine(content.error));
  const shelf = shelfOf(content.value);
  const seals = await sealsOf(content.value.seals);
  const backs = allOf<Walk>(shelf, 'walk').filter(({ value }) => value.purpose === 'rental-return');
  const returns: ReturnOfMachine[] = [];
  for (const back of backs) {
    const hire = hireOf(shelf, back);
    if (!hire.ok) return hire;
    returns.push(returnOf(hire.value, chargeList(hire.value), seals, { format, toldBy }));
  }
  return returns.length === 0 ? err(cli.noReturn) : ok({ format: 'sagline-rental', version: 1, returns });
}
