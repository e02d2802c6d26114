import type { Person, SignerRole, SigningWay } from '../../core/person.ts';
import { err, ok, type Result } from '../../core/result.ts';
import type { Purpose } from '../../core/walk.ts';
import type { Stroke } from './strokes.ts';

/** Those beside the inspector who may sign. */
export const otherRoles = ['renter', 'buyer', 'owner'] as const satisfies readonly SignerRole[];
export type OtherRole = (typeof otherRoles)[number];

/** What the other one says to the findings. */
export const answers = ['agrees', 'objects', 'refuses'] as const;
export type Answer = (typeof answers)[number];

/** A name and a signature under it. */
export interface SignatureForm {
  readonly name: string;
  readonly way: Exclude<SigningWay, 'refused'>;
  readonly strokes: readonly Stroke[];
}

/** What is filled in before a walk is sealed; kept as a draft until then. */
export interface SealForm {
  readonly inspector: SignatureForm;
  readonly role: OtherRole | 'nobody';
  readonly answer: Answer | '';
  readonly other: SignatureForm;
  readonly objection: string;
}

export type SealFault =
  'inspector-name' | 'inspector-sign' | 'answer' | 'other-name' | 'other-sign' | 'objection';

/** Somebody who signs, before the salt of their record is drawn. */
export type Signer = Pick<Person, 'role' | 'name' | 'way' | 'strokes' | 'objection'>;

const unsigned: SignatureForm = { name: '', way: 'drawn', strokes: [] };

/** An empty form with the name of whoever walked. */
export const emptyForm = (inspector: string): SealForm => ({
  inspector: { ...unsigned, name: inspector },
  role: 'nobody',
  answer: '',
  other: unsigned,
  objection: '',
});

/** Who is most likely to stand beside the inspector. */
export const likelyRole: Readonly<Record<Purpose, OtherRole>> = {
  jobsite: 'owner',
  'hand-out': 'renter',
  'rental-return': 'renter',
  appraisal: 'buyer',
};

const isSigned = ({ way, strokes }: SignatureForm): boolean => way === 'typed' || strokes.length > 0;

const signed = (role: SignerRole, { name, way, strokes }: SignatureForm): Signer => ({
  role,
  name: name.trim(),
  way,
  ...(way === 'drawn' && { strokes: strokes.map((stroke) => [...stroke]) }),
});

function faultsOf({ inspector, role, answer, other, objection }: SealForm): readonly SealFault[] {
  const isNamed = other.name.trim() !== '';
  const checks: readonly (readonly [SealFault, boolean])[] = [
    ['inspector-name', inspector.name.trim() === ''],
    ['inspector-sign', !isSigned(inspector)],
    ['answer', role !== 'nobody' && answer === ''],
    ['other-name', role !== 'nobody' && (answer === 'agrees' || answer === 'objects') && !isNamed],
    ['other-sign', role !== 'nobody' && answer === 'agrees' && !isSigned(other)],
    ['objection', role !== 'nobody' && answer === 'objects' && objection.trim() === ''],
  ];
  return checks.flatMap(([fault, isThere]) => (isThere ? [fault] : []));
}

/** Whoever objects may sign that by hand; a typed name alone is then no signature, since the inspector types it. */
function otherSigner({ role, answer, other, objection }: SealForm): readonly Signer[] {
  if (role === 'nobody') return [];
  if (answer === 'agrees') return [signed(role, other)];
  const name = other.name.trim();
  if (answer === 'refuses') return [{ role, name, way: 'refused' }];
  const isDrawn = other.way === 'drawn' && other.strokes.length > 0;
  const hand: Signer = isDrawn ? signed(role, other) : { role, name, way: 'refused' };
  return [{ ...hand, objection: objection.trim() }];
}

/** Those who sign, the inspector first; or all that is missing. */
export function signersOf(form: SealForm): Result<readonly Signer[], readonly SealFault[]> {
  const faults = faultsOf(form);
  return faults.length > 0 ? err(faults) : ok([signed('inspector', form.inspector), ...otherSigner(form)]);
}
