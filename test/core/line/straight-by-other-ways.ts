// Two other ways to the straight axis that leaves most room, for tests and checks: exact by trying every set of rings
// that could hold it (in a plane), and numeric by a simplex that crawls (Nelder and Mead). They share no code with ours.
import type { Ring } from "../../../server/core/line/straightest-axis.ts";

/**
 * In a plane (all y equal) the least room of the best axis is the smallest over single rings (their room), pairs at one
 * z (mean room less the distance) and triples (mean weighted by the lever arms, less twice the sag): by Helly's theorem
 * three rings hold a line in a plane.
 */
export function mostRoomInPlane(rings: readonly Ring[]): number {
  let least = Math.min(...rings.map(({ room }) => room));
  for (const a of rings) {
    for (const b of rings) {
      if (a.z === b.z)
        least = Math.min(least, (a.room + b.room) / 2 - Math.abs(a.x - b.x));
      for (const c of rings) {
        if (!(a.z < b.z && b.z < c.z)) continue;
        const near = (c.z - b.z) / (2 * (c.z - a.z));
        const far = (b.z - a.z) / (2 * (c.z - a.z));
        const sag = near * a.x - b.x / 2 + far * c.x;
        least = Math.min(
          least,
          near * a.room + b.room / 2 + far * c.room - 2 * Math.abs(sag),
        );
      }
    }
  }
  return least;
}

/** The least room of the best of many axes: a grid of starts, each crawled downhill by Nelder and Mead, restarted. */
export function mostRoomBySearch(rings: readonly Ring[]): number {
  const [low, high] = [
    Math.min(...rings.map(({ z }) => z)),
    Math.max(...rings.map(({ z }) => z)),
  ];
  // an axis by its places at both ends of the line
  const leastOf = (ends: readonly number[]): number => {
    const [x0 = 0, y0 = 0, x1 = 0, y1 = 0] = ends;
    return Math.min(
      ...rings.map((ring) => {
        const share = (ring.z - low) / (high - low);
        return (
          ring.room -
          2 *
            Math.hypot(
              x0 + share * (x1 - x0) - ring.x,
              y0 + share * (y1 - y0) - ring.y,
            )
        );
      }),
    );
  };
  const size = Math.max(
    ...rings.flatMap(({ x, y, room }) => [
      Math.abs(x),
      Math.abs(y),
      Math.abs(room),
    ]),
  );
  let best = [0, 0, 0, 0];
  for (const x0 of [-1, 0, 1]) {
    for (const y0 of [-1, 0, 1]) {
      for (const x1 of [-1, 0, 1]) {
        for (const y1 of [-1, 0, 1]) {
          const start = [x0, y0, x1, y1].map((share) => (share * size) / 2);
          if (leastOf(best) < leastOf(start)) best = start;
        }
      }
    }
  }
  let step = size / 3;
  for (let round = 0; round < 60; round++) {
    const next = crawl((ends) => -leastOf(ends), best, step);
    step = leastOf(best) + 1e-4 * size < leastOf(next) ? step : step * 0.7;
    if (leastOf(best) < leastOf(next)) best = next;
  }
  return leastOf(best);
}

/** Nelder and Mead's simplex, 200 moves. */
function crawl(
  cost: (at: readonly number[]) => number,
  start: readonly number[],
  step: number,
): number[] {
  const simplex = [
    start,
    ...start.map((_, moved) =>
      start.map((x, axis) => (axis === moved ? x + step : x)),
    ),
  ].map((at) => ({ at, cost: cost(at) }));
  for (let move = 0; move < 200; move++) {
    simplex.sort((a, b) => a.cost - b.cost);
    const worst = simplex.at(-1);
    const [first, ...rest] = simplex;
    if (!worst || !first) break;
    const middle = start.map((_, axis) => {
      const sum = simplex
        .slice(0, -1)
        .reduce((total, { at }) => total + (at[axis] ?? 0), 0);
      return sum / (simplex.length - 1);
    });
    const along = (share: number) => {
      const at = middle.map(
        (x, axis) => x + share * ((worst.at[axis] ?? 0) - x),
      );
      return { at, cost: cost(at) };
    };
    const mirrored = along(-1);
    const candidate =
      mirrored.cost < first.cost
        ? [along(-2), mirrored].sort((a, b) => a.cost - b.cost)[0]
        : mirrored.cost < (simplex.at(-2)?.cost ?? Infinity)
          ? mirrored
          : [along(0.5), along(-0.5)].sort((a, b) => a.cost - b.cost)[0];
    if (candidate && candidate.cost < worst.cost) {
      simplex[simplex.length - 1] = candidate;
    } else {
      for (const [index, { at }] of rest.entries()) {
        const shrunk = at.map((x, axis) => (x + (first.at[axis] ?? 0)) / 2);
        simplex[index + 1] = { at: shrunk, cost: cost(shrunk) };
      }
    }
  }
  return [...(simplex.sort((a, b) => a.cost - b.cost)[0]?.at ?? start)];
}
