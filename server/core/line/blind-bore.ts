// What a reamer leaves at the bottom of a blind bore, and what of the shaft reaches it.
// It doesn't own the depth of the hole or the length of the journal: they are given, measured from the bore's mouth.
import { notValid, valid, type Answer } from "../answer.ts";
import { isLess } from "./range.ts";

/** All in m, depths from the bore's mouth. */
export interface BlindBore {
  /** Depth of the blind hole */
  readonly depth: number;
  /** Depth at which the bore itself ends (the far end of the bush); the hole's depth where there is no bush */
  readonly boreEnd: number;
  /** Smallest diameter before the cut: what the ledge keeps */
  readonly before: number;
  /** Diameter as cut */
  readonly cut: number;
}

/** All in m: lengths along the axis. */
export interface ReamerEnd {
  /** Its bevel or taper lead, over which it doesn't cut to size */
  readonly chamfer: number;
  /** What stands ahead of that */
  readonly point: number;
  /** The gap left to the bottom, so that it never strikes it */
  readonly endClearance: number;
}

export interface Ledge {
  /** Depth to which the bore is cut to size, m */
  readonly cutDepth: number;
  /** Length of the ledge that is left in the bore, m; zero: none */
  readonly length: number;
  /** Smallest diameter of the ledge, m */
  readonly diameter: number;
}

/**
 * The ledge that is left where a reamer can't reach: it cuts to size to the hole's depth less chamfer, point and end
 * clearance, and from there to the end of the bore the old, smaller diameter stands (its chamfer rounds the corner: the
 * ledge is taken square, which errs to the safe side). Refuses depths, diameters not above zero, a bore that ends below
 * the hole's bottom, lengths below zero. Derived from the geometry.
 */
export function ledgeOf(bore: BlindBore, reamer: ReamerEnd): Answer<Ledge> {
  const { depth, boreEnd, before, cut } = bore;
  if (
    ![depth, boreEnd, before, cut].every(
      (one) => 0 < one && Number.isFinite(one),
    )
  ) {
    return notValid("depths and diameters of a blind bore are above zero");
  }
  if (isLess(depth, boreEnd))
    return notValid("the bore ends deeper than its hole");
  const { chamfer, point, endClearance } = reamer;
  if (
    ![chamfer, point, endClearance].every(
      (one) => 0 <= one && Number.isFinite(one),
    )
  ) {
    return notValid(
      "the chamfer, point and end clearance of a reamer are not below zero",
    );
  }
  const cutDepth = Math.min(
    boreEnd,
    Math.max(0, depth - chamfer - point - endClearance),
  );
  const length =
    isLess(before, cut) && isLess(cutDepth, boreEnd) ? boreEnd - cutDepth : 0;
  return valid({ cutDepth, length, diameter: Math.min(before, cut) });
}

/** Something on the shaft that turns in the bore: its end, a collar, a spigot. m */
export interface Turning {
  /** How deep it reaches from the bore's mouth */
  readonly reach: number;
  /** Its largest diameter there */
  readonly diameter: number;
}

export interface LedgeFoul {
  readonly fouls: boolean;
  /** How far along the axis it passes the depth as cut, m; zero where it fouls nothing */
  readonly by: number;
  /** Each a way out by itself; undefined where nothing fouls */
  readonly waysOut:
    | {
        /** Shorten what reaches by this much, m */
        readonly shorten: number;
        /** Or deepen the hole by this much, m */
        readonly deepen: number;
        /** Or take a reamer whose chamfer and point together are at most this, m; undefined: none is short enough */
        readonly leadAtMost: number | undefined;
        /** Or bore the ledge away to the cut's diameter, over this length, m */
        readonly relieve: {
          readonly length: number;
          readonly diameter: number;
        };
      }
    | undefined;
}

/**
 * Whether what turns reaches a ledge: it goes deeper than the bore is cut and is larger than the ledge leaves open.
 * Touching is not fouling. Refuses a reach that is no number and a diameter not above zero. Derived from the geometry.
 */
export function ledgeFoul(
  bore: BlindBore,
  reamer: ReamerEnd,
  turning: Turning,
): Answer<LedgeFoul> {
  const ledge = ledgeOf(bore, reamer);
  if (!ledge.valid) return ledge;
  if (!Number.isFinite(turning.reach) || !(0 < turning.diameter))
    return notValid("what turns has no reach or diameter");
  const { cutDepth, length, diameter } = ledge.value;
  const fouls =
    0 < length &&
    isLess(cutDepth, turning.reach) &&
    isLess(diameter, turning.diameter);
  if (!fouls) return valid({ fouls, by: 0, waysOut: undefined });
  const by = turning.reach - cutDepth;
  const reached = Math.min(turning.reach, bore.boreEnd);
  const lead = bore.depth - reamer.endClearance - reached;
  return valid({
    fouls,
    by,
    waysOut: {
      shorten: by,
      // not from the cut's depth, which is zero for every reamer that doesn't even enter
      deepen:
        reached -
        (bore.depth - reamer.chamfer - reamer.point - reamer.endClearance),
      leadAtMost: isLess(lead, 0) ? undefined : Math.max(0, lead),
      relieve: { length, diameter: bore.cut },
    },
  });
}

/**
 * How far (m) the fillet at a journal's shoulder runs onto the edge of the bore's mouth; zero where it clears. The
 * shoulder stands `gap` (m) off the mouth, which has a chamfer of that length (m, zero for a sharp edge): together they
 * must be at least the fillet's radius (m). That is the safe side: clearance lets a little more in.
 * Refuses a radius, gap or chamfer below zero. Common practice (a bush's chamfer larger than the shaft's fillet), no source.
 */
export function filletFoul(
  fillet: number,
  gap: number,
  mouthChamfer: number,
): Answer<number> {
  if (
    ![fillet, gap, mouthChamfer].every(
      (one) => 0 <= one && Number.isFinite(one),
    )
  ) {
    return notValid(
      "a fillet, the gap at its shoulder and a chamfer are not below zero",
    );
  }
  return valid(
    isLess(gap + mouthChamfer, fillet) ? fillet - gap - mouthChamfer : 0,
  );
}
