// What the second looks draw and integrate with: a seeded generator, and Student's t by quadrature. It shares nothing with
// server/core/quantity/student.ts or the generator of the stack.

/** Even numbers in (0, 1): xorshift of 32 bits. */
export function evenNumbers(seed: number): () => number {
  let state = seed >>> 0 || 1;
  const next = () => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    state >>>= 0;
    return (state - 0.5) / 4294967296;
  };
  for (let warm = 0; warm < 20; warm++) next();
  return next;
}

/** Standard normal numbers, by Box and Muller's polar angle and radius. */
export function normalNumbers(seed: number): () => number {
  const even = evenNumbers(seed);
  return () =>
    Math.sqrt(-2 * Math.log(even())) * Math.cos(2 * Math.PI * even());
}

/** A number between two, evenly. */
export function between(even: () => number, low: number, high: number) {
  return low + (high - low) * even();
}

/** ∫ of `f` by Simpson's rule. */
export function simpson(
  f: (x: number) => number,
  from: number,
  to: number,
  intervals = 400,
): number {
  const step = (to - from) / intervals;
  let sum = f(from) + f(to);
  for (let i = 1; i < intervals; i++)
    sum += (i % 2 === 1 ? 4 : 2) * f(from + i * step);
  return (sum * step) / 3;
}

/**
 * The chance that Student's t lies below `t`. With t = √ν·tan φ its density is cos^(ν−1) φ but for a constant, and the constant is the
 * whole integral; so no gamma function is needed. Infinite degrees of freedom: the normal's own density.
 */
export function studentBelow(t: number, degreesOfFreedom: number): number {
  if (t < 0) return 1 - studentBelow(-t, degreesOfFreedom);
  if (degreesOfFreedom === Infinity) {
    const density = (x: number) => Math.exp((-x * x) / 2);
    const end = Math.min(t, 12);
    return 0.5 + simpson(density, 0, end, 800) / Math.sqrt(2 * Math.PI);
  }
  const density = (angle: number) => Math.cos(angle) ** (degreesOfFreedom - 1);
  const angle = Math.atan(t / Math.sqrt(degreesOfFreedom));
  return (
    0.5 +
    (0.5 * simpson(density, 0, angle, 800)) /
      simpson(density, 0, Math.PI / 2, 800)
  );
}

/** The t within which a share `coverage` lies on both sides together, by halving. */
export function studentWithin(coverage: number, degreesOfFreedom: number) {
  return halved(
    (t) => studentBelow(t, degreesOfFreedom) - (1 + coverage) / 2,
    0,
    200,
  );
}

/** Where a function that rises through zero passes it. */
export function halved(f: (x: number) => number, from: number, to: number) {
  let low = from;
  let high = to;
  for (let i = 0; i < 80; i++) {
    const middle = (low + high) / 2;
    if (f(middle) < 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
