import type { Person } from '../core/person.ts';
import { shownCall } from '../core/verdict.ts';
import { fingerprintText } from '../seal/fingerprint.ts';
import { callWords, meanwhileWords, openCall } from '../words/en/calls.ts';
import { report as words } from '../words/en/report.ts';
import { checkWords, roleWords } from '../words/en/sealing.ts';
import type { Block } from './blocks.ts';
import { blankSignature } from './page.ts';
import { facts, section, text } from './parts.ts';
import type { ReportInput, ReportSeal } from './report-input.ts';

/** A signature, or that there is none, with what whoever signed objects to. */
export function signature({ name, role, way, strokes, objection }: Person): readonly Block[] {
  const as = roleWords[role];
  const objects = objection === undefined || objection === '' ? [] : [text(words.objects(name, objection))];
  if (way === 'refused') return [text(words.refused(name, as)), ...objects];
  if (way === 'typed' || !strokes || strokes.length === 0) return [text(words.typed(name, as)), ...objects];
  const alt = words.signatureOf(name, as);
  return [{ kind: 'signature', name, role: as, strokes, alt }, ...objects];
}

/** Who signed; with nobody, that nobody did, and a line to sign on by hand. */
export function signedSection({ people, input }: ReportInput): readonly Block[] {
  const { inspector = '' } = input.walk;
  const blank = blankSignature(roleWords.inspector, inspector);
  return section(words.signed, people.length === 0 ? [text(words.nobody), blank] : people.flatMap(signature));
}

function verdictLine({ verdict }: ReportInput['scored']): string {
  const call = shownCall(verdict);
  const { word } = call === 'open' ? openCall : callWords[call];
  return words.codeVerdict(word, meanwhileWords[verdict.meanwhile].word);
}

type Sealed = Pick<ReportInput, 'seals' | 'scored' | 'dates'>;

function sealBlocks({ hash, fingerprint, sealedAt, state }: ReportSeal, of: Sealed): readonly Block[] {
  const { label, line } = checkWords[state];
  const checked = words.sealChecked(label, line);
  // Nothing that a seal says is shown as if it held where its signature does not.
  if (fingerprint === undefined || sealedAt === undefined) return [text(checked, 'caution')];
  return [
    ...facts([
      [words.sealedAt, of.dates.moment(sealedAt)],
      [words.sealPrint, fingerprintText(hash)],
      [words.keyPrint, fingerprintText(fingerprint)],
      [words.sealState, checked],
    ]),
    {
      kind: 'code',
      content: words.code(hash, fingerprint, verdictLine(of.scored)),
      alt: words.codeAlt,
      caption: words.codeCaption,
    },
  ];
}

/** Each seal of the walk with its fingerprints and how it stands; without one, that there is none. */
export function sealSection(of: Sealed): readonly Block[] {
  if (of.seals === 'not-checked') return section(words.seal, [text(words.notChecked, 'caution')]);
  if (of.seals.length === 0) return section(words.seal, [text(words.notSealed)]);
  return section(words.seal, [
    ...of.seals.flatMap((seal) => sealBlocks(seal, of)),
    text(words.sealHow, 'small'),
  ]);
}
