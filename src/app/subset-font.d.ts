declare module 'subset-font' {
  /** Cuts a font down to the characters of `text`; the answer is a font file. */
  const subsetFont: (
    font: Uint8Array,
    text: string,
    options: {
      readonly targetFormat: 'truetype';
      readonly noHinting?: boolean;
      readonly dropTables?: readonly string[];
    },
  ) => Promise<Uint8Array>;
  export default subsetFont;
}
