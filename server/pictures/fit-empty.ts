// Columns of a fit's chart that have nothing to draw, and why: in the column where the words fit it, else below the chart.
import type { FitZones, Side } from "./fit-zones.ts";
import type { Ink } from "./ink.ts";
import {
  block,
  lengthOf,
  lettering,
  SMALL,
  wrapped,
  type Box,
} from "./shapes.ts";
import { together, type Markup } from "./svg.ts";
import { notKnown, UNREAD } from "./words.ts";

/** Why a journal or a bore has no size to draw; undefined where it has one. */
export function sideLacks(
  { size }: Side,
  kind: "journal" | "bore",
): string | undefined {
  if (size === undefined)
    return `not known: mend the ${kind} that the fit names`;
  return size.known ? undefined : notKnown(size);
}

/** Why there are no bore sizes to draw that are wanted; undefined where there are some. */
export function windowLacks(
  { window, want }: FitZones,
  fit: string,
): string | undefined {
  if (want === undefined)
    return `not known: write the clearance that ${fit} wants`;
  if (window === undefined)
    return `not known: ${want.known ? "waits for the journal" : UNREAD}`;
  return window.high < window.low
    ? "no one size: the journal differs by more than the wanted clearance is wide"
    : undefined;
}

const INSET = 5;
const LEADING = 14;

function fits(text: string, { width, height }: Box): boolean {
  const room = width - 2 * INSET;
  return (
    text.split(" ").every((word) => lengthOf(word, SMALL) <= room) &&
    wrapped(text, room, SMALL).length <= Math.floor((height - 12) / LEADING)
  );
}

export function emptyColumn(box: Box, text: string, ink: Ink): Markup {
  const { x, y, width } = box;
  return together(
    // what runs across the chart stops here, or it would run through the words
    block(box, { fill: ink.paper, stroke: ink.rule, dashes: "3 4" }),
    lettering(
      x + INSET,
      y + 20,
      wrapped(fits(text, box) ? text : "see below", width - 2 * INSET, SMALL),
      { fill: ink.text, size: SMALL },
      LEADING,
    ),
  );
}

/** What is said below the chart, since a column has no room for it. */
export function saidBelow(
  { journal, bore }: FitZones,
  windowText: string | undefined,
  columns: readonly [Box, Box, Box],
): readonly string[] {
  const [first, second, third] = columns;
  const all = [
    [journal.ref ?? "journal", sideLacks(journal, "journal"), first],
    ["bore wanted", windowText, second],
    [bore.ref ?? "bore", sideLacks(bore, "bore"), third],
  ] as const;
  return all.flatMap(([name, text, box]) =>
    text === undefined || fits(text, box) ? [] : `${name}: ${text}`,
  );
}
