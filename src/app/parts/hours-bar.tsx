import type { Interval } from '../../core/hours-left.ts';
import styles from './hours-bar.module.css';

interface HoursBarProps {
  readonly left: Interval;
  /** Hours at the right end; what is beyond runs out of the bar as an arrow. */
  readonly most: number;
  readonly label: string;
}

const width = 300;

/** Hours left as a hatched range with a mark at its middle, from now on the left. */
export function HoursBar({ left, most, label }: HoursBarProps) {
  const at = (hours: number): number => (Math.min(hours, most) / most) * (width - 12) + 2;
  const [low, middle, high] = [at(left.low), at(left.middle), at(left.high)];
  return (
    <svg
      class={styles.bar}
      viewBox={`0 0 ${width} 28`}
      preserveAspectRatio="none"
      role="img"
      aria-label={label}
    >
      <defs>
        <pattern id="range" width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <rect width="3.5" height="7" fill="currentColor" />
        </pattern>
      </defs>
      <path class={styles.line} d={`M2 14H${width - 8}`} />
      <path class={styles.now} d="M2 2V26" />
      <rect
        class={styles.range}
        x={low}
        y="6"
        width={Math.max(3, high - low)}
        height="16"
        fill="url(#range)"
      />
      {left.high > most && (
        <path class={styles.more} d={`M${width - 9} 5L${width - 1} 14L${width - 9} 23Z`} />
      )}
      {left.middle <= most && <path class={styles.middle} d={`M${middle} 1V27`} />}
    </svg>
  );
}
