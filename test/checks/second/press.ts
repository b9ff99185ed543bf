// A second look at the press fit: the two rings as an initial value problem, integrated outwards from the bush's bore by Runge and
// Kutta's fourth order, and shot at the free outer face. No formula of Lamé's is in it.
//
// Plane stress, round: with u the radial movement and s the radial stress, Hooke's law and equilibrium leave
//   du/dr = (1 − ν²)·s/E − ν·u/r + (1 + ν)·e,   ds/dr = (hoop − s)/r,   hoop = E·(u/r − e) + ν·s,
// e being the free thermal strain. At the contact s goes on and u jumps by half the diametral interference.

export interface Metal {
  readonly modulus: number;
  readonly poisson: number;
}

export interface Rings {
  readonly bore: number;
  readonly od: number;
  readonly boss: number;
  readonly bushMaterial: Metal;
  readonly caseMaterial: Metal;
  /** Free strains, by heat. */
  readonly bushStrain?: number;
  readonly caseStrain?: number;
  /** Pressure on the boss from outside, Pa: metal beyond the ring that holds it. */
  readonly held?: number;
}

/** Movement and stresses at one radius. */
export interface Place {
  readonly radius: number;
  readonly move: number;
  readonly radial: number;
  readonly hoop: number;
}

/** What `radius`es of bush and boss do, from the inside out. */
export interface Shot {
  readonly bush: readonly Place[];
  readonly boss: readonly Place[];
}

/** What stands for an endless boss: its own closed end would be felt at a millionth. */
const FAR = 2000;
/** And where a plug begins: there u = r·s·(1 − ν)/E, as at its centre. */
const NEAR = 1e-5;
/** And a rigid part. */
const STIFF = 1e22;

function outward(
  metal: Metal,
  strain: number,
  from: number,
  to: number,
  start: readonly [number, number],
  steps: number,
): Place[] {
  const { poisson } = metal;
  const modulus = Math.min(metal.modulus, STIFF);
  const hoopOf = (r: number, u: number, s: number) =>
    modulus * (u / r - strain) + poisson * s;
  // By the logarithm of the radius, so that thick rings are no harder than thin ones.
  const slope = (x: number, u: number, s: number): [number, number] => {
    const r = Math.exp(x);
    return [
      r * (((1 - poisson ** 2) * s) / modulus + (1 + poisson) * strain) -
        poisson * u,
      hoopOf(r, u, s) - s,
    ];
  };
  let [u, s] = start;
  const first = Math.log(from);
  const h = (Math.log(to) - first) / steps;
  const places = [
    { radius: from, move: u, radial: s, hoop: hoopOf(from, u, s) },
  ];
  for (let i = 0; i < steps; i++) {
    const x = first + i * h;
    const [u1, s1] = slope(x, u, s);
    const [u2, s2] = slope(x + h / 2, u + (h / 2) * u1, s + (h / 2) * s1);
    const [u3, s3] = slope(x + h / 2, u + (h / 2) * u2, s + (h / 2) * s2);
    const [u4, s4] = slope(x + h, u + h * u3, s + h * s3);
    u += (h / 6) * (u1 + 2 * u2 + 2 * u3 + u4);
    s += (h / 6) * (s1 + 2 * s2 + 2 * s3 + s4);
    const radius = Math.exp(x + h);
    places.push({ radius, move: u, radial: s, hoop: hoopOf(radius, u, s) });
  }
  return places;
}

/** The rings pressed together with that diametral interference (m). */
export function shoot(rings: Rings, interference: number, steps = 300): Shot {
  const { bore, od, boss, bushMaterial, caseMaterial } = rings;
  const bushStrain = rings.bushStrain ?? 0;
  const solid = bore === 0;
  const inner = solid ? (od / 2) * NEAR : bore / 2;
  const outer = boss === Infinity ? (od / 2) * FAR : boss / 2;
  const modulus = Math.min(bushMaterial.modulus, STIFF);
  const count = steps * (solid ? 4 : 1);
  const bushFrom = (guess: number) =>
    outward(
      bushMaterial,
      bushStrain,
      inner,
      od / 2,
      solid
        ? [
            inner * guess,
            (modulus * (guess - bushStrain)) / (1 - bushMaterial.poisson),
          ]
        : [inner * guess, 0],
      count,
    );
  const both = (guess: number, jump: number): Shot => {
    const bush = bushFrom(guess);
    const end = last(bush);
    return {
      bush,
      boss: outward(
        caseMaterial,
        rings.caseStrain ?? 0,
        od / 2,
        outer,
        [end.move + jump / 2, end.radial],
        steps * (boss === Infinity ? 6 : 1),
      ),
    };
  };
  // The equations are linear, so what misses at the outer face is a straight line over the guess.
  const missAt = (guess: number) =>
    last(both(guess, interference).boss).radial + (rings.held ?? 0);
  const unit = interference / od || 1e-3;
  const at0 = missAt(0);
  let guess = (-at0 * unit) / (missAt(unit) - at0);
  // Once more about the answer, against the rounding of the first.
  const left = missAt(guess);
  guess -= (left * unit) / (missAt(guess + unit) - left);
  return both(guess, interference);
}

export function last(places: readonly Place[]): Place {
  const place = places[places.length - 1];
  if (place === undefined) throw new Error("no place");
  return place;
}

export function first(places: readonly Place[]): Place {
  const place = places[0];
  if (place === undefined) throw new Error("no place");
  return place;
}

/** Von Mises' stress from the deviator's second invariant, the third principal stress being nothing. */
export function misesOf({ radial, hoop }: Place): number {
  const mean = (radial + hoop) / 3;
  const second = ((radial - mean) ** 2 + (hoop - mean) ** 2 + mean ** 2) / 2;
  return Math.sqrt(3 * second);
}

/** The most of von Mises' stress anywhere in a ring. */
export function mostMises(places: readonly Place[]): number {
  return Math.max(...places.map(misesOf));
}

/**
 * Bosses from the bare ring to one that doesn't give at the hole, by what presses on it from outside: each with the share of that
 * pressure. What is linear is found from two shots.
 */
export function everStiffer(
  rings: Rings,
  interference: number,
  count: number,
): Shot[] {
  const bare = shoot(rings, interference);
  const push = -first(bare.boss).radial;
  const held = shoot({ ...rings, held: push }, interference);
  const a = first(bare.boss).move;
  const rigid = (-a * push) / (first(held.boss).move - a);
  return Array.from({ length: count + 1 }, (_, i) =>
    shoot({ ...rings, held: (rigid * i) / count }, interference, 120),
  );
}
