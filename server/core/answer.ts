// What a function of the engineering returns: a value, or the reason why it has none.
// It never returns NaN, null or a number from outside its range.

/** A value, or why there is none. */
export type Answer<T> =
  | { readonly valid: true; readonly value: T }
  | {
      readonly valid: false;
      /** One plain sentence (no full stop) that completes "not valid here, because …". */
      readonly because: string;
      /** What sort of reason it is, where that decides what is made of it. */
      readonly sort?: "no-film" | undefined;
    };

export function valid<T>(value: T): Answer<T> {
  return { valid: true, value };
}

export function notValid(because: string, sort?: "no-film"): Answer<never> {
  return { valid: false, because, ...(sort === undefined ? {} : { sort }) };
}
