// The swings of a size on a measuring sheet: those that were measured, word for word with the roundness that each shows, and lines to write
// the next ones on. A form that is not measured is left blank: none is foretold.
import { showLength } from "../core/quantity/show.ts";
import {
  shownBy,
  swingsOf,
  takesSwing,
  turnedWords,
} from "../model/evaluate/roundness.ts";
import { entryOf } from "../model/shop.ts";
import type { Swing } from "../model/values.ts";
import { el, type Child, type Markup } from "../markup/html.ts";
import type { Subject } from "./facts.ts";
import { signed } from "./head.ts";
import { table } from "./table.ts";
import { kindOf } from "../model/reference.ts";

/** @param isStaged it is read at several stages, so that each swing says its own */
export function swingTable(
  subject: Subject,
  ref: string,
  isStaged: boolean,
): Markup | undefined {
  const entry = entryOf(subject.shop, ref);
  if (entry === undefined || !takesSwing(ref)) return undefined;
  const isOutside = kindOf(ref) === "journal";
  const measured = swingsOf(entry).flatMap(({ value }) => value ?? []);
  const isMeasured = 0 < measured.length;
  const empty: readonly Child[] = [
    "",
    ...(isStaged ? [""] : []),
    "",
    isOutside
      ? el(
          "span",
          { class: "ask" },
          "in a vee of ",
          el("span", { class: "line angle" }),
          "°",
        )
      : "on three points",
    "",
    "",
    "",
    ...(isMeasured ? [""] : []),
  ];
  return table(
    [
      { head: "Place", percent: 10 },
      ...(isStaged ? [{ head: "As", percent: 9 }] : []),
      { head: "Swing", percent: 14 },
      { head: "Turned", percent: isStaged ? 16 : 18 },
      { head: "Lobes", percent: 7 },
      { head: "Gauge" },
      // initials and a date by pencil
      { head: "By, and the day", percent: isMeasured ? 18 : 24 },
      ...(isMeasured ? [{ head: "Roundness", percent: 14 }] : []),
    ],
    [
      ...measured.map((swing) => rowOf(subject, swing, isStaged)),
      empty,
      ...(isMeasured ? [] : [empty]),
    ],
    "fill",
  );
}

function rowOf(
  { system }: Subject,
  swing: Swing,
  isStaged: boolean,
): readonly Child[] {
  const { place, method, lobes, gauge, stage, signature } = swing;
  const shows = shownBy(swing);
  return [
    el("b", {}, place ?? ""),
    ...(isStaged ? [stage ?? "finished"] : []),
    showLength(swing.swing.value, system, swing.swing.step),
    turnedWords(method),
    String(lobes),
    gauge?.name ?? "",
    signed(signature.date, signature.who),
    shows === undefined
      ? `not shown: this way is blind to ${String(lobes)} lobes`
      : `${showLength(shows.roundness, system, shows.step)}, measured`,
  ];
}
