import type { JSX } from 'preact';
import { isRubber, type Shape, type Side } from '../../core/machine.ts';
import { walk } from '../../words/en/walk.ts';
import { drawing } from './track-shape.ts';
import styles from './track-map.module.css';

/** A part of the map that can be tapped. */
export type Zone = 'front' | 'top' | 'track' | 'under' | 'rear';

export interface ZoneState {
  readonly label: string;
  readonly here: boolean;
  /** Nothing read, some, all fine, or something that needs more than `run`. */
  readonly mark: 'none' | 'partly' | 'done' | 'needs';
}

interface TrackMapProps {
  readonly shape: Shape;
  readonly side: Side;
  readonly zones?: Partial<Record<Zone, ZoneState>>;
  readonly onZone?: (zone: Zone) => void;
}

const marks: Record<ZoneState['mark'], JSX.Element | null> = {
  none: null,
  partly: <path class={styles.tick} d="M-6 0h12" />,
  done: <path class={styles.tick} d="M-7 0l5 6 9-11" />,
  needs: <path class={styles.bad} d="M-3 -9h6l-1.5 11h-3zM-2.2 5h4.4v4.4h-4.4z" />,
};

/** The undercarriage seen from its side, drawn from this machine's own shape; the front looks outwards. */
export function TrackMap({ shape, side, zones = {}, onZone }: TrackMapProps) {
  const { loop, parts, frame, boxes, width, height } = drawing(shape);
  // Seen from its left the machine looks to the left, seen from its right to the right.
  const flip = side === 'right' ? `translate(${width} 0) scale(-1 1)` : undefined;
  const at = (x: number): number => (side === 'right' ? width - x : x);
  return (
    <svg class={styles.map} viewBox={`0 0 ${width} ${height}`} role="group" aria-label={walk.map}>
      <g transform={flip} aria-hidden="true">
        <path class={styles.frame} d={frame} />
        <path class={`${styles.loop} ${isRubber(shape) ? '' : styles.links}`} d={loop} />
        {parts.map(({ x, y, r, teeth }) => (
          <g key={`${x}-${y}`}>
            <circle class={styles.part} cx={x} cy={y} r={r} stroke-dasharray={teeth ? '5 3' : undefined} />
            <circle class={styles.part} cx={x} cy={y} r={Math.max(2, r / 4)} />
          </g>
        ))}
        <path class={styles.arrow} d="M2 74l10 -7v14z" />
      </g>
      {(Object.keys(boxes) as Zone[]).map((zone) => {
        const state = zones[zone];
        if (!state || !onZone) return null;
        const box = boxes[zone];
        const left = side === 'right' ? width - box.x - box.w : box.x;
        return (
          <g
            key={zone}
            class={`${styles.zone} ${state.here ? styles.here : ''}`}
            role="button"
            tabIndex={0}
            aria-label={state.label}
            aria-current={state.here ? 'step' : undefined}
            onClick={() => onZone(zone)}
            onKeyDown={(event) => {
              if (event.key === 'Enter' || event.key === ' ') onZone(zone);
            }}
          >
            <rect class={styles.hit} x={left} y={box.y} width={box.w} height={box.h} />
            {state.mark !== 'none' && (
              <g
                transform={`translate(${at(box.x + box.w / 2)} ${box.y + (zone === 'under' ? box.h - 13 : 13)})`}
              >
                <circle class={styles.badge} r="12" />
                {marks[state.mark]}
              </g>
            )}
          </g>
        );
      })}
    </svg>
  );
}
