/** The entry of a table under a name that came from a file; `constructor` and its like are no entries. */
export const entry = <T>(table: Readonly<Record<string, T>>, name: string): T | undefined =>
  Object.hasOwn(table, name) ? table[name] : undefined;
