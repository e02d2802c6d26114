import { useLocation } from 'preact-iso';
import { useMemo, useRef, useState } from 'preact/hooks';
import { costsFor } from '../../core/costs-for.ts';
import type { Contract } from '../../core/contract.ts';
import { isDemo, makeKey, type RecordKey } from '../../core/keys.ts';
import type { Machine } from '../../core/machine.ts';
import { ok } from '../../core/result.ts';
import { startingCostsFor } from '../../reference/cost-classes.ts';
import { makeDates } from '../../words/dates.ts';
import { common } from '../../words/en/common.ts';
import { contract as words } from '../../words/en/contract.ts';
import { forms } from '../../words/en/forms.ts';
import { dropDraft, put, save } from '../actions/saved.ts';
import { changeUnsealed } from '../actions/walk.ts';
import { loadBuiltIn } from '../data/built-in.ts';
import { useLive, valueOf } from '../data/live.ts';
import { newId } from '../data/moment.ts';
import { tell } from '../data/notice.ts';
import { fromPath, machinePath } from '../data/paths.ts';
import { preferences } from '../data/preferences.ts';
import { useRecord } from '../data/record.ts';
import { notSavedLine } from '../data/saving.ts';
import { shelfOf, take, type Rows } from '../data/shelf-rows.ts';
import { showFirstFault } from '../data/show-fault.ts';
import { useDraft } from '../data/use-draft.ts';
import { Button, ButtonLink } from '../parts/button.tsx';
import { Field } from '../parts/field.tsx';
import { Screen, Section } from '../parts/screen.tsx';
import { Select } from '../parts/select.tsx';
import { Gone } from '../screens/gone.tsx';
import { Charges, Reckoning, Rules, WhoAndWhen } from './contract-fields.tsx';
import { PartFields, type FormProps } from './contract-part.tsx';
import {
  contractOf,
  contractTexts,
  filledFrom,
  inCurrency,
  newContract,
  pricedFor,
  type ContractFaults,
  type ContractTexts,
  type NotFilled,
} from './contract-texts.ts';
import { contractsOf, handOutsOf, type Owned } from './lookup.ts';
import styles from '../parts/forms.module.css';

type OwnContract = Owned<Contract, 'contract'>;

/** The contract of a machine's hire: the one that was last entered, another, or a new one. */
export function ContractScreen() {
  const { path, query } = useLocation();
  const key = fromPath('machine', path)?.key;
  const found = valueOf(useRecord<Machine>(key));
  const all = valueOf(
    useLive(`contracts ${key}`, ['contract/', 'demo/contract/'], async () =>
      ok(key === undefined ? [] : await contractsOf(key)),
    ),
  );
  const [fresh] = useState(newId);
  const [picked, setPicked] = useState<string>();
  const asked = picked ?? query['contract'];
  const chosen = all?.find((each) => each.key === asked) ?? (asked === another ? undefined : all?.[0]);
  // Value and stamp of one reading, so that a form never takes an old contract for the newest.
  const kept = valueOf(useRecord<Contract>(chosen?.key));
  if (key === undefined) return <Gone />;
  if (!found || !all || !kept) return <Screen title={words.title}>{null}</Screen>;
  if (!found.value) return <Gone />;
  const made = makeKey({ kind: 'contract', id: fresh, demo: isDemo(key) });
  return (
    <ContractForm
      key={chosen?.key ?? another}
      machineKey={key}
      machine={found.value}
      own={{ key: chosen?.key ?? made, value: kept.value ?? chosen?.value, stamp: kept.stamp }}
      all={all}
      onPick={setPicked}
    />
  );
}

const another = 'new';

interface ContractFormProps {
  readonly machineKey: RecordKey<'machine'>;
  readonly machine: Machine;
  readonly own: {
    readonly key: RecordKey<'contract'>;
    readonly value: Contract | undefined;
    readonly stamp: string | undefined;
  };
  readonly all: readonly OwnContract[];
  readonly onPick: (key: string) => void;
}

