import { step as words } from '../../words/en/walk.ts';
import { Button } from './button.tsx';
import styles from './stepper.module.css';

interface StepperProps {
  readonly label: string;
  readonly value: number;
  readonly least: number;
  readonly most: number;
  readonly onChange: (value: number) => void;
}

/** A small whole number, set with two big keys. */
export function Stepper({ label, value, least, most, onChange }: StepperProps) {
  return (
    <div class={styles.box} role="group" aria-label={label}>
      <span>{label}</span>
      <span class={styles.row}>
        <Button quick label={words.fewer} disabled={value <= least} onTap={() => onChange(value - 1)}>
          −
        </Button>
        <output>{value}</output>
        <Button quick label={words.more} disabled={value >= most} onTap={() => onChange(value + 1)}>
          +
        </Button>
      </span>
    </div>
  );
}
