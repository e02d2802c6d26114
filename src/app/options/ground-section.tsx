import {
  bearing,
  contactKinds,
  contactLengthMm,
  kpaPerPsi,
  sinkageShare,
  type GroundLimit,
} from '../../core/ground-pressure.ts';
import { isRubber, type Machine } from '../../core/machine.ts';
import { standardGravity } from '../../core/quantity.ts';
import { parseCount, parseLength } from '../../core/typed.ts';
import { contactSources, groundLimits, usualPressures } from '../../reference/ground-pressure.ts';
import { unitNames } from '../../words/en/choices.ts';
import {
  bearingWords,
  contactWords,
  groundOpenWords,
  groundPressure as words,
  groundSizeWords,
  groundWords,
  usualPressureWords,
} from '../../words/en/ground.ts';
import { formatter } from '../data/format.ts';
import { preferences } from '../data/preferences.ts';
import { useDraft } from '../data/use-draft.ts';
import { Choices } from '../parts/choices.tsx';
import { Facts } from '../parts/facts.tsx';
import { Fold } from '../parts/fold.tsx';
import { NumberField } from '../parts/number-field.tsx';
import { SourceLine } from '../parts/source-line.tsx';
import styles from '../parts/forms.module.css';
import {
  countOf,
  emptyGround,
  kindOf,
  meanAnswer,
  peakAnswer,
  recordWidthMm,
  sizesMm,
  sizesOf,
  type GroundForm,
  type GroundOpen,
  type GroundSize,
  type MeanAnswer,
  type PeakAnswer,
} from './ground-form.ts';
import { StillOpen } from './haul-cards.tsx';
import { shownLength } from './haul-form.ts';
import { mass } from './haul-text.ts';

interface GroundSectionProps {
  readonly draftKey: string;
  readonly machine: Machine | undefined;
  readonly massKg: number | undefined;
}

/** Pressure on the ground, folded away until it is wanted. */
export const GroundSection = (props: GroundSectionProps) => (
  <Fold title={words.title} line={words.line}>
    <Ground {...props} />
  </Fold>
);

interface FormProps {
  readonly form: GroundForm;
  readonly setForm: (form: GroundForm) => void;
  readonly machine: Machine | undefined;
}

function Ground({ draftKey, machine, massKg }: GroundSectionProps) {
  const [form, setForm] = useDraft<GroundForm>(draftKey, emptyGround);
  const kind = kindOf(form);
  const mm = sizesMm(form, machine);
  const isBelt = machine !== undefined && isRubber(machine.shape);
  const asked: readonly GroundSize[] = [
    'width',
    ...sizesOf[kind],
    ...(isBelt ? [] : (['pitch', 'diameter'] as const)),
  ];
  const mean = meanAnswer(kind, mm, massKg);
  return (
    <div class={styles.columns}>
      <div class={styles.form}>
        <p>{words.lead}</p>
        <Choices
          title={words.kind}
          options={contactKinds.map((value) => ({ value, ...contactWords[value] }))}
          chosen={kind}
          onChoose={(next) => setForm({ ...form, kind: next })}
        />
        {[...new Set(asked)].map((name) => (
          <SizeInput key={name} name={name} {...{ form, setForm, machine }} />
        ))}
        {!isBelt && <CountInput {...{ form, setForm, machine }} />}
      </div>
      <div class={styles.form}>
        <MeanCard mean={mean} />
        <PeakCard peak={peakAnswer(mm, massKg, countOf(form, machine), isBelt)} mean={mean} />
      </div>
    </div>
  );
}

function SizeInput({ name, form, setForm, machine }: FormProps & { name: GroundSize }) {
  const unit = preferences.value.length === 'mm' ? 'mm' : 'in';
  const format = formatter.value;
  const typed = form.sizes[name];
  const record = name === 'width' && typed === undefined ? recordWidthMm(machine) : undefined;
  return (
    <NumberField
      label={`${groundSizeWords[name].label}, ${unitNames[unit].label}`}
      text={record === undefined ? shownLength(typed, unit) : format.field(record, unit)}
      hint={record === undefined ? undefined : words.widthFromSize}
      parse={(text) => parseLength(text, unit)}
      spell={({ mm }) => format.field(mm, unit)}
      onInput={(text) => setForm({ ...form, sizes: { ...form.sizes, [name]: { text, unit } } })}
    />
  );
}

