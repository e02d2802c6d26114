import { useLocation } from 'preact-iso';
import { useState } from 'preact/hooks';
import { isDemo, type RecordKey } from '../../core/keys.ts';
import { common } from '../../words/en/common.ts';
import { purposeWords } from '../../words/en/choices.ts';
import { sealForm as words } from '../../words/en/sealing.ts';
import { useLoaded } from '../data/use-loaded.ts';
import { tell } from '../data/notice.ts';
import { fromPath, walkPath } from '../data/paths.ts';
import { showFirstFault } from '../data/show-fault.ts';
import { useDraft } from '../data/use-draft.ts';
import { useWalk } from '../data/use-walk.ts';
import type { WalkModel } from '../data/walk-model.ts';
import { Button, ButtonLink } from '../parts/button.tsx';
import { Screen, Section } from '../parts/screen.tsx';
import { Gone } from '../screens/gone.tsx';
import { inspectorName } from './inspector.ts';
import { OtherSigner } from './other-signer.tsx';
import { emptyForm, signersOf, type SealFault, type SealForm } from './seal-form.ts';
import { sealDraftKey, sealWalk } from './seal-walk.ts';
import { sealFailure } from './seal-failure.ts';
import { SignerFields } from './signer-fields.tsx';
import { WhatIsSealed } from './what-is-sealed.tsx';

/** Signs and seals a walk: what is sealed, who signs, and one tap. */
export function SealScreen() {
  const { path } = useLocation();
  const key = fromPath('walk', path)?.key;
  return key ? <OfWalk walkKey={key} /> : <Gone />;
}

function OfWalk({ walkKey }: { walkKey: RecordKey<'walk'> }) {
  const state = useWalk(walkKey);
  const inspector = useLoaded(inspectorName);
  if (state.kind === 'failed') return <Gone />;
  if (state.kind === 'loading' || inspector === undefined) return <Screen title={words.title}>{null}</Screen>;
  return isDemo(walkKey) ? <Demo model={state.model} /> : <Form model={state.model} inspector={inspector} />;
}

const subOf = ({ machine, walk }: WalkModel): string =>
  `${machine.name} · ${purposeWords[walk.purpose].label}`;

const Back = ({ model }: { model: WalkModel }) => (
  <ButtonLink href={walkPath(model.key, 'verdict')}>{common.back}</ButtonLink>
);

const Demo = ({ model }: { model: WalkModel }) => (
  <Screen title={words.title} sub={subOf(model)} bar={<Back model={model} />}>
    <p>{words.demo}</p>
  </Screen>
);

function Form({ model, inspector }: { model: WalkModel; inspector: string }) {
  const { route } = useLocation();
  const [form, setForm] = useDraft<SealForm>(
    sealDraftKey(model.key),
    emptyForm(model.walk.inspector ?? inspector),
  );
  const [faults, setFaults] = useState<readonly SealFault[]>([]);
  const [busy, setBusy] = useState(false);
  const change = (part: Partial<SealForm>): void => {
    setForm({ ...form, ...part });
    setFaults([]);
  };
  const seal = async (): Promise<void> => {
    const signers = signersOf(form);
    if (!signers.ok) {
      setFaults(signers.error);
      return showFirstFault();
    }
    setBusy(true);
    const sealed = await sealWalk(model, signers.value).finally(() => setBusy(false));
    tell(sealed.ok ? words.sealed : sealFailure(sealed.error));
    const next = model.walk.purpose === 'rental-return' ? 'charge' : 'verdict';
    if (sealed.ok) route(walkPath(model.key, next), true);
  };
  const fault = (name: SealFault) => faults.find((each) => each === name);
  return (
    <Screen
      title={words.title}
      sub={subOf(model)}
      bar={
        <>
          <Back model={model} />
          <Button look="main" disabled={busy} onTap={() => void seal()}>
            {busy ? words.sealing : words.seal}
          </Button>
        </>
      }
    >
      <WhatIsSealed model={model} />
      <Section title={words.inspector}>
        <SignerFields
          whose="inspector"
          form={form.inspector}
          faults={{ name: fault('inspector-name'), sign: fault('inspector-sign') }}
          signs="drawn-or-typed"
          onChange={(next) => change({ inspector: next })}
        />
      </Section>
      <OtherSigner {...{ form, faults, change }} purpose={model.walk.purpose} />
      <p>{words.after}</p>
    </Screen>
  );
}
