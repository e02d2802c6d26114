import encodeQr from 'qr';

/** A QR code as a drawing: one step a module, a quiet zone of four modules on each side (ISO/IEC 18004). */
export interface QrPath {
  readonly size: number;
  /** SVG path of the dark modules, each row in runs. */
  readonly path: string;
}

const quiet = 4;

/** Draws the code of a text; a quarter of it may be dirty or worn off and it still reads. */
export function qrPath(content: string): QrPath {
  const rows = encodeQr(content, 'raw', { ecc: 'medium', border: quiet });
  const runs = rows.flatMap((row, y) =>
    row.flatMap((dark, x) => {
      if (!dark || row[x - 1]) return [];
      const end = row.indexOf(false, x);
      const length = (end < 0 ? row.length : end) - x;
      return [`M${x} ${y}h${length}v1h-${length}z`];
    }),
  );
  return { size: rows.length, path: runs.join('') };
}
