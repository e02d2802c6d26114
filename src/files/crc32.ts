// The polynomial of zip, PNG and Ethernet (ISO 3309), bits reversed.
const polynomial = 0xedb88320;

const table = Uint32Array.from({ length: 256 }, (_, byte) => {
  let rest = byte;
  for (let bit = 0; bit < 8; bit += 1) rest = rest & 1 ? (rest >>> 1) ^ polynomial : rest >>> 1;
  return rest;
});

/** CRC-32 over bytes that follow those with the checksum `before`; 0 stands for none. Against accidents only. */
export function crc32(bytes: Uint8Array, before = 0): number {
  let rest = ~before;
  for (const byte of bytes) rest = (rest >>> 8) ^ (table[(rest ^ byte) & 0xff] ?? 0);
  return ~rest >>> 0;
}

/** Eight hex digits. */
export const crcText = (crc: number): string => crc.toString(16).padStart(8, '0');
