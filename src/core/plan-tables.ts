/**
 * A number for each set of visits. A set is the index, with bit v for visit v, so that the sets without a visit and
 * those with it are blocks that lie side by side.
 */
export type Table = Float64Array;

/** Adds to each set the least of `costs` over its visits; the last of them is that of no visit, open to every set. */
export function addLeast(table: Table, costs: readonly number[], scratch: Table): void {
  const visits = costs.length - 1;
  scratch[0] = costs[visits] ?? Infinity;
  for (let v = 0; v < visits; v += 1) {
    const [cost, size] = [costs[v] ?? Infinity, 1 << v];
    for (let set = 0; set < size; set += 1) {
      const least = scratch[set] ?? 0;
      scratch[size + set] = least < cost ? least : cost;
    }
  }
  addTable(table, scratch);
}

/** Adds to each set the sum of `prices` over its visits. */
export function addSum(table: Table, prices: readonly number[], scratch: Table): void {
  scratch[0] = 0;
  for (const [v, price] of prices.entries()) {
    const size = 1 << v;
    for (let set = 0; set < size; set += 1) scratch[size + set] = (scratch[set] ?? 0) + price;
  }
  addTable(table, scratch);
}

/** Adds set by set. */
export function addTable(table: Table, other: Table): void {
  for (let set = 0; set < table.length; set += 1) table[set] = (table[set] ?? 0) + (other[set] ?? 0);
}

/** Gives each set the least number of all sets within it. */
export function leastWithin(table: Table): void {
  for (let bit = 1; bit < table.length; bit *= 2)
    for (let block = bit; block < table.length; block += 2 * bit)
      for (let set = block; set < block + bit; set += 1) {
        const least = table[set - bit] ?? 0;
        if (least < (table[set] ?? 0)) table[set] = least;
      }
}

/** The set within `set` from which `leastWithin` took its number; of several one without the later visits. */
export function sourceOf(table: Table, set: number): number {
  let source = set;
  for (let bit = table.length / 2; bit >= 1; bit /= 2)
    if ((source & bit) !== 0 && table[source - bit] === table[source]) source -= bit;
  return source;
}

/** The set with the least number; of several the one whose last visits are earliest. */
export function leastSet(table: Table): number {
  let least = 0;
  for (let set = 1; set < table.length; set += 1) if ((table[set] ?? 0) < (table[least] ?? 0)) least = set;
  return least;
}

/** All visits that are in some set with a number below `under`. */
export function visitsBelow(table: Table, under: number): number {
  let all = 0;
  for (let set = 0; set < table.length; set += 1) if ((table[set] ?? 0) < under) all |= set;
  return all;
}
