// The size of a running bore as it is or will be: read, or what its line cuts, or what its press leaves, or its limits.
import { given } from "../entry.ts";
import {
  known,
  need,
  readingOf,
  SILENT,
  unknown,
  type Known,
} from "../known.ts";
import { showRange } from "../../core/quantity/show.ts";
import { entryOf, query, refOf, type Shop } from "../shop.ts";
import { pressedBore } from "./before-cut.ts";
import { lineOfBore } from "./index-of.ts";
import { pressOfBore } from "./press.ts";
import { cutBy, oversizeNote, reamerValue } from "./reamer.ts";
import { settings } from "./settings.ts";
import { placesOf, sizeOf, type Size } from "./size.ts";
import { kindOf } from "../reference.ts";

/** What the line of a bore cuts it to; undefined where no line cuts it, or the line does not say with what. */
export const cutOf = query<Known<Size> | undefined>("cut", (shop, bore) => {
  const line = lineOfBore(shop, bore);
  const entry = line === undefined ? undefined : entryOf(shop, line);
  if (line === undefined || entry === undefined) return undefined;
  const ream = given(entry, "ReamFact");
  const cut = given(entry, "CutFact");
  if (ream.state === "damaged" || cut.state === "damaged") return SILENT;
  if (cut.state === "given") {
    const { low, high, step } = cut.value;
    return known({
      ...cutEstimate(bore, low, (low + high) / 2, high, step),
      working: [
        { formula: "bore = what the line is cut to", with: line, source: "" },
      ],
    });
  }
  if (ream.state === "absent") return undefined;
  const reamer = refOf(shop, ream.value);
  if (reamer === undefined) return SILENT;
  const size = cutBy(shop, reamer, line, bore);
  if (!size.known) return size;
  const tool = reamerValue(shop, reamer);
  const { system } = settings(shop);
  const step = tool.known ? tool.value.step : undefined;
  const note = oversizeNote(shop, reamer, bore);
  return known({
    ...cutEstimate(
      bore,
      size.value.low,
      size.value.nominal,
      size.value.high,
      step,
    ),
    working: [
      {
        formula: "bore = reamer + oversize, brought to 20 °C",
        with: `${reamer}: ${showRange(size.value.low, size.value.high, system, step)}${note === "" ? "" : `, ${note}`}`,
        source: "",
      },
    ],
  });
});

function cutEstimate(
  bore: string,
  low: number,
  nominal: number,
  high: number,
  step: number | undefined,
): Omit<Size, "working"> {
  return {
    low,
    nominal,
    high,
    status: "predicted",
    step,
    from: "cut",
    places: [],
    outOfRound: undefined,
    taper: undefined,
    budget: undefined,
    budgetNeeds: [readingOf(bore)],
  };
}

/** The bore that a fit runs in: read, else as it will be cut, else as pressing leaves it, else within its limits. */
export const boreSize = query<Known<Size>>("bore", (shop, ref) => {
  const places = placesOf(shop, ref);
  if (!places.known || 0 < places.value.length) return sizeOf(shop, ref);
  const cut = cutOf(shop, ref);
  if (cut !== undefined) return cut;
  const line = lineOfBore(shop, ref);
  // a bore that is still to be cut is not what the press leaves
  const pressed =
    line === undefined && pressOfBore(shop, ref) !== undefined
      ? pressedBore(shop, ref)
      : undefined;
  if (pressed !== undefined && (pressed.known || pressed.silent))
    return pressed;
  const size = sizeOf(shop, ref);
  if (size.known) return size;
  if (pressed !== undefined && !size.silent)
    return unknown(...size.needs, ...pressed.needs);
  if (line !== undefined && !size.silent && size.because === undefined)
    return unknown(...size.needs, {
      ...need(line, "ream", `the reamer of ${line}`),
      instead: true,
    });
  return size;
});

/** The size of a journal, a hole or a bore, each as it is or will be. */
export function featureSize(shop: Shop, ref: string): Known<Size> {
  return kindOf(ref) === "bore" ? boreSize(shop, ref) : sizeOf(shop, ref);
}
