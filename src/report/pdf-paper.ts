/** Paper sizes in points, as width and height: ISO 216 and ANSI A. */
export const papers = {
  a4: { width: 595.28, height: 841.89 },
  letter: { width: 612, height: 792 },
} as const;
export type Paper = keyof typeof papers;

/** Where the text stands on the page, in points from its edges; left of it runs the margin with the marks. */
export const margins = { left: 80, right: 46, top: 62, bottom: 60 } as const;

/** The line that the margin ends at, from the left edge of the text. */
export const marginLine = -12;

/** Sizes of type with the distance from line to line, in points. */
export const type = {
  title: { size: 21, leading: 25 },
  section: { size: 13.5, leading: 17 },
  part: { size: 10.5, leading: 14 },
  call: { size: 16, leading: 20 },
  partCall: { size: 12, leading: 15 },
  lead: { size: 11.5, leading: 16 },
  body: { size: 9.5, leading: 13.5 },
  table: { size: 8.6, leading: 11.6 },
  small: { size: 7.8, leading: 10.6 },
} as const;
/** In points. */
export interface TypeSize {
  readonly size: number;
  readonly leading: number;
}
