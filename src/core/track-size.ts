/** A rubber track by its designation. */
export interface TrackSize {
  readonly widthMm: number;
  readonly pitchMm: number;
  readonly links: number;
  /** Length of the loop, pitch × links. */
  readonly loopMm: number;
}

/**
 * Reads a designation as moulded on the inner face, width × pitch × number of links in mm, as in
 * `300x52.5x84` (How to measure rubber tracks, Imara Engineering Supplies). What follows it, such as a
 * suffix letter, is left alone. Undefined for a text that is none.
 */
export function parseTrackSize(text: string): TrackSize | undefined {
  const found =
    /^\s*(\d{2,4}(?:[.,]\d+)?)\s*[x×*]\s*(\d{2,3}(?:[.,]\d+)?)\s*[A-Z]{0,2}\s*[x×*]\s*(\d{1,3})(?!\d)/i.exec(
      text,
    );
  if (!found) return undefined;
  const [widthMm, pitchMm, links] = found.slice(1).map((part) => Number(part.replace(',', '.')));
  if (widthMm === undefined || pitchMm === undefined || links === undefined || links === 0) return undefined;
  return { widthMm, pitchMm, links, loopMm: pitchMm * links };
}
