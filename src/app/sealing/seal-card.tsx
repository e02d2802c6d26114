import type { ComponentChildren } from 'preact';
import type { SealChange } from '../../core/seal-payload.ts';
import { fingerprintText } from '../../seal/fingerprint.ts';
import { callWords, openCall } from '../../words/en/calls.ts';
import { changeWords, checkWords, roleWords, sealCard as words } from '../../words/en/sealing.ts';
import { entry } from '../../words/entry.ts';
import { formatter } from '../data/format.ts';
import { Facts } from '../parts/facts.tsx';
import { LateReadings } from './late-readings.tsx';
import { momentOf } from './moment-of.ts';
import { changedText, valueText } from './place-text.ts';
import type { SealedPerson, SealView } from '../../files/seal-view.ts';
import styles from './sealing.module.css';
import { SignatureDrawing } from './signature-drawing.tsx';
import { SignerStanding, type Standing } from './signer-standing.tsx';

interface SealCardProps {
  readonly seal: SealView;
  readonly standing: Standing;
  /** The seals of the file, to say where the one before it is not among them. */
  readonly here?: ReadonlySet<string>;
  /** What can be done with a person of this seal. */
  readonly personAction?: (person: SealedPerson) => ComponentChildren;
  readonly onKnown?: () => void;
}

/** So many lines are read; of more than these only how many there are is said. */
const mostLines = 40;

/** One seal: whether it holds, what was changed, by whom it was signed. */
export function SealCard({ seal, standing, here, personAction, onKnown }: SealCardProps) {
  const result = checkWords[seal.state];
  return (
    <article class={styles.card} aria-label={result.label}>
      <h2 class={seal.state === 'altered' ? styles.altered : styles.result}>{result.label}</h2>
      <p>{result.line}</p>
      {seal.says && <Says seal={seal} says={seal.says} here={here} />}
      <Differences seal={seal} />
      <LateReadings late={seal.later} />
      {seal.people.length > 0 && (
        <>
          <h3>{words.people}</h3>
          {seal.people.map((each) => (
            <Signed key={each.key} person={each}>
              {personAction?.(each)}
            </Signed>
          ))}
        </>
      )}
      {seal.fingerprint !== undefined && (
        <SignerStanding fingerprint={seal.fingerprint} standing={standing} {...(onKnown && { onKnown })} />
      )}
    </article>
  );
}

interface SaysProps {
  readonly seal: SealView;
  readonly says: NonNullable<SealView['says']>;
  readonly here: ReadonlySet<string> | undefined;
}

function Says({ seal, says, here }: SaysProps) {
  const call = says.call === 'open' ? openCall : entry(callWords, says.call ?? '');
  return (
    <Facts
      facts={[
        [words.sealed, momentOf(says.sealedAt)],
        [words.machine, says.machine],
        [words.verdict, call?.word],
        [words.open, formatter.value.number(says.open)],
        [words.seal, <Print key="seal" hash={seal.hash} />],
        [words.previous, <Previous key="previous" hash={says.previous} here={here} />],
      ]}
    />
  );
}

interface PreviousProps {
  readonly hash: string | undefined;
  readonly here: ReadonlySet<string> | undefined;
}

function Previous({ hash, here }: PreviousProps) {
  if (hash === undefined) return words.first;
  return (
    <>
      <Print hash={hash} />
      {here?.has(hash) === false && <span> {words.notHere}</span>}
    </>
  );
}

const Print = ({ hash }: { hash: string }) => <span class={styles.print}>{fingerprintText(hash)}</span>;

function lineOf({ kind, key, path, from, to }: SealChange): string {
  const what = changedText(key, path);
  if (kind !== 'changed') return changeWords[kind](what);
  const [was, is] = [valueText(from), valueText(to)];
  return was !== undefined && is !== undefined
    ? changeWords.changed(what, was, is)
    : changeWords.differs(what);
}

function Differences({ seal: { changes, photos } }: { seal: SealView }) {
  const lines = [
    ...changes.map(lineOf),
    ...photos.map(({ state }) => (state === 'missing' ? changeWords.photoMissing : changeWords.photoAltered)),
  ];
  if (lines.length === 0) return null;
  return (
    <>
      <h3>{words.changes}</h3>
      <ul class={styles.list}>
        {lines.slice(0, mostLines).map((line, at) => (
          <li key={at}>{line}</li>
        ))}
      </ul>
      {lines.length > mostLines && <p>{changeWords.more(lines.length - mostLines)}</p>}
    </>
  );
}

function personLine({ role, state, person }: SealedPerson): string {
  const who = roleWords[role];
  if (state === 'erased') return `${who}: ${words.erased}`;
  if (state === 'other') return `${who}: ${words.otherPerson}`;
  if (!person) return `${who}: ${words.notHere}`;
  const name = person.name === '' ? words.nameless : person.name;
  // Whoever objects has answered: that they did not sign it goes without saying.
  const way = person.way === 'refused' && person.objection !== undefined ? undefined : person.way;
  return way ? `${who}: ${name}, ${words.ways[way]}` : `${who}: ${name}`;
}

function Signed({ person: sealed, children }: { person: SealedPerson; children: ComponentChildren }) {
  const { person, state } = sealed;
  return (
    <div class={styles.person}>
      <strong class={state === 'other' ? styles.fault : undefined}>{personLine(sealed)}</strong>
      {state === 'erased' && <span>{words.erasedLine}</span>}
      {person?.objection !== undefined && <span>{words.objects(person.objection)}</span>}
      {person?.strokes && (
        <div class={styles.signed}>
          <SignatureDrawing strokes={person.strokes} label={words.drawnBy(person.name)} />
        </div>
      )}
      {children}
    </div>
  );
}
