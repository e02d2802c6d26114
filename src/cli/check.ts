import { fingerprintText } from '../seal/fingerprint.ts';
import type { SealChange } from '../core/seal-payload.ts';
import { err, ok, type Result } from '../core/result.ts';
import { checkSeals, type CheckedSeals } from '../files/check-seals.ts';
import { openFile } from '../files/open-file.ts';
import type { Later, SealedPerson, SealView } from '../files/seal-view.ts';
import { cli } from '../words/en/cli.ts';
import { fileErrorLine } from '../words/en/file-errors.ts';
import { changeWords, check, checkWords, roleWords, sealCard } from '../words/en/sealing.ts';
import { makeDates } from '../words/dates.ts';
import { inputSource } from './input.ts';

/** What `sagline check` prints, and whether everything is as it was sealed. */
export interface Checked {
  readonly text: string;
  readonly intact: boolean;
}

/** What a file says can neither steer a terminal nor begin a line that looks like ours. */
const onOneLine = (text: string): string =>
  text.replace(
    /[\p{Cc}\p{Zl}\p{Zp}\p{Bidi_Control}]/gu,
    (char) => `\\u${char.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );

/** JSON, cut to what fits a line of a terminal; the whole value is in the file. */
const shortest = (value: unknown): string => (JSON.stringify(value) ?? cli.nothing).slice(0, 120);

/** A change by the key and path that stand in the file, so that it can be found there. */
function changeLine({ kind, key, path, from, to }: SealChange): string {
  const what = [key, ...path].join('/');
  return kind === 'changed'
    ? changeWords.changed(what, shortest(from), shortest(to))
    : changeWords[kind](what);
}

const personStates = {
  erased: sealCard.erased,
  'not-here': sealCard.notHere,
  other: sealCard.otherPerson,
} as const;

function personLine({ role, state, person }: SealedPerson): string {
  if (state !== 'as-sealed') return `${roleWords[role]}: ${personStates[state]}`;
  const name = person?.name ? person.name : sealCard.nameless;
  return `${roleWords[role]}: ${name}${person?.objection ? `. ${sealCard.objects(person.objection)}` : ''}`;
}

/** What came later, and its fields with what they say now; its stamp only where nothing else differs. */
function laterLines({ key, kind, changes }: Later): readonly string[] {
  const fields = changes.filter((each) => each.kind === 'changed');
  const inValue = fields.filter(({ path }) => path[0] === 'value');
  const shown = inValue.length > 0 ? inValue : fields;
  return [cli.later(key, kind), ...shown.map((each) => `  ${changeLine(each)}`)];
}

function previousLine(previous: string | undefined, here: ReadonlySet<string>): string {
  if (previous === undefined) return `${sealCard.previous}: ${sealCard.first}`;
  const where = here.has(previous) ? '' : ` (${sealCard.notHere})`;
  return `${sealCard.previous}: ${fingerprintText(previous)}${where}`;
}

function linesOf(seal: SealView, { seals, here }: CheckedSeals): readonly string[] {
  const result = checkWords[seal.state];
  const { says, fingerprint } = seal;
  const inner = [
    result.line,
    `${sealCard.seal}: ${fingerprintText(seal.hash)}`,
    ...(fingerprint ? [`${sealCard.by}: ${fingerprintText(fingerprint)} (${sealCard.unknown})`] : []),
    ...(says ? [`${sealCard.sealed}: ${makeDates('en').moment(says.sealedAt)}`] : []),
    ...(says ? [previousLine(says.previous, here)] : []),
    ...seal.people.map(personLine),
    ...seal.changes.map(changeLine),
    ...seal.photos.map(
      ({ sha256, state }) =>
        `${state === 'missing' ? changeWords.photoMissing : changeWords.photoAltered}: ${sha256}`,
    ),
    ...seal.later.flatMap(laterLines),
  ];
  const title = cli.seal(seals.indexOf(seal) + 1, seals.length, result.label);
  return [title, ...inner.map((line) => `  ${line}`)];
}

const holds = ({ state }: SealView): boolean => state === 'intact' || state === 'later';

/** Checks every seal of a walk file or bundle: all of it, or the sentence of why it cannot be checked. */
export async function checkFile(name: string): Promise<Result<Checked, string>> {
  const source = await inputSource(name);
  if (!source.ok) return source;
  const opened = await openFile(source.value);
  if (!opened.ok) return err(fileErrorLine(opened.error));
  if (opened.value.kind === 'backup') return err(check.backup);
  const checked = await checkSeals(opened.value);
  if (checked.seals.length === 0) return err(check.noSeal);
  const lines = checked.seals.flatMap((seal) => linesOf(seal, checked));
  const fork = checked.fork ? [sealCard.fork] : [];
  return ok({ text: [...lines, ...fork].map(onOneLine).join('\n'), intact: checked.seals.every(holds) });
}
