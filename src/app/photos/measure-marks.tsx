import { useRef, useState } from 'preact/hooks';
import type { PictureSize } from '../../core/photo-plane.ts';
import { measuring as words } from '../../words/en/photos.ts';
import { allMarks, scaleMarks, type MeasureDraft, type Put } from './measuring.ts';
import type { Frame, View } from './zoom.ts';
import styles from './photos.module.css';

/** Pixels of the screen for one of the picture. */
export const zoomOf = (size: PictureSize, view: View, frame: Frame): number =>
  view.scale * Math.min(frame.width / size.width, frame.height / size.height);

interface MarksProps {
  readonly draft: MeasureDraft;
  readonly size: PictureSize;
  readonly view: View;
  readonly frame: Frame;
  readonly address: string;
  readonly chosen: number;
  readonly onChoose: (n: number) => void;
  readonly onMove: (n: number, put: Put) => void;
}

/** What a mark is called: numbers for the scale, letters for what is measured. */
export const markName = (n: number, ofScale: number): string =>
  n < ofScale ? String(n + 1) : String.fromCharCode(65 + n - ofScale);

const steps: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/** A mark moved by pixels of the picture, within it. */
export function shifted({ at: [x, y] }: Put, dx: number, dy: number, size: PictureSize, zoom: number): Put {
  const within = (value: number, most: number): number =>
    Math.min(most, Math.max(0, Math.round(value * 10) / 10));
  return { at: [within(x + dx, size.width), within(y + dy, size.height)], zoom };
}

/** The marks over the picture, each a handle that is dragged or moved by arrow keys, and a magnifier. */
export function MeasureMarks({ draft, size, view, frame, address, chosen, onChoose, onMove }: MarksProps) {
  const zoom = zoomOf(size, view, frame);
  const [dragged, setDragged] = useState<number>();
  const from = useRef({ x: 0, y: 0 });
  const marks = allMarks(draft);
  const ofScale = scaleMarks(draft).length;
  const seen = ({ at: [x, y] }: Put): { x: number; y: number } => ({
    x: frame.width / 2 + view.x + (x - size.width / 2) * zoom,
    y: frame.height / 2 + view.y + (y - size.height / 2) * zoom,
  });
  const drag = (n: number, put: Put, event: PointerEvent): void => {
    if (dragged !== n) return;
    const [dx, dy] = [event.clientX - from.current.x, event.clientY - from.current.y];
    from.current = { x: event.clientX, y: event.clientY };
    event.stopPropagation();
    if (dx !== 0 || dy !== 0) onMove(n, shifted(put, dx / zoom, dy / zoom, size, zoom));
  };
  const line = (puts: readonly Put[]): string =>
    puts
      .filter((put) => put.zoom > 0)
      .map(seen)
      .map(({ x, y }) => `${x},${y}`)
      .join(' ');
  const held = dragged === undefined ? undefined : marks[dragged];
  return (
    // While a mark is still to be set, a tap means the picture under the handles.
    <div class={styles.marks} data-through={marks[chosen]?.zoom === 0}>
      <svg class={styles.lines} aria-hidden="true">
        <polygon points={line(scaleMarks(draft))} />
        <polyline points={line(draft.marks.slice(0, 2))} />
      </svg>
      {marks.map((put, n) => (
        <button
          key={n}
          type="button"
          class={styles.mark}
          data-quick
          data-put={put.zoom > 0}
          style={{ '--x': seen(put).x, '--y': seen(put).y }}
          aria-pressed={n === chosen}
          aria-label={`${n < ofScale ? words.scaleMark(n + 1) : words.sizeMark(markName(n, ofScale))}, ${put.zoom > 0 ? words.put : words.notPut}`}
          onFocus={() => onChoose(n)}
          onClick={() => onChoose(n)}
          onKeyDown={(event) => {
            const by = steps[event.key];
            if (!by) return;
            event.preventDefault();
            const far = event.shiftKey ? 10 : 1;
            onMove(n, shifted(put, by[0] * far, by[1] * far, size, zoom));
          }}
          onPointerDown={(event) => {
            event.stopPropagation();
            event.currentTarget.setPointerCapture(event.pointerId);
            from.current = { x: event.clientX, y: event.clientY };
            setDragged(n);
            onChoose(n);
          }}
          onPointerMove={(event) => drag(n, put, event)}
          onPointerUp={(event) => {
            event.stopPropagation();
            setDragged(undefined);
          }}
          onPointerCancel={() => setDragged(undefined)}
        >
          <span>{markName(n, ofScale)}</span>
        </button>
      ))}
      {held && (
        <Magnifier
          put={held}
          size={size}
          zoom={3 * zoom}
          address={address}
          right={seen(held).x < frame.width / 2}
        />
      )}
    </div>
  );
}

interface MagnifierProps {
  readonly put: Put;
  readonly size: PictureSize;
  readonly zoom: number;
  readonly address: string;
  readonly right: boolean;
}

/** What lies under the finger, three times as large. */
function Magnifier({ put: { at }, size, zoom, address, right }: MagnifierProps) {
  const place = {
    '--x': at[0] * zoom,
    '--y': at[1] * zoom,
    '--w': size.width * zoom,
    '--h': size.height * zoom,
  };
  return (
    <div class={styles.magnifier} data-right={right}>
      <img src={address} alt="" style={place} />
    </div>
  );
}
