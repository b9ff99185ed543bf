// Numbers that look random and come again: the same seed gives the same inputs on every machine.

export interface Random {
  /** A whole number from 0, below `end`; 0 where `end` is 0. */
  below(end: number): number;
  /** One of a list. @throws RangeError for an empty one */
  pick<T>(list: readonly T[]): T;
  chance(share: number): boolean;
}

/** Mulberry32 (public domain, from memory): 32 bits of state are plenty for choosing where to break a text. */
export function randomFrom(seed: number): Random {
  let state = seed >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 0x1_0000_0000;
  };
  const below = (end: number): number => Math.floor(next() * end);
  return {
    below,
    pick(list) {
      const picked = list[below(list.length)];
      if (picked === undefined) throw new RangeError("nothing to pick from");
      return picked;
    },
    chance: (share) => next() < share,
  };
}
