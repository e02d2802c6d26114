import type { ComponentChildren } from 'preact';
import type { Ties } from '../../core/hauling-ties.ts';
import { articleSum, deckSum, wholeSum, type Haul, type HaulField } from '../../core/hauling.ts';
import {
  haulHolds,
  haulRules,
  loadedMassSource,
  operatorMass,
  regions,
  usTies,
  type Region,
} from '../../reference/hauling.ts';
import { haulCautions, hauling as words, haulOnWords, regionWords } from '../../words/en/hauling.ts';
import { tell } from '../data/notice.ts';
import { Button } from '../parts/button.tsx';
import { Choices, Toggle } from '../parts/choices.tsx';
import { Section } from '../parts/screen.tsx';
import { SourceLine } from '../parts/source-line.tsx';
import styles from '../parts/forms.module.css';
import walk from '../screens/walk.module.css';
import { RatingsCard, RuleCard, SumCard } from './haul-cards.tsx';
import { LengthField, MassFields, TieFields, type HaulForms } from './haul-fields.tsx';
import { emptyLoad, emptyRig } from './haul-form.ts';
import { HoldsCard, TieCards } from './tie-cards.tsx';

interface HaulSectionsProps extends HaulForms {
  readonly region: Region;
  readonly haul: Haul;
  readonly ties: Ties;
}

const haulOns = ['trailer', 'truck'] as const;

const loadFields: readonly HaulField[] = ['machine', 'attachments', 'fuel', 'chains'];
const vehicleFields: Readonly<Record<Haul['on'], readonly HaulField[]>> = {
  trailer: ['trailer', 'trailer-gross', 'trailer-payload', 'truck', 'nose', 'truck-gross', 'truck-tow'],
  truck: ['truck', 'truck-gross', 'truck-payload'],
};

/** What is typed on one side, what follows from it beside or under it. */
const Pair = ({ children }: { children: ComponentChildren }) => <div class={styles.columns}>{children}</div>;

const optionsOf = <T extends string>(
  values: readonly T[],
  said: Readonly<Record<T, { readonly label: string; readonly line: string }>>,
) => values.map((value) => ({ value, ...said[value] }));

/** The form of a haul with its answers, in the order in which one walks up to it. */
export function HaulSections(props: HaulSectionsProps) {
  const { rig, setRig, region, haul } = props;
  return (
    <>
      <Pair>
        <Choices
          title={words.region}
          narrow
          options={optionsOf(regions, regionWords)}
          chosen={region}
          onChoose={(next) => setRig({ ...rig, region: next })}
        />
        <Choices
          title={words.on}
          narrow
          options={optionsOf(haulOns, haulOnWords)}
          chosen={haul.on}
          onChoose={(on) => setRig({ ...rig, on })}
        />
      </Pair>
      <LoadSection {...props} />
      <VehicleSection {...props} />
      <Section title={words.law}>
        <Pair>
          {haulRules[region].map((rule) => (
            <RuleCard key={rule.rule} haul={haul} rule={rule} />
          ))}
        </Pair>
      </Section>
      <TieSection {...props} />
      <Section title={words.beforeRoad}>
        <ul class={walk.lines}>
          {haulCautions.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      </Section>
      <Clear {...props} />
    </>
  );
}

function LoadSection({ haul, ...forms }: HaulSectionsProps) {
  const { load, setLoad } = forms;
  return (
    <Section title={words.load}>
      <Pair>
        <div class={styles.form}>
          <MassFields fields={loadFields.slice(0, 1)} {...forms} />
          <Toggle
            label={words.operator}
            line={words.operatorLine}
            on={load.noOperator !== true}
            onTap={() => setLoad({ ...load, noOperator: load.noOperator !== true })}
          />
          <SourceLine source={operatorMass.source} />
          <MassFields fields={loadFields.slice(1)} {...forms} />
        </div>
        <SumCard title={words.onDeck} sum={deckSum(haul)} source={loadedMassSource} />
      </Pair>
    </Section>
  );
}

function VehicleSection({ haul, ...forms }: HaulSectionsProps) {
  const { rig, setRig } = forms;
  const isTowing = haul.on === 'trailer';
  return (
    <Section title={isTowing ? words.vehicles : words.truck}>
      <Pair>
        <div class={styles.form}>
          <MassFields fields={vehicleFields[haul.on]} {...forms} />
          {isTowing && !haul.noCombination && <MassFields fields={['combination']} {...forms} />}
          {isTowing && (
            <Toggle
              label={words.noCombination}
              on={haul.noCombination}
              onTap={() => setRig({ ...rig, noCombination: !haul.noCombination })}
            />
          )}
        </div>
        <div class={styles.form}>
          <SumCard title={words.onRoad} sum={wholeSum(haul)} source={loadedMassSource} />
          <RatingsCard haul={haul} />
        </div>
      </Pair>
    </Section>
  );
}

/** Counting ties is United States law; elsewhere stands what they must hold. */
function TieSection({ haul, region, ties, ...forms }: HaulSectionsProps) {
  const article = articleSum(haul);
  const isCounted = region === 'us';
  const holds = (
    <HoldsCard {...haulHolds[region]} article={article} note={isCounted ? undefined : words.holdsAbroad} />
  );
  return (
    <Section title={words.ties}>
      {isCounted ? (
        <Pair>
          <div class={styles.form}>
            <TieFields {...forms} />
            <LengthField {...forms} />
          </div>
          <div class={styles.form}>
            <TieCards rules={usTies} article={article} ties={ties} />
            {holds}
          </div>
        </Pair>
      ) : (
        holds
      )}
    </Section>
  );
}

/** Empties both forms, and brings them back if that was a slip. */
function Clear({ rig, load, setRig, setLoad }: HaulForms) {
  const clear = (): void => {
    setRig(emptyRig);
    setLoad(emptyLoad);
    tell(words.cleared, () => {
      setRig(rig);
      setLoad(load);
    });
  };
  return (
    <Button look="plain" onTap={clear}>
      {words.clear}
    </Button>
  );
}
