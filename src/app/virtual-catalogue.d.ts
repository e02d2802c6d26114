declare module 'virtual:catalogue' {
  /** The plain sentences, by the place that the build gave them; empty until they are read. */
  export const $texts: unknown[];
  /** The address of the JSON file that holds them. */
  export const address: string;
}
