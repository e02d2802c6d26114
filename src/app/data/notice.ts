import { signal, type ReadonlySignal } from '@preact/signals';

/** What was just done, said once, perhaps with a way back or on. */
export interface Notice {
  readonly text: string;
  readonly undo?: () => unknown;
  /** What to do next, where it needs one more tap. */
  readonly next?: { readonly label: string; readonly onTap: () => unknown };
}

const leastMs = 4000;
/** Slow enough for somebody who reads with the sun on the screen. */
const letterMs = 90;
const undoMs = 10_000;
const shown = signal<Notice | undefined>(undefined);
let timer: ReturnType<typeof setTimeout> | undefined;

export const notice: ReadonlySignal<Notice | undefined> = shown;

/** Says what was done, on whatever screen comes next; with `undo` it can be taken back while it stands there. */
export function tell(text: string, undo?: () => unknown): void {
  show(undo === undefined ? { text } : { text, undo });
}

/** Says what needs one more tap, which has to be made by the person. */
export const askToTap = (text: string, label: string, onTap: () => unknown): void =>
  show({ text, next: { label, onTap } });

function show(next: Notice): void {
  clearTimeout(timer);
  shown.value = next;
  const readMs = Math.max(leastMs, next.text.length * letterMs);
  timer = setTimeout(hush, next.undo || next.next ? Math.max(undoMs, readMs) : readMs);
}

export function hush(): void {
  clearTimeout(timer);
  shown.value = undefined;
}
