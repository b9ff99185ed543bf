// The straight axis that leaves most room at the tightest of many rings: the minimax problem behind a shaft in line.
// It doesn't own bores, journals or what the answer means; lengths of any one unit go in and come out.

export interface Ring {
  /** Along the axis */
  readonly z: number;
  readonly x: number;
  readonly y: number;
  /** Diametral room for the axis where it is central; may be below zero */
  readonly room: number;
}

/** x = atX + slopeX·z, y = atY + slopeY·z */
export interface Axis {
  readonly atX: number;
  readonly atY: number;
  readonly slopeX: number;
  readonly slopeY: number;
}

export interface Straightest {
  readonly axis: Axis;
  /** Least over the rings of room − 2·(distance of the axis from the ring's centre) */
  readonly least: number;
  /** No axis leaves more than this, by convex duality */
  readonly bound: number;
  /** How hard each ring pushes at the optimum, 0 to 1, together 1: those that push hold the axis where it is */
  readonly pushes: readonly number[];
}

/**
 * Maximises g over the axis so that |axis(z) − centre| ≤ (room − g)/2 at every ring: a second-order cone programme in
 * five unknowns, convex, so no optimum but the best. Followed along the central path of its barrier −Σ ln(s² − r²) with
 * s = (room − g)/2, by Newton's method; the gap left is 2·(number of rings)/weight of the unit that the frame makes
 * (Boyd & Vandenberghe, Convex Optimization, 2004, ch. 11, from memory). Where many axes are as good, the path ends at
 * one that keeps clear of the other rings. Rings in line, the same ring twice or two rings only are no special cases.
 * Range: two rings or more, at two different z or more. least is under bound by 1e-10 of the problem's size at most.
 */
export function straightestAxis(rings: readonly Ring[]): Straightest {
  const frame = frameOf(rings);
  const framed = rings.map((ring) => intoFrame(ring, frame));
  let at: Unknowns = [
    0,
    0,
    0,
    0,
    Math.min(
      ...framed.map((ring) => ring.room - 2 * Math.hypot(ring.x, ring.y)),
    ) - 1,
  ];
  let weight = 1;
  for (; weight < 1e12; weight *= 8) at = centred(framed, at, weight * 8);
  const cones = framed.map((ring) => coneAt(ring, at));
  const pushes = cones.map(({ s, q }) => s / q);
  const together = pushes.reduce((sum, push) => sum + push, 0);
  const axis = axisOutOf(frame, at);
  return {
    axis,
    least: Math.min(
      ...rings.map((ring) => ring.room - 2 * offsetAt(ring, axis)),
    ),
    bound: frame.room + frame.scale * (at[4] + (2 * rings.length) / weight),
    pushes: pushes.map((push) => push / together),
  };
}

/** How far the axis passes from the ring's centre. */
export function offsetAt(ring: Omit<Ring, "room">, axis: Axis): number {
  return Math.hypot(
    axis.atX + axis.slopeX * ring.z - ring.x,
    axis.atY + axis.slopeY * ring.z - ring.y,
  );
}

/** In the frame: x at its middle, its slope, y, its slope, least room. */
type Unknowns = Readonly<Tuple>;
type Tuple = [number, number, number, number, number];

/** Where z runs from −1 to 1 and all other lengths from their middle by the largest of them. */
interface Frame {
  readonly z: number;
  readonly halfLength: number;
  readonly x: number;
  readonly y: number;
  readonly room: number;
  readonly scale: number;
}

function frameOf(rings: readonly Ring[]): Frame {
  const z = spanOf(rings.map((ring) => ring.z));
  const x = spanOf(rings.map((ring) => ring.x));
  const y = spanOf(rings.map((ring) => ring.y));
  const room = spanOf(rings.map((ring) => ring.room));
  const scale = Math.max(x.half, y.half, room.half) || 1;
  return {
    z: z.middle,
    halfLength: z.half || 1,
    x: x.middle,
    y: y.middle,
    room: room.middle,
    scale,
  };
}

function spanOf(values: readonly number[]): { middle: number; half: number } {
  const [low, high] = [Math.min(...values), Math.max(...values)];
  return { middle: (low + high) / 2, half: (high - low) / 2 };
}

function intoFrame(ring: Ring, frame: Frame): Ring {
  return {
    z: (ring.z - frame.z) / frame.halfLength,
    x: (ring.x - frame.x) / frame.scale,
    y: (ring.y - frame.y) / frame.scale,
    room: (ring.room - frame.room) / frame.scale,
  };
}

function axisOutOf(frame: Frame, [x, slopeX, y, slopeY]: Unknowns): Axis {
  const perLength = frame.scale / frame.halfLength;
  return {
    atX: frame.x + frame.scale * x - slopeX * perLength * frame.z,
    atY: frame.y + frame.scale * y - slopeY * perLength * frame.z,
    slopeX: slopeX * perLength,
    slopeY: slopeY * perLength,
  };
}

/** Half the room left for the offset, the offset, and how far the one is from the other: q = s² − r². */
function coneAt(
  ring: Ring,
  [x, slopeX, y, slopeY, g]: Unknowns,
): { s: number; dx: number; dy: number; q: number } {
  const dx = x + slopeX * ring.z - ring.x;
  const dy = y + slopeY * ring.z - ring.y;
  const s = (ring.room - g) / 2;
  const r = Math.sqrt(dx * dx + dy * dy);
  return { s, dx, dy, q: s <= r ? 0 : (s - r) * (s + r) };
}

