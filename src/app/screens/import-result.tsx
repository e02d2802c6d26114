import { parseKey, type RecordKey } from '../../core/keys.ts';
import { fileErrorLine, nothingImported } from '../../words/en/file-errors.ts';
import { files as words } from '../../words/en/files.ts';
import { storageStates } from '../../words/en/storage.ts';
import type { Arrived, Imported } from '../actions/import.ts';
import { loadSealing } from '../data/load-sealing.ts';
import { bookPath, machinePath, walkPath } from '../data/paths.ts';
import { notSavedLine } from '../data/saving.ts';
import { useLoaded } from '../data/use-loaded.ts';
import { RowLink, RowText } from '../parts/button.tsx';
import parts from '../parts/parts.module.css';

const mostLinks = 5;
const mostFaults = 10;

/** What came of an import, in sentences, and the way to what came in. */
export function ImportResult({ result }: { result: Imported }) {
  const [title, ...lines] = linesOf(result);
  const arrived = result.kind === 'done' ? onceEach(result.arrived).slice(0, mostLinks) : [];
  return (
    <section class={parts.banner} role="status">
      <strong>{title}</strong>
      {lines.map((line) => (
        <span key={line}>{line}</span>
      ))}
      {arrived.map((each) => (
        <ArrivedLink key={each.key} arrived={each} />
      ))}
    </section>
  );
}

/** A record may come in several versions; the last one names it. */
const onceEach = (arrived: readonly Arrived[]): readonly Arrived[] => [
  ...new Map(arrived.map((each) => [each.key, each])).values(),
];

function linesOf(result: Imported): readonly string[] {
  switch (result.kind) {
    case 'done':
      return doneLines(result);
    case 'refused':
      return [fileErrorLine(result.error), nothingImported];
    case 'cancelled':
      return result.added === 0 ? [words.cancelled] : [words.cancelledAfter(result.added)];
    default:
      return notSavedLines(result);
  }
}

function notSavedLines({ error, partly }: Extract<Imported, { kind: 'not-saved' }>): readonly string[] {
  const left = partly ? words.notStoredPartly : nothingImported;
  switch (error.kind) {
    case 'quota':
      return [storageStates.full.title, left, storageStates.full.line];
    case 'counts-ahead':
      return [words.countsAhead, left];
    case 'clash':
    case 'made-by-newer':
      return [notSavedLine(error), left];
    default:
      return [partly ? words.notStoredPartly : words.notStored];
  }
}

function doneLines({
  added,
  known,
  clashes,
  refused,
  leftOut,
  sealsAltered,
  picturesMissing,
}: Extract<Imported, { kind: 'done' }>): readonly string[] {
  return [
    added === 0 ? words.nothingNew : words.added(added),
    ...(known > 0 && added > 0 ? [words.had(known)] : []),
    ...(clashes > 0 ? [words.clashes(clashes)] : []),
    ...(sealsAltered > 0 ? [words.sealsAltered(sealsAltered)] : []),
    ...(picturesMissing > 0 ? [words.picturesMissing(picturesMissing)] : []),
    ...(leftOut > 0 ? [words.leftOut(leftOut)] : []),
    ...(refused.length > 0 ? [words.refused(refused.length)] : []),
    ...refused.slice(0, mostFaults).map(fileErrorLine),
  ];
}

/** A name that the value brings along, or its key. */
function nameOf({ key, value }: Arrived): string {
  const named = typeof value === 'object' && value !== null && 'name' in value ? value.name : undefined;
  return typeof named === 'string' ? named : parseKey(key)?.kind === 'walk' ? words.aWalk : key;
}

function ArrivedLink({ arrived }: { arrived: Arrived }) {
  const sealing = useLoaded(loadSealing);
  const kind = parseKey(arrived.key)?.kind;
  const path =
    kind === 'machine'
      ? machinePath(arrived.key)
      : kind === 'walk'
        ? walkPath(arrived.key)
        : bookPath(arrived.key);
  return (
    <>
      <RowLink href={path}>
        <RowText name={nameOf(arrived)} />
      </RowLink>
      {kind === 'walk' && sealing && <sealing.ImportedSeals walk={arrived.key as RecordKey<'walk'>} />}
    </>
  );
}
