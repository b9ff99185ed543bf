// What a pencil fills in on a sheet: lines, and boxes to tick.
import { el, type Markup } from "../markup/html.ts";

/** What is asked, and the line to write it on: both in one line of the page. */
export function asked(what: string, wide = false): Markup {
  return el("span", { class: "ask" }, `${what} `, blank(wide));
}

/** A line of a sheet with things to write one after another. */
export function penLine(...things: readonly (Markup | string)[]): Markup {
  return el(
    "p",
    { class: "pen" },
    things.map((each, index) => [index === 0 ? "" : " ", each]),
  );
}

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
