// Numbers drawn from a seed and a key: the same on every machine, and each independent of what else was drawn. For tests alone.

export interface Draws {
  /** Even over 0 to 1, the end left out. */
  readonly even: () => number;
  /** Even over a range. */
  readonly between: (low: number, high: number) => number;
  /** Normal. */
  readonly normal: (mean: number, deviation: number) => number;
  readonly chance: (share: number) => boolean;
  readonly oneOf: <T>(list: readonly [T, ...T[]]) => T;
}

/** Draws for one key, such as `[seed, "record", 12]`. */
export function drawsFor(...key: readonly (string | number)[]): Draws {
  const even = splitMix(hashOf(key.join("\u{0}")));
  const draws: Draws = {
    even,
    between: (low, high) => low + (high - low) * even(),
    // Box and Muller's pair, one half of it
    normal: (mean, deviation) =>
      mean +
      deviation *
        Math.sqrt(-2 * Math.log(1 - even())) *
        Math.cos(2 * Math.PI * even()),
    chance: (share) => even() < share,
    oneOf: (list) => list[Math.floor(even() * list.length)] ?? list[0],
  };
  return draws;
}

/** FNV-1a over the UTF-16 units, 32 bits (the published offset and prime). */
function hashOf(text: string): number {
  let hash = 0x811c9dc5;
  for (let at = 0; at < text.length; at++)
    hash = Math.imul(hash ^ text.charCodeAt(at), 0x01000193);
  return mixed(hash);
}

/** A counter whose bits are mixed, the splitmix generator in 32 bits; two of its words give the 53 bits of a double. */
function splitMix(seed: number): () => number {
  let state = seed;
  const word = (): number => {
    state = (state + 0x9e3779b9) | 0;
    return mixed(state);
  };
  return () => {
    const [high, low] = [word() >>> 5, word() >>> 6];
    return (high * 0x4000000 + low) / 0x20000000000000;
  };
}

function mixed(word: number): number {
  let bits = word;
  bits = Math.imul(bits ^ (bits >>> 16), 0x85ebca6b);
  bits = Math.imul(bits ^ (bits >>> 13), 0xc2b2ae35);
  return (bits ^ (bits >>> 16)) >>> 0;
}
