import { useId, useRef, useState } from 'preact/hooks';
import { padWords as words } from '../../words/en/sealing.ts';
import { Button } from '../parts/button.tsx';
import { SignatureDrawing } from './signature-drawing.tsx';
import styles from './sealing.module.css';
import { padRatio, tidied, type Stroke } from './strokes.ts';

interface SignaturePadProps {
  readonly label: string;
  readonly strokes: readonly Stroke[];
  readonly fault?: string | undefined;
  readonly onChange: (strokes: readonly Stroke[]) => void;
}

/** One stroke that goes on for minutes stops growing here; what is tidied of it is far less. */
const mostRawNumbers = 20_000;
/** Nearer than this is the same point: a resting finger trembles. */
const least = 0.001;

const clamp = (value: number, most: number): number => Math.min(most, Math.max(0, value));

/** Where a finger was between two frames; some engines know only where it is now. */
function passed(event: PointerEvent): readonly PointerEvent[] {
  const all = 'getCoalescedEvents' in event ? event.getCoalescedEvents() : [];
  return all.length > 0 ? all : [event];
}

function extended(stroke: Stroke, event: PointerEvent, pad: DOMRect): Stroke {
  const x = clamp((event.clientX - pad.left) / pad.width, 1);
  const y = clamp((event.clientY - pad.top) / pad.width, padRatio);
  const [lastX = -1, lastY = -1] = stroke.slice(-2);
  const isSame = Math.hypot(x - lastX, y - lastY) < least;
  return isSame || stroke.length >= mostRawNumbers ? stroke : [...stroke, x, y];
}

/** The strokes of whoever draws: one pointer at a time, the hand that rests beside it draws nothing. */
function useDrawing(strokes: readonly Stroke[], onChange: (strokes: readonly Stroke[]) => void) {
  const [current, setCurrent] = useState<Stroke>([]);
  const drawing = useRef<{ readonly pointer: number; stroke: Stroke } | undefined>(undefined);
  const add = (event: PointerEvent): void => {
    const now = drawing.current;
    if (now?.pointer !== event.pointerId) return;
    const pad = (event.currentTarget as Element).getBoundingClientRect();
    now.stroke = passed(event).reduce((stroke, each) => extended(stroke, each, pad), now.stroke);
    setCurrent(now.stroke);
  };
  const start = (event: PointerEvent): void => {
    if (drawing.current || event.button !== 0) return;
    event.preventDefault();
    (event.currentTarget as Element).setPointerCapture(event.pointerId);
    drawing.current = { pointer: event.pointerId, stroke: [] };
    add(event);
  };
  const end = (event: PointerEvent): void => {
    const now = drawing.current;
    if (now?.pointer !== event.pointerId) return;
    drawing.current = undefined;
    setCurrent([]);
    if (now.stroke.length > 0) onChange(tidied([...strokes, now.stroke]));
  };
  const on = { onPointerDown: start, onPointerMove: add, onPointerUp: end, onPointerCancel: end };
  return [current.length > 0 ? [...strokes, current] : strokes, on] as const;
}

/** A field to sign in with finger, glove, pen or mouse; who cannot draw signs by the typed name instead. */
export function SignaturePad({ label, strokes, fault, onChange }: SignaturePadProps) {
  const id = useId();
  const [cleared, setCleared] = useState<readonly Stroke[]>([]);
  const [shown, on] = useDrawing(strokes, onChange);
  const clear = (): void => {
    setCleared(strokes);
    onChange([]);
  };
  const isEmpty = shown.length === 0;
  return (
    <div class={styles.padBox}>
      <span id={id} class={styles.label}>
        {label}
      </span>
      <div class={styles.pad} data-pad {...on}>
        <SignatureDrawing strokes={shown} label={isEmpty ? words.nothing(label) : words.drawn(label)} />
        {isEmpty && <span class={styles.here}>{words.here}</span>}
      </div>
      {fault !== undefined && (
        <span class={styles.fault} data-fault tabIndex={-1}>
          {fault}
        </span>
      )}
      {isEmpty && cleared.length > 0 ? (
        <Button look="plain" onTap={() => onChange(cleared)}>
          {words.putBack}
        </Button>
      ) : (
        <Button look="plain" disabled={isEmpty} onTap={clear}>
          {words.clear}
        </Button>
      )}
    </div>
  );
}
