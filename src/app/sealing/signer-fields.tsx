import { sealForm as words } from '../../words/en/sealing.ts';
import type { SignerRole } from '../../core/person.ts';
import { Toggle } from '../parts/choices.tsx';
import { Field } from '../parts/field.tsx';
import type { SealFault, SignatureForm } from './seal-form.ts';
import { SignaturePad } from './signature-pad.tsx';

interface SignerFieldsProps {
  readonly whose: SignerRole;
  readonly form: SignatureForm;
  readonly nameLabel?: string;
  readonly faults: { readonly name?: SealFault | undefined; readonly sign?: SealFault | undefined };
  /** Absent where nothing is to be signed. */
  readonly signs: 'drawn-or-typed' | 'drawn' | 'no';
  readonly onChange: (form: SignatureForm) => void;
}

/** A name, and the signature that goes with it: drawn, or the typed name itself. */
export function SignerFields({ whose, form, nameLabel, faults, signs, onChange }: SignerFieldsProps) {
  const typed = form.way === 'typed' && signs === 'drawn-or-typed';
  return (
    <>
      <Field
        label={nameLabel ?? words.name}
        value={form.name}
        fault={faults.name && words.faults[faults.name]}
        onInput={(name) => onChange({ ...form, name })}
      />
      {signs !== 'no' && !typed && (
        <SignaturePad
          label={signs === 'drawn' ? words.signatureIfGiven(whose) : words.signatureOf(whose)}
          strokes={form.strokes}
          fault={faults.sign && words.faults[faults.sign]}
          onChange={(strokes) => onChange({ ...form, way: 'drawn', strokes })}
        />
      )}
      {signs === 'drawn-or-typed' && (
        <Toggle
          label={whose === 'inspector' ? words.byName : words.byNameOther}
          line={words.byNameLine}
          on={typed}
          onTap={() => onChange({ ...form, way: typed ? 'drawn' : 'typed' })}
        />
      )}
    </>
  );
}
