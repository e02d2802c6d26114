/** Random numbers with a seed, the same on every machine. */
export interface Random {
  /** From 0 up to 1. */
  readonly uniform: () => number;
  readonly normal: () => number;
}

/** mulberry32 (T. Ettinger, public domain), and Box and Muller (1958) for the normal ones. */
export function randomOf(seed: number): Random {
  let state = seed;
  const uniform = (): number => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
  const normal = (): number => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
  return { uniform, normal };
}
