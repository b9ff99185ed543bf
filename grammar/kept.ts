// What is kept of lines that were read, up to a count: past it all of it is forgotten, so that a long day of editing takes no more memory than
// a long record does.

/** Keeps a value under a key; where there are as many as may be kept, the others go. */
export function keepIn<Value>(
  kept: Map<string, Value>,
  most: number,
  key: string,
  value: Value,
): void {
  if (most <= kept.size) kept.clear();
  kept.set(key, value);
}
