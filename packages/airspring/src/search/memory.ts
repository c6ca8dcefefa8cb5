/** A function that makes its value for each key when it is first asked for it. */
export function memory<K, V>(make: (key: K) => V): (key: K) => V {
  const known = new Map<K, V>();
  return (key) => {
    if (!known.has(key)) known.set(key, make(key));
    return known.get(key) as V;
  };
}