function CountInput({ form, setForm, machine }: FormProps) {
  const record = form.count === undefined ? machine?.shape.bottomRollers : undefined;
  return (
    <NumberField
      whole
      label={words.rollers}
      text={form.count ?? String(record ?? '')}
      hint={record === undefined ? undefined : words.rollersFromShape}
      parse={parseCount}
      spell={String}
      onInput={(count) => setForm({ ...form, count })}
    />
  );
}

const nameOf = (open: GroundOpen): string =>
  open === 'mass' || open === 'count' ? groundOpenWords[open] : groundSizeWords[open].name;

const shown = (value: number): string => formatter.value.number(Math.round(value * 10) / 10);

const usualSources = [...new Set(usualPressures.map(({ source }) => source))];

/** How the mean is reached, line by line, and what is usual. */
function MeanCard({ mean }: { mean: MeanAnswer }) {
  const { number } = formatter.value;
  return (
    <div class={styles.card}>
      <h3>{words.mean}</h3>
      {mean.kind === 'open' ? (
        <StillOpen names={mean.open.map(nameOf)} />
      ) : (
        <>
          <MeanLines mean={mean} />
          <SourceLine source={contactSources[mean.contact.kind]} />
          <p>{words.sameWay}</p>
        </>
      )}
      <h3>{words.usual}</h3>
      {usualSources.map((source) => (
        <div key={source.text}>
          <Facts
            facts={usualPressures
              .filter((each) => each.source === source)
              .map(({ machine, lowKpa, highKpa }) => [
                usualPressureWords[machine],
                words.range(number(Math.round(lowKpa)), number(Math.round(highKpa))),
              ])}
          />
          <SourceLine source={source} />
        </div>
      ))}
    </div>
  );
}

function MeanLines({ mean }: { mean: Extract<MeanAnswer, { kind: 'mean' }> }) {
  const { contact, massKg, widthMm, kpa } = mean;
  const { length, number } = formatter.value;
  const lengthMm = contactLengthMm(contact);
  const area = `${number((2 * widthMm * lengthMm) / 1e6)}\u00a0m²`;
  return (
    <>
      <p class={styles.strong}>{words.both(shown(kpa), number(Math.round((kpa / kpaPerPsi) * 100) / 100))}</p>
      <p>
        {contact.kind === 'centres-sinkage'
          ? words.lengthOf(
              length(contact.centresMm),
              number(sinkageShare),
              length(contact.trackHeightMm),
              length(lengthMm),
            )
          : words.length(length(lengthMm))}
      </p>
      <p>{words.area(length(widthMm), length(lengthMm), area)}</p>
      <p>{words.pressure(mass(massKg), number(standardGravity), area)}</p>
    </>
  );
}

const limitOf = (limit: GroundLimit, at: keyof typeof bearingWords): number =>
  at === 'over' ? limit.most : limit[at];

/** Peaks and where they stand among what soft ground bears; for ranking. */
function PeakCard({ peak, mean }: { peak: PeakAnswer; mean: MeanAnswer }) {
  return (
    <div class={styles.card}>
      <h3>{words.peaks}</h3>
      {peak.kind === 'open' && <StillOpen names={peak.open.map(nameOf)} />}
      {peak.kind === 'rubber' && <p>{words.peakRubber}</p>}
      {peak.kind === 'peak' && (
        <>
          <p class={styles.strong}>
            {mean.kind === 'mean'
              ? words.peakOf(shown(peak.kpa), shown(peak.kpa / mean.kpa))
              : words.peak(shown(peak.kpa))}
          </p>
          <p>{words.peakOnly}</p>
          <h3>{words.soft}</h3>
          <Facts
            facts={groundLimits.map((limit) => {
              const at = bearing(limit, peak.kpa);
              return [groundWords[limit.ground], bearingWords[at](shown(limitOf(limit, at)))];
            })}
          />
          {groundLimits.slice(0, 1).map(({ ground, source }) => (
            <SourceLine key={ground} source={source} />
          ))}
        </>
      )}
    </div>
  );
}