/** The point of the central path for a weight, from a point within: Newton's method on −weight·g − Σ ln q. */
function centred(
  rings: readonly Ring[],
  start: Unknowns,
  weight: number,
): Unknowns {
  let at = start;
  for (let step = 0; step < 60; step++) {
    const gradient = gradientAt(rings, at, weight);
    const direction = againstCurvature(curvatureAt(rings, at), gradient);
    const fall = dot(gradient, direction);
    // half of this is how far the sum is from its least; a millionth is far below what the weight leaves
    if (!(fall < -1e-6)) break;
    at = stepped(rings, at, direction, fall, weight);
  }
  return at;
}

function gradientAt(
  rings: readonly Ring[],
  at: Unknowns,
  weight: number,
): Unknowns {
  let [x, slopeX, y, slopeY, g] = [0, 0, 0, 0, -weight];
  for (const ring of rings) {
    const { s, dx, dy, q } = coneAt(ring, at);
    x += (2 * dx) / q;
    slopeX += (2 * dx * ring.z) / q;
    y += (2 * dy) / q;
    slopeY += (2 * dy * ring.z) / q;
    g += s / q;
  }
  return [x, slopeX, y, slopeY, g];
}

/**
 * The triangular root of the curvature of −Σ ln q, five by five, row after row. Each ring's share is the square of a
 * 3 × 3 matrix in (s, dx, dy) known in closed form; its rows are turned in one by one, those of the tightest ring first.
 * Squaring them into a matrix instead would lose what the slack rings say beside those that push, whose rows are a
 * million times as large.
 */
function curvatureAt(rings: readonly Ring[], at: Unknowns): Float64Array {
  const triangle = new Float64Array(25);
  const row = new Float64Array(5);
  const cones = rings.map((ring) => ({ z: ring.z, ...coneAt(ring, at) }));
  for (const { z, s, dx, dy, q } of cones.sort((a, b) => a.q - b.q)) {
    const root = Math.sqrt(q);
    const [w, u, v] = [s / root, dx / root, dy / root];
    const turn = (ofS: number, ofX: number, ofY: number): void => {
      const share = Math.SQRT2 / root;
      row.set([
        share * ofX,
        share * ofX * z,
        share * ofY,
        share * ofY * z,
        (-share * ofS) / 2,
      ]);
      turnIn(triangle, row);
    };
    const uv = (u * v) / (1 + w);
    turn(w, -u, -v);
    turn(-u, 1 + (u * u) / (1 + w), uv);
    turn(-v, uv, 1 + (v * v) / (1 + w));
  }
  return triangle;
}

/** Turns a row into a triangle (Givens rotations), so that triangleᵀ·triangle grows by rowᵀ·row. Leaves the row empty. */
function turnIn(triangle: Float64Array, row: Float64Array): void {
  for (let column = 0; column < 5; column++) {
    const a = triangle[6 * column] ?? 0;
    const b = row[column] ?? 0;
    if (b === 0) continue;
    const length = Math.sqrt(a * a + b * b);
    const cos = a / length;
    const sin = b / length;
    for (let at = column; at < 5; at++) {
      const kept = triangle[5 * column + at] ?? 0;
      const turned = row[at] ?? 0;
      triangle[5 * column + at] = cos * kept + sin * turned;
      row[at] = cos * turned - sin * kept;
    }
  }
}

/** The Newton direction: −gradient over the curvature, through its root once from the left and once from the right. */
function againstCurvature(
  triangle: Float64Array,
  gradient: Unknowns,
): Unknowns {
  const half: Tuple = [0, 0, 0, 0, 0];
  gradient.forEach((slope, at) => {
    let rest = -slope;
    for (let row = 0; row < at; row++)
      rest -= (half[row] ?? 0) * (triangle[5 * row + at] ?? 0);
    half[at] = rest / (triangle[6 * at] ?? 1);
  });
  const whole: Tuple = [0, 0, 0, 0, 0];
  for (let at = 4; 0 <= at; at--) {
    let rest = half[at] ?? 0;
    for (let column = at + 1; column < 5; column++)
      rest -= (whole[column] ?? 0) * (triangle[5 * at + column] ?? 0);
    whole[at] = rest / (triangle[6 * at] ?? 1);
  }
  return whole;
}

function dot(one: Unknowns, other: Unknowns): number {
  return (
    one[0] * other[0] +
    one[1] * other[1] +
    one[2] * other[2] +
    one[3] * other[3] +
    one[4] * other[4]
  );
}

/** As far along a direction as keeps every q above zero and lowers the sum; the point itself where rounding forbids all. */
function stepped(
  rings: readonly Ring[],
  at: Unknowns,
  direction: Unknowns,
  fall: number,
  weight: number,
): Unknowns {
  for (let share = 1; 1e-9 < share; share /= 2) {
    const next: Unknowns = [
      at[0] + share * direction[0],
      at[1] + share * direction[1],
      at[2] + share * direction[2],
      at[3] + share * direction[3],
      at[4] + share * direction[4],
    ];
    // the change ring by ring, for the sums themselves are too large to subtract
    let change = -weight * share * direction[4];
    for (const ring of rings)
      change -= Math.log(coneAt(ring, next).q / coneAt(ring, at).q);
    if (change <= 0.1 * share * fall) return next;
  }
  return at;
}
