import { signal, type ReadonlySignal } from '@preact/signals';

/** What was just done, said once, perhaps with a way back. */
export interface Notice {
  readonly text: string;
  readonly undo?: () => unknown;
}

const shownMs = 4000;
const undoMs = 10_000;
const shown = signal<Notice | undefined>(undefined);
let timer: ReturnType<typeof setTimeout> | undefined;

export const notice: ReadonlySignal<Notice | undefined> = shown;

/** Says what was done, on whatever screen comes next; with `undo` it can be taken back while it stands there. */
export function tell(text: string, undo?: () => unknown): void {
  clearTimeout(timer);
  shown.value = undo === undefined ? { text } : { text, undo };
  timer = setTimeout(hush, undo === undefined ? shownMs : undoMs);
}

export function hush(): void {
  clearTimeout(timer);
  shown.value = undefined;
}
