// Whether a bush holds in its warm case against what the journal drags it round with.
import type { Band } from "../../core/quantity/band.ts";
import { pressureBand } from "../../core/press/boss.ts";
import { torqueCapacity } from "../../core/press/force.ts";
import { valueIn } from "../entry.ts";
import { entryOf, queryOfFacts } from "../shop.ts";
import type { Span } from "../values.ts";
import { clearance } from "./fit.ts";
import { namedIn } from "./index-of.ts";
import { hotCases } from "./press-hot.ts";
import { engagedLength, frictionOf } from "./press-pressure.ts";
import { pairOf, ringsOf } from "./press-rings.ts";
import { interferenceOf, pressOfBore } from "./press.ts";

export interface Holding {
  /** The `hot` line of the fit, from 1. */
  readonly number: number;
  readonly span: Span;
  /** What is left of the interference there, m. */
  readonly interference: Band;
  /** Torque that the press holds there, N·m, by the least friction; undefined where its length or its friction is not known. */
  readonly holds: Band | undefined;
  /**
   * How the journal may drag the bush, as at a start without oil (common practice, no source): the torque, N·m, of its load on the most
   * friction of the press. Undefined where no load is written, or no friction is known.
   */
  readonly drag:
    { readonly torque: number; readonly friction: number } | undefined;
  /** The press has been read on both sides. */
  readonly measured: boolean;
}

/** How the bush of a fit holds in each of its `hot` lines; only lines that can be worked out, and none for a bush that is held by a peg. */
export const holdingsOf = queryOfFacts<readonly Holding[]>(
  "press-holding",
  ["HotFact"],
  [],
  (shop, fit) => {
    const [, bore] = namedIn(shop, fit);
    const press = bore === undefined ? undefined : pressOfBore(shop, bore);
    const bush = press === undefined ? undefined : namedIn(shop, press)[0];
    const at20 = clearance(shop, fit);
    if (press === undefined || bush === undefined || !at20.known) return [];
    if (valueIn(entryOf(shop, bush), "HeldFact") !== undefined) return [];
    const rings = ringsOf(shop, press);
    const friction = frictionOf(shop, press);
    const length = engagedLength(shop, press);
    const interference = interferenceOf(shop, press);
    if (!rings.known || !interference.known) return [];
    const pair = pairOf(rings.value, at20.value.bore.nominal);
    const rubs = friction.known ? friction.value.band : undefined;
    const load = valueIn(entryOf(shop, fit), "LoadFact")?.force;
    // that the case lets the bush go is known without its length and without friction
    const holdsWith = (left: Band): Band | undefined => {
      if (left.high === 0) return { low: 0, high: 0 };
      if (!length.known || rubs === undefined) return undefined;
      const pressure = pressureBand(pair, left, rings.value.form);
      if (!pressure.valid) return undefined;
      const holds = torqueCapacity(pressure.value, pair.od, length.value.low, {
        low: rubs.low,
        high: rubs.low,
      });
      return holds.valid ? holds.value : undefined;
    };
    return hotCases(shop, fit).flatMap(
      ({ number, span, found }): readonly Holding[] => {
        if (!found.known || found.value.interference === undefined) return [];
        const left = found.value.interference;
        return [
          {
            number,
            span,
            interference: left,
            holds: holdsWith(left),
            drag:
              load === undefined || rubs === undefined
                ? undefined
                : {
                    torque: (rubs.high * load * at20.value.journal.nominal) / 2,
                    friction: rubs.high,
                  },
            measured: interference.value.status === "measured",
          },
        ];
      },
    );
  },
);
