import styles from './wear-bar.module.css';

interface WearBarProps {
  readonly percent: number;
  /** Half the width of the interval, in percent. */
  readonly expanded: number;
  readonly label: string;
}

/** The bar shows up to half as much again as the limit; what is beyond stands at its end. */
const most = 150;
const place = (percent: number): number => (Math.min(most, Math.max(0, percent)) / most) * 300;

/** Wear as the length of a bar, hatched past the limit, with a whisker for its uncertainty. */
export function WearBar({ percent, expanded, label }: WearBarProps) {
  const [end, limit] = [place(percent), place(100)];
  const past = Math.max(0, end - limit);
  return (
    <svg class={styles.bar} viewBox="0 0 300 24" preserveAspectRatio="none" role="img" aria-label={label}>
      <defs>
        <pattern id="past" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <rect width="3" height="6" fill="currentColor" />
        </pattern>
      </defs>
      <rect class={styles.track} x="0" y="4" width="300" height="16" />
      <rect x="0" y="4" width={Math.min(end, limit)} height="16" fill="currentColor" />
      {past > 0 && <rect class={styles.past} x={limit} y="4" width={past} height="16" fill="url(#past)" />}
      <line class={styles.limit} x1={limit} x2={limit} y1="0" y2="24" />
      <path class={styles.whisker} d={`M${place(percent - expanded)} 12H${place(percent + expanded)}`} />
    </svg>
  );
}
