/** Puts one more into the list under a key; a copy for each would cost the square of them. */
export function addTo<K, T>(lists: Map<K, T[]>, key: K, each: T): void {
  const list = lists.get(key);
  if (list) list.push(each);
  else lists.set(key, [each]);
}
