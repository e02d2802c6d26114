declare module 'virtual:data/*' {
  /** The address of a JSON file that the build made of checked data. */
  const url: string;
  export default url;
}
