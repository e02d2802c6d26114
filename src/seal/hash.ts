/** The SHA-256 of bytes, or of a text as UTF-8, as 64 hexadecimal digits. */
export async function sha256Hex(input: Uint8Array<ArrayBuffer> | string): Promise<string> {
  const bytes = typeof input === 'string' ? new TextEncoder().encode(input) : input;
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
  return Array.from(digest, (byte) => byte.toString(16).padStart(2, '0')).join('');
}