function ContractForm({ machineKey, machine, own, all, onPick }: ContractFormProps) {
  const { route, query } = useLocation();
  // Only to where this app leads: the address bar is anybody's to fill in.
  const { from = '' } = query;
  const walk = from.startsWith('/walk/') ? fromPath('walk', from)?.key : undefined;
  const back = walk === undefined ? machinePath(machineKey) : from;
  const { value, stamp } = own;
  const before = useMemo(() => value ?? newContract(machineKey, usualCurrency), [value, machineKey]);
  const draftKey = [
    ...(isDemo(machineKey) ? ['demo'] : []),
    ...['form', own.value === undefined ? `contract/of/${machineKey}` : own.key],
  ].join('/');
  const start = useMemo(() => contractTexts(before, stamp), [before, stamp]);
  const [texts, setTexts] = useDraft<ContractTexts>(draftKey, start);
  const [faults, setFaults] = useState<ContractFaults>([]);
  const change = (part: Partial<ContractTexts>): void => {
    setFaults([]);
    setTexts({ ...texts, ...part });
  };
  const form: FormProps = { texts, faults, change };
  const keep = async (): Promise<void> => {
    if (texts.base !== stamp) {
      // Said once; whoever saves again has been told.
      setTexts({ ...texts, base: stamp });
      return tell(forms.changedMeanwhile);
    }
    const made = contractOf(texts, before);
    if (!made.ok) {
      setFaults(made.error);
      tell(forms.mend);
      showFirstFault();
      return;
    }
    const saved = await save([put(own.key, made.value)], [draftKey]);
    if (!saved.ok) return tell(notSavedLine(saved.error));
    // A walk that is under way belongs to the contract from then on.
    const named = walk && (await changeUnsealed(walk, () => ({ contract: own.key })));
    if (named?.ok === false) tell(notSavedLine(named.error));
    else tell(named?.value === 'sealed' ? words.savedSealed : words.saved);
    route(back, true);
  };
  const drop = (): void => {
    const kept = texts;
    setTexts(start);
    void dropDraft(draftKey);
    tell(forms.dropped, () => setTexts({ ...kept, base: stamp }));
  };
  return (
    <Screen
      wide
      title={words.title}
      sub={machine.name}
      bar={
        <>
          <ButtonLink href={back}>{common.back}</ButtonLink>
          <Button look="main" onTap={() => void keep()}>
            {words.save}
          </Button>
        </>
      }
    >
      <p>{words.line}</p>
      {all.length > 0 && <Which all={all} chosen={own.key} onPick={onPick} />}
      <div class={styles.columns}>
        <div class={styles.form}>
          <WhoAndWhen {...form} />
          <Charges {...form} />
          <Rules {...form} />
          <HandOutOf machineKey={machineKey} {...form} />
        </div>
        <div class={styles.form}>
          <Prices machine={machine} {...form} />
          <Reckoning {...form} />
        </div>
      </div>
      <Button look="plain" onTap={drop}>
        {forms.drop}
      </Button>
    </Screen>
  );
}

/** The currency that the starting price lists are in. */
const usualCurrency = 'EUR';

interface WhichProps {
  readonly all: readonly OwnContract[];
  readonly chosen: string;
  readonly onPick: (key: string) => void;
}

function Which({ all, chosen, onPick }: WhichProps) {
  const label = ({ number, renter, from }: Contract): string =>
    [number ?? words.unnamed, renter, from].filter(Boolean).join(' · ');
  return (
    <Select
      label={words.which}
      chosen={all.some(({ key }) => key === chosen) ? chosen : another}
      options={[
        ...all.map(({ key, value }) => ({ value: key as string, label: label(value) })),
        { value: another, label: words.another },
      ]}
      onChoose={onPick}
    />
  );
}

/** What each part costs, filled in from the machine's price list where somebody wants that. */
function Prices({ machine, ...form }: FormProps & { readonly machine: Machine }) {
  const { texts, faults, change } = form;
  const latest = useRef(texts);
  latest.current = texts;
  const fill = async (): Promise<void> => {
    const costs = await costsOf(machine);
    // What was typed while the lists were read is kept.
    const filled = filledFrom(costs, machine.shape, latest.current);
    if (filled.ok) change(filled.value);
    tell(filled.ok ? words.filled : notFilledLine(filled.error, latest.current));
  };
  return (
    <Section title={words.prices}>
      <p class={styles.soft}>{words.pricesLine}</p>
      <Field
        label={words.currency}
        value={texts.currency}
        fault={faults.includes('currency') ? words.currencyWrong : undefined}
        onInput={(currency) => change(inCurrency(texts, currency.trim().toUpperCase()))}
      />
      <Button onTap={() => void fill()}>{words.fill}</Button>
      {pricedFor(machine.shape).map((what) => (
        <PartFields key={what} what={what} {...form} />
      ))}
    </Section>
  );
}

const notFilledLine = (why: NotFilled, { currency }: ContractTexts): string =>
  why.kind === 'no-list' ? words.cannotFill : words.otherCurrency(currency, why.list);

/** The prices and rates that the machine's jobs are reckoned by. */
async function costsOf(machine: Machine): Promise<ReturnType<typeof costsFor>> {
  const rows: Rows = new Map();
  const starting = startingCostsFor(machine);
  await take(rows, [machine.prices ?? starting.prices, machine.rates ?? starting.rates]);
  return costsFor(shelfOf(rows), await loadBuiltIn(), machine, starting);
}

/** Which hand-out walk the hire began with. */
function HandOutOf({ machineKey, texts, change }: FormProps & { readonly machineKey: string }) {
  const all = valueOf(
    useLive(`hand-outs ${machineKey}`, ['walk/', 'demo/walk/'], async () => ok(await handOutsOf(machineKey))),
  );
  const dates = makeDates(preferences.value.locale);
  if (!all || all.length === 0) return null;
  return (
    <Select
      label={words.handOut}
      chosen={texts.handOut}
      options={[
        { value: '', label: words.handOutLast },
        ...all.map(({ key, value: { finishedAt } }) => ({
          value: key as string,
          label: finishedAt ? dates.moment(finishedAt) : common.notKnown,
        })),
      ]}
      onChoose={(handOut) => change({ handOut })}
    />
  );
}
