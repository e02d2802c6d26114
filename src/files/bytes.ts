/** Reads numbers out of bytes that may be anything: beyond the end there are zeros. */
export const byteAt = (bytes: Uint8Array, at: number): number => bytes[at] ?? 0;

export const u16 = (bytes: Uint8Array, at: number): number => byteAt(bytes, at) * 256 + byteAt(bytes, at + 1);

export const u32 = (bytes: Uint8Array, at: number): number => u16(bytes, at) * 65_536 + u16(bytes, at + 2);

/** Little end first. */
export const u16le = (bytes: Uint8Array, at: number): number =>
  byteAt(bytes, at) + byteAt(bytes, at + 1) * 256;

export const u32le = (bytes: Uint8Array, at: number): number =>
  u16le(bytes, at) + u16le(bytes, at + 2) * 65_536;

/** `length` bytes as Latin-1 text. */
export const textAt = (bytes: Uint8Array, at: number, length: number): string =>
  String.fromCharCode(...bytes.subarray(at, at + length));
