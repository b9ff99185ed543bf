// What a pen fills in on a sheet: lines, and boxes to tick.
import { el, type Markup } from "../markup/html.ts";

/** A line to write on. */
export function blank(wide = false): Markup {
  return el("span", { class: wide ? "line long" : "line" });
}

/** A box to tick. */
export function box(): Markup {
  return el("span", { class: "box" });
}

/** Boxes for the verdict of the one who reads. */
export function inOrOut(): Markup {
  return el(
    "div",
    { class: "verdict" },
    el("span", {}, box(), " in"),
    el("span", {}, box(), " out"),
  );
}
