import type { Person } from '../core/person.ts';
import { shownCall } from '../core/verdict.ts';
import type { CheckedSeal } from '../seal/check-seal.ts';
import { fingerprintText } from '../seal/fingerprint.ts';
import { callWords, meanwhileWords, openCall } from '../words/en/calls.ts';
import { report as words, signerWords } from '../words/en/report.ts';
import type { Block } from './blocks.ts';
import { facts, section, text } from './parts.ts';
import type { ReportInput } from './report-input.ts';

function signature({ name, role, way, strokes, objection }: Person): readonly Block[] {
  const as = signerWords[role];
  const objects = objection === undefined || objection === '' ? [] : [text(words.objects(name, objection))];
  if (way === 'refused') return [text(words.refused(name, as)), ...objects];
  if (way === 'typed' || !strokes || strokes.length === 0) return [text(words.typed(name, as)), ...objects];
  const alt = words.signatureOf(name, as);
  return [{ kind: 'signature', name, role: as, strokes, alt }, ...objects];
}

/** Who signed; with nobody, that nobody did, and a line to sign on by hand. */
export function signedSection({ people, input }: ReportInput): readonly Block[] {
  const { inspector = '' } = input.walk;
  const role = signerWords.inspector;
  const blank: Block = {
    kind: 'signature',
    name: inspector,
    role,
    strokes: [],
    alt: words.noSignature(role),
  };
  return section(words.signed, people.length === 0 ? [text(words.nobody), blank] : people.flatMap(signature));
}

function stateOf({ changes, photos, people }: CheckedSeal): string {
  const other = people.filter(({ state }) => state === 'other');
  const count = changes.length + photos.length + other.length;
  return count === 0 ? words.sealHolds : words.sealDiffers(count);
}

function verdictLine({ verdict }: ReportInput['scored']): string {
  const call = shownCall(verdict);
  const { word } = call === 'open' ? openCall : callWords[call];
  return words.codeVerdict(word, meanwhileWords[verdict.meanwhile].word);
}

function sealBlocks(seal: CheckedSeal, of: ReportInput): readonly Block[] {
  const { hash, fingerprint, payload } = seal;
  return [
    ...facts([
      [words.sealedAt, of.dates.moment(payload.sealedAt)],
      [words.sealPrint, fingerprintText(hash)],
      [words.keyPrint, fingerprintText(fingerprint)],
      [words.sealState, stateOf(seal)],
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
export function sealSection(of: ReportInput): readonly Block[] {
  const blocks = of.seals.flatMap((seal) => {
    if (seal.ok) return sealBlocks(seal.value, of);
    return [text(seal.error.kind === 'altered' ? words.sealAltered : words.sealUnreadable, 'caution')];
  });
  return section(
    words.seal,
    blocks.length === 0 ? [text(words.notSealed)] : [...blocks, text(words.sealHow, 'small')],
  );
}
