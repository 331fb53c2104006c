/** A function that remembers what it made of what. */
export function kept<K, V>(make: (of: K) => V): (of: K) => V {
  const values = new Map<K, V>();
  return (of) => {
    if (!values.has(of)) values.set(of, make(of));
    return values.get(of)!;
  };
}
