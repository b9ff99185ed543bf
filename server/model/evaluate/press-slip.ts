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
  /** Torque that the press holds there, N·m, by the least friction. */
  readonly holds: Band;
  /**
   * Torque with which the journal may drag the bush, N·m: its load on the most friction of the press, as at a start without oil (common
   * practice, no source). Undefined where no load is written.
   */
  readonly drag: number | undefined;
  readonly drags: { readonly friction: number; readonly load: number };
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
    if (!rings.known || !friction.known || !length.known || !interference.known)
      return [];
    const pair = pairOf(rings.value, at20.value.bore.nominal);
    const { low: least, high: most } = friction.value.band;
    const load = valueIn(entryOf(shop, fit), "LoadFact")?.force;
    return hotCases(shop, fit).flatMap(
      ({ number, span, found }): readonly Holding[] => {
        if (!found.known || found.value.interference === undefined) return [];
        const left = found.value.interference;
        const pressure = pressureBand(pair, left, rings.value.form);
        if (!pressure.valid) return [];
        const holds = torqueCapacity(
          pressure.value,
          pair.od,
          length.value.low,
          { low: least, high: least },
        );
        if (!holds.valid) return [];
        return [
          {
            number,
            span,
            interference: left,
            holds: holds.value,
            drag:
              load === undefined
                ? undefined
                : (most * load * at20.value.journal.nominal) / 2,
            drags: { friction: most, load: load ?? 0 },
            measured: interference.value.status === "measured",
          },
        ];
      },
    );
  },
);
