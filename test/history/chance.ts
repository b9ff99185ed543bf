// How many of a number there may be by chance, each with the same chance: exact binomial sums.

/** The share of worlds in which a test that holds a bound fails all the same. */
const SELDOM = 0.001;

/** The most that chance gives but for one time in a thousand. */
export function mostOf(count: number, chance: number): number {
  let below = 0;
  for (let most = 0; most < count; most++) {
    below += shareOf(most, count, chance);
    if (1 - below < SELDOM) return most;
  }
  return count;
}

/** The fewest that chance gives but for one time in a thousand. */
export function leastOf(count: number, chance: number): number {
  return count - mostOf(count, 1 - chance);
}

/** The chance of just so many. */
function shareOf(hits: number, count: number, chance: number): number {
  let log = hits * Math.log(chance) + (count - hits) * Math.log(1 - chance);
  for (let each = 1; each <= hits; each++)
    log += Math.log((count - hits + each) / each);
  return Math.exp(log);
}
