/** An entry of a bundle that is not what its directory says, or that cannot be read. */
export class BrokenEntry extends Error {
  override name = 'BrokenEntry';
}
