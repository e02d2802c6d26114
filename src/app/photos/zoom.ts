/** How a picture lies in its frame: how much larger than whole, and how far its middle is off, in pixels. */
export interface View {
  readonly scale: number;
  readonly x: number;
  readonly y: number;
}

export const wholeView: View = { scale: 1, x: 0, y: 0 };
const largest = 12;

/** Width and height of the frame in pixels of the screen. */
export interface Frame {
  readonly width: number;
  readonly height: number;
}

const clamp = (value: number, most: number): number => Math.min(most, Math.max(-most, value));

/** The picture never leaves its frame by more than it is larger than that. */
function kept({ scale, x, y }: View, { width, height }: Frame): View {
  const over = (scale - 1) / 2;
  return { scale, x: clamp(x, width * over), y: clamp(y, height * over) };
}

/** Zooms about a point of the frame, counted from its middle in pixels. */
export function zoomed(
  view: View,
  by: number,
  frame: Frame,
  about: { readonly x: number; readonly y: number } = { x: 0, y: 0 },
): View {
  const scale = Math.min(largest, Math.max(1, view.scale * by));
  const grown = scale / view.scale;
  const at = (from: number, point: number): number => point - (point - from) * grown;
  return kept({ scale, x: at(view.x, about.x), y: at(view.y, about.y) }, frame);
}

/** Moves the picture by pixels of the frame. */
export const moved = (view: View, dx: number, dy: number, frame: Frame): View =>
  kept({ ...view, x: view.x + dx, y: view.y + dy }, frame);
