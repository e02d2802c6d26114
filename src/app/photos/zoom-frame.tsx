import type { ComponentChildren } from 'preact';
import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks';
import { photos as words } from '../../words/en/photos.ts';
import { Button } from '../parts/button.tsx';
import { moved, wholeView, zoomed, type Frame, type View } from './zoom.ts';
import styles from './photos.module.css';

const step = 1.6;
const wheelStep = 1.15;
const panShare = 0.25;

const focusTools = (tools: HTMLElement | null): void =>
  tools?.querySelector<HTMLElement>('button:enabled')?.focus({ preventScroll: true });

const arrows: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [1, 0],
  ArrowRight: [-1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

interface ZoomFrameProps {
  readonly label: string;
  readonly children: ComponentChildren;
  /** What lies over the picture and keeps its size. */
  readonly over?: (view: View, frame: Frame) => ComponentChildren;
  /** A tap that moved nothing, in pixels of the frame from its middle. */
  readonly onTap?: (at: Point, view: View, frame: Frame) => void;
}

interface Point {
  readonly x: number;
  readonly y: number;
}

/** A finger that moved less than this meant to tap. */
const stillPx = 6;

/** A frame in which a picture is enlarged and moved: by two fingers, by dragging, and by buttons alone. */
export function ZoomFrame({ label, children, over, onTap }: ZoomFrameProps) {
  const [view, setView] = useState<View>(wholeView);
  const frame = useRef<HTMLDivElement>(null);
  const tools = useRef<HTMLDivElement>(null);
  const isWhole = view.scale === 1;
  const wasClose = useRef(false);
  useLayoutEffect(() => {
    // What was tapped last may be gone now, and the next key with it.
    if (isWhole && wasClose.current) focusTools(tools.current);
    wasClose.current = !isWhole;
  }, [isWhole]);
  const fingers = useRef(new Map<number, { x: number; y: number }>());
  const size = (): { width: number; height: number } => ({
    width: frame.current?.clientWidth ?? 1,
    height: frame.current?.clientHeight ?? 1,
  });
  const down = useRef<Point>({ x: 0, y: 0 });
  const [shown, setShown] = useState<Frame>();
  useEffect(() => {
    if (!frame.current) return undefined;
    const watch = new ResizeObserver(() => setShown(size()));
    watch.observe(frame.current);
    return () => watch.disconnect();
  }, []);
  const tapped = (event: PointerEvent): void => {
    const { x, y } = down.current;
    const isStill = Math.hypot(event.clientX - x, event.clientY - y) < stillPx;
    if (!onTap || !frame.current || !isStill || fingers.current.size !== 1) return;
    const box = frame.current.getBoundingClientRect();
    const at = { x: event.clientX - box.x - box.width / 2, y: event.clientY - box.y - box.height / 2 };
    onTap(at, view, size());
  };
  const pan = (x: number, y: number): void => {
    const { width, height } = size();
    setView((now) => moved(now, x * width * panShare, y * height * panShare, { width, height }));
  };
  const keys = (event: KeyboardEvent): void => {
    const arrow = arrows[event.key];
    if (arrow) pan(...arrow);
    else if (event.key === '+' || event.key === '=') setView((now) => zoomed(now, step, size()));
    else if (event.key === '-') setView((now) => zoomed(now, 1 / step, size()));
    else if (event.key === '0') setView(wholeView);
    else return;
    event.preventDefault();
  };
  const onMove = (event: PointerEvent): void => {
    const before = fingers.current.get(event.pointerId);
    if (!before || !frame.current) return;
    const [other] = [...fingers.current].filter(([id]) => id !== event.pointerId).map(([, at]) => at);
    const now = { x: event.clientX, y: event.clientY };
    fingers.current.set(event.pointerId, now);
    if (!other) return setView((view) => moved(view, now.x - before.x, now.y - before.y, size()));
    const apart = (at: { x: number; y: number }): number => Math.hypot(at.x - other.x, at.y - other.y) || 1;
    const box = frame.current.getBoundingClientRect();
    const about = {
      x: (now.x + other.x) / 2 - box.x - box.width / 2,
      y: (now.y + other.y) / 2 - box.y - box.height / 2,
    };
    setView((view) => zoomed(view, apart(now) / apart(before), size(), about));
  };
  const onEnd = (event: PointerEvent): void => void fingers.current.delete(event.pointerId);
  return (
    <>
      <div
        ref={frame}
        class={styles.frame}
        role="group"
        aria-label={label}
        onPointerDown={(event) => {
          focusTools(tools.current);
          down.current = { x: event.clientX, y: event.clientY };
          fingers.current.set(event.pointerId, down.current);
          event.currentTarget.setPointerCapture(event.pointerId);
        }}
        onPointerMove={onMove}
        onPointerUp={(event) => {
          tapped(event);
          onEnd(event);
        }}
        onPointerCancel={onEnd}
        onWheel={(event) => {
          event.preventDefault();
          const box = event.currentTarget.getBoundingClientRect();
          const about = {
            x: event.clientX - box.x - box.width / 2,
            y: event.clientY - box.y - box.height / 2,
          };
          setView((view) => zoomed(view, event.deltaY < 0 ? wheelStep : 1 / wheelStep, size(), about));
        }}
      >
        <div class={styles.moved} style={{ '--x': view.x, '--y': view.y, '--scale': view.scale }}>
          {children}
        </div>
        {shown && over?.(view, shown)}
      </div>
      <div
        ref={tools}
        class={styles.tools}
        role="toolbar"
        aria-label={words.zoomTools}
        tabIndex={-1}
        onKeyDown={keys}
      >
        <Button
          quick
          disabled={isWhole}
          label={words.smaller}
          onTap={() => setView((now) => zoomed(now, 1 / step, size()))}
        >
          −
        </Button>
        <Button disabled={isWhole} onTap={() => setView(wholeView)}>
          {words.whole}
        </Button>
        <Button quick label={words.larger} onTap={() => setView((now) => zoomed(now, step, size()))}>
          +
        </Button>
        {!isWhole &&
          Object.entries(arrows).map(([key, by]) => (
            <Button
              key={key}
              quick
              label={words.moves[key as keyof typeof words.moves]}
              onTap={() => pan(...by)}
            >
              {words.arrows[key as keyof typeof words.arrows]}
            </Button>
          ))}
      </div>
    </>
  );
}
