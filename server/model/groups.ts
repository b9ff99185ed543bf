// Things put together by what they share, in the order in which they were met. It knows nothing of what they are.

/** The items by their key, each group in its order; those without a key are left out. */
export function groupedBy<T, K>(
  items: Iterable<T>,
  keyOf: (item: T) => K | undefined,
): ReadonlyMap<K, readonly T[]> {
  const groups = new Map<K, T[]>();
  for (const item of items) {
    const key = keyOf(item);
    if (key === undefined) continue;
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [item]);
    else group.push(item);
  }
  return groups;
}

/** Every item by itself, but those of one reason together, where the first of them stands. */
export function sharingReason<T>(
  items: readonly T[],
  reasonOf: (item: T) => string | undefined,
): readonly (readonly T[])[] {
  const groups = groupedBy(items, reasonOf);
  return items.flatMap((item): readonly (readonly T[])[] => {
    const reason = reasonOf(item);
    if (reason === undefined) return [[item]];
    const group = groups.get(reason) ?? [];
    return group[0] === item ? [group] : [];
  });
}
