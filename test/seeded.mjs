// Numbers that look random and come again: the same seed gives the same ones on every machine. What is drawn with them is whoever draws's.

/** Mulberry32 (public domain, from memory): even numbers from 0, below 1. Its 32 bits of state are plenty for tests. */
export function evenFrom(seed) {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}
