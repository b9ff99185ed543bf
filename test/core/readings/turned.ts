// A lobed part turned against flat contacts, as geometry: the outline as many points, each contact a straight edge that touches the
// outermost of them. No formula of server/core is used, so it can check the factors there.

export interface Outline {
  readonly radius: number;
  /** Half of radial roundness. */
  readonly amplitude: number;
  readonly lobes: number;
}

const points = 7200;

/** How far the outline, turned by `turn`, reaches in direction `angle` (radians) from its centre. */
function reach(
  { radius, amplitude, lobes }: Outline,
  turn: number,
  angle: number,
): number {
  let most = -Infinity;
  // a low lobe touches near the direction itself: a fiftieth of a turn to each side is ample
  for (let i = -points / 50; i <= points / 50; i++) {
    const at = angle + (i / points) * 2 * Math.PI;
    const r = radius + amplitude * Math.cos(lobes * (at - turn));
    most = Math.max(most, r * Math.cos(at - angle));
  }
  return most;
}

/** The swing of `reading` while the part turns by one lobe, after which all repeats. */
function swing({ lobes }: Outline, reading: (turn: number) => number): number {
  const steps = 48;
  const all = Array.from({ length: steps }, (_, i) =>
    reading((i / steps) * ((2 * Math.PI) / lobes)),
  );
  return Math.max(...all) - Math.min(...all);
}

/** What a micrometer shows with the outline turned by `turn`. */
export function twoPointDiameter(outline: Outline, turn: number): number {
  return reach(outline, turn, 0) + reach(outline, turn, Math.PI);
}

export function twoPointSwing(outline: Outline): number {
  return swing(outline, (turn) => twoPointDiameter(outline, turn));
}

/** In a vee of included angle `vee` that opens upward; the indicator is a flat above or below. */
export function veeSwing(
  outline: Outline,
  vee: number,
  indicator: "opposite" | "between",
): number {
  const up = Math.PI / 2;
  // outward directions of the two faces, seen from the part
  const left = up + (Math.PI / 2 + vee / 2);
  const right = up - (Math.PI / 2 + vee / 2);
  return swing(outline, (turn) => {
    // the centre (x, y) rests so that each face is touched: x·cos + y·sin + reach = 0 in both directions, faces through the origin
    const [a, b] = [reach(outline, turn, left), reach(outline, turn, right)];
    const [ca, sa, cb, sb] = [
      Math.cos(left),
      Math.sin(left),
      Math.cos(right),
      Math.sin(right),
    ];
    const y = (-ca * b + cb * a) / (ca * sb - cb * sa);
    return indicator === "opposite"
      ? y + reach(outline, turn, up)
      : reach(outline, turn, -up) - y;
  });
}

/** A bore seen from within: three contacts at thirds of a turn grow alike and centre themselves; the reading is a diameter. */
export function threeContactSwing(outline: Outline): number {
  const { radius, amplitude, lobes } = outline;
  const thirds = [0, 1, 2].map((i) => (i * 2 * Math.PI) / 3);
  return swing(outline, (turn) => {
    // by Newton on centre (x, y) and contact radius p: each contact tip lies on the outline
    let [x, y, p] = [0, 0, radius];
    for (let step = 0; step < 8; step++) {
      const gaps = thirds.map((angle) => {
        const [px, py] = [x + p * Math.cos(angle), y + p * Math.sin(angle)];
        return (
          radius +
          amplitude * Math.cos(lobes * (Math.atan2(py, px) - turn)) -
          Math.hypot(px, py)
        );
      });
      const part = (f: (angle: number) => number): number =>
        gaps.reduce((sum, gap, i) => sum + gap * f((i * 2 * Math.PI) / 3), 0);
      x += (2 / 3) * part(Math.cos);
      y += (2 / 3) * part(Math.sin);
      p += part(() => 1 / 3);
    }
    return 2 * p;
  });
}
