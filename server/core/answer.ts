// What a function of the engineering returns: a value, or the reason why it has none.
// It never returns NaN, null or a number from outside its range.

/** A value, or one plain sentence (no full stop) that completes "not valid here, because …". */
export type Answer<T> =
  | { readonly valid: true; readonly value: T }
  | { readonly valid: false; readonly because: string };

export function valid<T>(value: T): Answer<T> {
  return { valid: true, value };
}

export function notValid(because: string): Answer<never> {
  return { valid: false, because };
}
