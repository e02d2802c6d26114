import type { BuiltIn } from '../../core/assemble.ts';

/** Sheets, rule sets and tools that come with the app, in a file of their own so that the first screen is small. */
export const loadBuiltIn = (): Promise<BuiltIn> =>
  import('../../reference/built-in.ts').then(({ builtIn }) => builtIn);
