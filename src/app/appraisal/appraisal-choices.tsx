import { useState } from 'preact/hooks';
import {
  askedSigns,
  mostHoursAhead,
  type AppraisalSettings,
  type AskedSign,
  type ValuedKind,
} from '../../core/appraisal-settings.ts';
import { err } from '../../core/result.ts';
import { parseCount, type Typed } from '../../core/typed.ts';
import { appraisal as words, askedSignWords, partWords } from '../../words/en/appraisal.ts';
import { capital } from '../../words/outcome-text.ts';
import { formatter } from '../data/format.ts';
import { Choices } from '../parts/choices.tsx';
import { Fold } from '../parts/fold.tsx';
import { NumberField } from '../parts/number-field.tsx';
import { Section } from '../parts/screen.tsx';

interface ChoicesProps {
  readonly settings: AppraisalSettings;
  /** The kinds of part that this machine has and that are measured. */
  readonly kinds: readonly ValuedKind[];
  readonly onChange: (settings: AppraisalSettings) => void;
}

const counted =
  (least: number, most: number) =>
  (text: string): Typed<number> => {
    const read = parseCount(text);
    return read.ok && (read.value < least || read.value > most) ? err({ kind: 'too-large' }) : read;
  };

interface NumberProps {
  readonly label: string;
  readonly hint?: string;
  readonly value: number | undefined;
  readonly range: readonly [least: number, most: number];
  readonly onNumber: (value: number | undefined) => void;
}

/** A whole number that counts as soon as it can be read. */
function Whole({ label, hint, value, range, onNumber }: NumberProps) {
  const [typed, setTyped] = useState<string>();
  const parse = counted(...range);
  return (
    <NumberField
      label={label}
      hint={hint}
      whole
      text={typed ?? (value === undefined ? '' : String(value))}
      parse={parse}
      spell={String}
      onInput={(text) => {
        setTyped(text);
        const read = parse(text);
        if (read.ok) onNumber(read.value);
        else if (text.trim() === '') onNumber(undefined);
      }}
    />
  );
}

const percent = [0, 100] as const;
const ahead = [1, mostHoursAhead] as const;

/** What the sums lean on; each change answers at once. */
export function AppraisalChoices({ settings, kinds, onChange }: ChoicesProps) {
  const { saleable, sets, hours, priceSpread } = settings;
  const change = (part: Partial<AppraisalSettings>): void => onChange({ ...settings, ...part });
  return (
    <Fold title={words.choices}>
      <Whole
        label={words.saleable}
        hint={words.saleableHint}
        value={saleable}
        range={percent}
        onNumber={(value) => value !== undefined && change({ saleable: value })}
      />
      <Choices
        title={words.sets}
        options={[
          { value: 'worst', label: words.setsWorst },
          { value: 'each', label: words.setsEach },
        ]}
        chosen={sets}
        onChoose={(value) => change({ sets: value })}
      />
      <Whole
        label={words.hours}
        hint={words.hoursHint(formatter.value.hours(mostHoursAhead))}
        value={hours}
        range={ahead}
        onNumber={(value) => value !== undefined && change({ hours: value })}
      />
      <Whole
        label={words.priceSpread}
        hint={words.priceSpreadHint}
        value={priceSpread}
        range={percent}
        onNumber={(value) => value !== undefined && change({ priceSpread: value })}
      />
      <Condition settings={settings} kinds={kinds} onChange={onChange} />
    </Fold>
  );
}

/** The condition that somebody states, by percent left or by hours. */
function Condition({ settings, kinds, onChange }: ChoicesProps) {
  const { stated } = settings;
  const change = (next: AppraisalSettings['stated']): void => onChange({ ...settings, stated: next });
  return (
    <>
      <Choices
        title={words.condition}
        options={[
          { value: 'percent', label: words.byPercent },
          { value: 'hours', label: words.byHours },
        ]}
        chosen={stated.kind}
        onChoose={(kind) =>
          change(kind === 'percent' ? { kind, percent: 50 } : { kind, hours: settings.hours })
        }
      />
      {stated.kind === 'hours' ? (
        <Whole
          key="hours"
          label={words.noDue}
          value={stated.hours}
          range={ahead}
          onNumber={(value) => value !== undefined && change({ ...stated, hours: value })}
        />
      ) : (
        <>
          <Whole
            key="percent"
            label={words.percentLeft}
            value={stated.percent}
            range={percent}
            onNumber={(value) => value !== undefined && change({ ...stated, percent: value })}
          />
          {kinds.length > 1 &&
            kinds.map((kind) => (
              <Whole
                key={kind}
                label={words.percentOf(partWords[kind] ?? kind)}
                hint={words.sameAsAll}
                value={stated.of?.[kind]}
                range={percent}
                onNumber={(value) => {
                  const { [kind]: _before, ...others } = stated.of ?? {};
                  change({ ...stated, of: { ...others, ...(value !== undefined && { [kind]: value }) } });
                }}
              />
            ))}
        </>
      )}
    </>
  );
}

/** Signs that somebody has to look for. */
export function LookFor({ settings, onChange }: Omit<ChoicesProps, 'kinds'>) {
  const say = (sign: AskedSign, value: 'yes' | 'no'): void =>
    onChange({ ...settings, seen: { ...settings.seen, [sign]: value } });
  return (
    <Section title={words.lookFor}>
      <p>{words.lookLine}</p>
      {askedSigns.map((sign) => (
        <Choices
          key={sign}
          narrow
          title={capital(askedSignWords[sign])}
          options={[
            { value: 'yes', label: words.yes },
            { value: 'no', label: words.no },
          ]}
          chosen={settings.seen[sign]}
          onChoose={(value) => say(sign, value)}
        />
      ))}
    </Section>
  );
}
