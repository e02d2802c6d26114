import { useEffect, useRef } from 'preact/hooks';
import type { LengthUnit } from '../../core/quantity.ts';
import { pad } from '../../words/en/pad.ts';
import { unitShort } from '../../words/en/choices.ts';
import { typedHints } from '../../words/en/typed.ts';
import styles from './pad.module.css';

export interface PadField {
  readonly id: string;
  readonly label: string;
  /** What a screen reader says instead of a label that is not shown. */
  readonly name?: string | undefined;
  readonly text: string;
}

interface PadProps {
  readonly fields: readonly PadField[];
  readonly active: number;
  /** Absent where whole things are counted. */
  readonly unit: LengthUnit | undefined;
  /** The value to compare with, as a sentence. */
  readonly last: string | undefined;
  readonly onText: (at: number, text: string) => void;
  readonly onActive: (at: number) => void;
  /** Next or Enter: to the next field, and from the last one to the reading. */
  readonly onNext: () => void;
}

const rows = [
  ['7', '8', '9'],
  ['4', '5', '6'],
  ['1', '2', '3'],
] as const;

/**
 * Big keys for gloves and, in the same fields, a real keyboard or a caliper that types like one. The system
 * keyboard stays away; the field keeps its text as typed.
 */
export function Pad({ fields, active, unit, last, onText, onActive, onNext }: PadProps) {
  const inputs = useRef<(HTMLInputElement | null)[]>([]);
  const id = fields[active]?.id;
  useEffect(() => inputs.current[active]?.focus({ preventScroll: true }), [active, id]);
  const text = fields[active]?.text ?? '';
  const press = (key: string): void => onText(active, `${text}${key}`);
  const erase = (): void => onText(active, text.slice(0, -1));
  const fraction = unit === 'in/16';
  return (
    <div class={styles.pad}>
      <div class={styles.fields}>
        {fields.map((field, at) => (
          <label key={field.id} class={styles.field}>
            <span class={styles.unit}>{field.label}</span>
            <span class={`${styles.box} ${at === active ? styles.active : ''}`}>
              <input
                ref={(input) => {
                  inputs.current[at] = input;
                }}
                type="text"
                aria-label={field.name}
                inputMode="none"
                autocomplete="off"
                enterkeyhint="next"
                value={field.text}
                onInput={(event) => onText(at, event.currentTarget.value)}
                onFocus={() => onActive(at)}
                onKeyDown={(event) => {
                  if (event.key === 'Enter' && !event.repeat) onNext();
                }}
              />
              <span class={styles.unit}>{unit && unitShort[unit]}</span>
            </span>
          </label>
        ))}
      </div>
      <div class={styles.under}>
        <span>{text === '' ? unit && typedHints[unit] : pad.draft}</span>
        {last !== undefined && <span>{last}</span>}
      </div>
      <Keys fraction={fraction} press={press} erase={erase} />
    </div>
  );
}

interface KeysProps {
  readonly fraction: boolean;
  readonly press: (key: string) => void;
  readonly erase: () => void;
}

function Keys({ fraction, press, erase }: KeysProps) {
  // Keeping the focus in the field lets keys, caliper and screen be mixed.
  const keep = (event: PointerEvent): void => event.preventDefault();
  const key = (name: string, label: string, tap: () => void) => (
    <button
      key={label}
      type="button"
      class={styles.key}
      aria-label={label}
      onPointerDown={keep}
      onClick={tap}
    >
      {name}
    </button>
  );
  const digit = (each: string) => key(each, pad.digit(each), () => press(each));
  const point = key('.', pad.point, () => press('.'));
  const ends = fraction
    ? [
        key('⌫', pad.erase, erase),
        key('/', pad.slash, () => press('/')),
        key('␣', pad.space, () => press(' ')),
      ]
    : [key('⌫', pad.erase, erase), digit('0'), point];
  return (
    <div class={styles.keys} data-quick>
      {rows.map((row, i) => [row.map(digit), ends[i]])}
      {fraction && [digit('0'), point]}
    </div>
  );
}
