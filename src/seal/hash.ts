/** Bytes as hexadecimal digits, two each. */
export const hexOf = (bytes: Uint8Array): string =>
  Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');

/** The SHA-256 of bytes, or of a text as UTF-8, as 64 hexadecimal digits. */
export async function sha256Hex(input: Uint8Array<ArrayBuffer> | string): Promise<string> {
  const bytes = typeof input === 'string' ? new TextEncoder().encode(input) : input;
  return hexOf(new Uint8Array(await crypto.subtle.digest('SHA-256', bytes)));
}
