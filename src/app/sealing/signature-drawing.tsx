import styles from './sealing.module.css';
import { padRatio, type Stroke } from './strokes.ts';

const size = 1000;

const pointsOf = (stroke: Stroke): string =>
  // A dot is a line without a length: its round ends make it seen.
  (stroke.length === 2 ? [...stroke, ...stroke] : stroke).map((each) => Math.round(each * size)).join(' ');

/** A signature as it was drawn, in the ink of the text. */
export const SignatureDrawing = ({ strokes, label }: { strokes: readonly Stroke[]; label: string }) => (
  <svg class={styles.drawing} viewBox={`0 0 ${size} ${size * padRatio}`} role="img" aria-label={label}>
    {strokes.map((stroke, at) => (
      <polyline key={at} points={pointsOf(stroke)} />
    ))}
  </svg>
);
