// What is chosen at random and comes again: the same seed gives the same inputs on every machine.
import { evenFrom } from "../seeded.mjs";

export interface Random {
  /** A whole number from 0, below `end`; 0 where `end` is 0. */
  below(end: number): number;
  /** One of a list. @throws RangeError for an empty one */
  pick<T>(list: readonly T[]): T;
  chance(share: number): boolean;
}

export function randomFrom(seed: number): Random {
  const next = evenFrom(seed);
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
