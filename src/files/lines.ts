/** One line, or what says that it is longer than any of ours. */
export type Line = Uint8Array | 'too-long';

const newline = 0x0a;

const joined = (parts: readonly Uint8Array[]): Uint8Array => {
  const whole = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
};

/**
 * Cuts a stream of bytes into lines, however the stream is cut itself; never holds more than one line and one
 * chunk. Ends after a line that is too long.
 */
export async function* linesOf(chunks: AsyncIterable<Uint8Array>, most: number): AsyncGenerator<Line> {
  let kept: Uint8Array[] = [];
  let length = 0;
  for await (const chunk of chunks) {
    let from = 0;
    for (;;) {
      const end = chunk.indexOf(newline, from);
      const piece = chunk.subarray(from, end < 0 ? chunk.length : end);
      length += piece.length;
      if (length > most) {
        yield 'too-long';
        return;
      }
      kept.push(piece);
      if (end < 0) break;
      yield joined(kept);
      [kept, length, from] = [[], 0, end + 1];
    }
  }
  if (length > 0) yield joined(kept);
}
