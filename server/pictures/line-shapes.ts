// The parts of a line in section: walls, bushes, journals, the bottom of a blind hole and the ledge that the reamer leaves there.
import { showLength, showRange, type System } from "../core/quantity/show.ts";
import type { Ink } from "./ink.ts";
import { BOTTOM_WALL, radiiOf, type LineScales } from "./line-scales.ts";
import type { SectionBore } from "./line-section.ts";
import { about, block, hatch, line, type Box } from "./shapes.ts";
import {
  element,
  NOTHING,
  together,
  type Content,
  type Markup,
} from "./svg.ts";
import { notKnown, sureness } from "./words.ts";

export interface Section {
  readonly ink: Ink;
  readonly system: System;
  readonly scales: LineScales;
  /** Where the axis lies on the page. */
  readonly axis: number;
}

/** A ring in section: the same rectangle above and below the axis. */
function ring(
  axis: number,
  [from, to]: readonly [number, number],
  [inner, outer]: readonly [number, number],
  draw: (box: Box) => Markup,
): Markup {
  const box = {
    x: Math.min(from, to),
    width: Math.abs(to - from),
    height: outer - inner,
  };
  return together(
    draw({ ...box, y: axis - outer }),
    draw({ ...box, y: axis + inner }),
  );
}

/** The body round a bore, its bush, and what the reamer leaves at the bottom of a blind one. */
export function wallsOf(bore: SectionBore, section: Section): Markup {
  const { ink, system, scales, axis } = section;
  const radii = radiiOf(bore, scales);
  const x: readonly [number, number] = [
    scales.along(bore.from),
    scales.along(bore.to),
  ];
  const boss = bore.boss;
  const isOpen = boss === undefined;
  const bodyRef = bore.hole ?? bore.ref;
  const bodyTitle =
    bore.hole === undefined
      ? `the part round ${bore.ref}: its outside is not recorded`
      : isOpen
        ? `${bore.hole}: outside not known: write the boss of ${bore.hole}`
        : `${bore.hole}, boss ${showLength(boss, system)}`;
  const body = about(
    bodyRef,
    bodyTitle,
    ring(axis, x, [radii.od, radii.outer], (box) =>
      together(
        hatch(box, { stroke: ink.body, spacing: 9 }),
        // an outside that is not recorded has no edge
        isOpen
          ? edgesWithout(box, box.y < axis ? "top" : "bottom", ink.body)
          : block(box, { stroke: ink.body }),
      ),
    ),
    blindBottom(bore, section),
  );
  const bush =
    bore.bush === undefined
      ? NOTHING
      : about(
          bore.bush,
          bore.od === undefined
            ? `${bore.bush}: outside diameter not known: write the od of ${bore.bush}`
            : `${bore.bush}, od ${showLength(bore.od, system)}`,
          ring(axis, x, [radii.bore, radii.od], (box) =>
            together(
              hatch(box, { stroke: ink.bush, spacing: 4, lean: "left" }),
              block(box, { stroke: ink.bush }),
            ),
          ),
        );
  return together(
    body,
    bush,
    ledgeShape(bore, section),
    boreEdge(bore, section),
  );
}

function edgesWithout(
  { x, y, width, height }: Box,
  open: "top" | "bottom",
  stroke: string,
): Markup {
  const edge = open === "top" ? y + height : y;
  return together(
    line(x, edge, x + width, edge, { stroke }),
    line(x, y, x, y + height, { stroke }),
    line(x + width, y, x + width, y + height, { stroke }),
  );
}

/** The edge of the running bore itself: full where it was measured, dashed where it is foretold or not known. */
function boreEdge(
  bore: SectionBore,
  { ink, system, scales, axis }: Section,
): Markup {
  const { size } = bore;
  const radius = radiiOf(bore, scales).bore;
  const [from, to] = [scales.along(bore.from), scales.along(bore.to)];
  const how = {
    stroke: ink.bore,
    width: 2,
    ...(size.known && size.value.status === "measured"
      ? {}
      : { dashes: "5 3" }),
  };
  const title = size.known
    ? `${bore.ref}, ${sureness(size.value)}: ${showRange(size.value.low, size.value.high, system, size.value.step)}`
    : `${bore.ref}: ${notKnown(size)}`;
  return about(
    bore.ref,
    title,
    [-radius, radius].map((y) => line(from, axis + y, to, axis + y, how)),
  );
}

/** From the mouth of a blind bore inwards: +1 or -1 along the axis. */
function inwards({ mouth }: SectionBore): 1 | -1 {
  return mouth === "from" ? 1 : -1;
}

export function mouthOf({ mouth, from, to }: SectionBore): number {
  return mouth === "from" ? from : to;
}

function blindBottom(
  bore: SectionBore,
  { ink, scales, axis }: Section,
): Markup {
  if (bore.depth === undefined || bore.mouth === undefined) return NOTHING;
  const { od, outer } = radiiOf(bore, scales);
  const way = inwards(bore);
  const bottom = scales.along(mouthOf(bore) + way * bore.depth);
  const end = scales.along(way === 1 ? bore.to : bore.from);
  const wall = {
    x: bottom,
    y: axis - outer,
    width: way * BOTTOM_WALL,
    height: 2 * outer,
  };
  const upright = {
    ...wall,
    x: Math.min(wall.x, wall.x + wall.width),
    width: BOTTOM_WALL,
  };
  return together(
    ring(axis, [end, bottom], [od, outer], (box) =>
      0 < box.width
        ? together(
            hatch(box, { stroke: ink.body, spacing: 9 }),
            block(box, { stroke: ink.body }),
          )
        : NOTHING,
    ),
    hatch(upright, { stroke: ink.body, spacing: 9 }),
    block(upright, { stroke: ink.body }),
  );
}

function ledgeShape(
  bore: SectionBore,
  { ink, system, scales, axis }: Section,
): Markup {
  const { ledge } = bore;
  const radii = radiiOf(bore, scales);
  if (
    ledge?.known !== true ||
    radii.ledge === undefined ||
    bore.mouth === undefined
  )
    return NOTHING;
  const way = inwards(bore);
  const from = scales.along(mouthOf(bore) + way * ledge.value.ledge.cutDepth);
  const to = scales.along(
    mouthOf(bore) + way * (ledge.value.ledge.cutDepth + ledge.value.nominal),
  );
  // a ledge is short: it is still to be seen
  const seen = Math.abs(to - from) < 3 ? from + way * 3 : to;
  return about(
    bore.ref,
    `ledge that the reamer leaves in ${bore.ref}: ${showLength(ledge.value.nominal, system)} long, ${showLength(ledge.value.ledge.diameter, system)} in diameter`,
    ring(axis, [from, seen], [radii.ledge, radii.bore], (box) =>
      block(box, { fill: ink.wrong, stroke: ink.wrong }),
    ),
  );
}

/** The journal where it bears, and the shaft on to the next one, whose shape nobody recorded. */
export function journalShape(bore: SectionBore, section: Section): Markup {
  const { ink, system, scales, axis } = section;
  const { journalSize, journal } = bore;
  if (journal === undefined || journalSize === undefined) return NOTHING;
  const radius = radiiOf(bore, scales).journal;
  const [from, to] = journalSpan(bore);
  const x = scales.along(from);
  const box = {
    x,
    y: axis - radius,
    width: scales.along(to) - x,
    height: 2 * radius,
  };
  const isMeasured =
    journalSize.known && journalSize.value.status === "measured";
  const title = journalSize.known
    ? `${journal}, ${sureness(journalSize.value)}: ${showRange(journalSize.value.low, journalSize.value.high, system, journalSize.value.step)}`
    : `${journal}: ${notKnown(journalSize)}`;
  return about(
    journal,
    title,
    block(box, {
      fill: ink.journal,
      opacity: 0.15,
      stroke: ink.journal,
      width: 1.5,
      ...(isMeasured ? {} : { dashes: "5 3" }),
    }),
  );
}

/** Where a journal is drawn, m: over its bore, and in a blind one from the mouth as deep as it reaches. */
function journalSpan(bore: SectionBore): readonly [number, number] {
  if (bore.mouth === undefined || bore.reaches === undefined)
    return [bore.from, bore.to];
  const mouth = mouthOf(bore);
  const end = mouth + inwards(bore) * bore.reaches;
  return mouth < end ? [mouth, end] : [end, mouth];
}

/** The axis, and the shaft between and beyond its journals in thin dashes. */
export function shaftShape(
  bores: readonly SectionBore[],
  [left, right]: readonly [number, number],
  { ink, scales, axis }: Section,
): Markup {
  const seats = bores
    .filter((bore) => bore.journal !== undefined)
    .map((bore) => {
      const [from, to] = journalSpan(bore);
      return {
        from: scales.along(from),
        to: scales.along(to),
        radius: radiiOf(bore, scales).journal,
        closed: bore.bottom === "blind" ? bore.mouth : undefined,
      };
    })
    .sort((one, other) => one.from - other.from);
  const [first, last] = [seats[0], seats.at(-1)];
  const pieces: Content[] = [];
  const piece = (from: number, to: number, radius: number): void => {
    if (to <= from + 1) return;
    pieces.push(
      ...[-radius, radius].map((y) =>
        line(from, axis + y, to, axis + y, {
          stroke: ink.journal,
          dashes: "2 3",
        }),
      ),
    );
  };
  seats.forEach((seat, index) => {
    const next = seats[index + 1];
    if (next !== undefined)
      piece(seat.to, next.from, Math.min(seat.radius, next.radius) * 0.92);
  });
  if (first !== undefined && first.closed !== "to")
    piece(left, first.from, first.radius * 0.92);
  if (last !== undefined && last.closed !== "from")
    piece(last.to, right, last.radius * 0.92);
  return together(
    pieces.length === 0
      ? NOTHING
      : element(
          "g",
          {},
          element(
            "title",
            {},
            "the shaft beside its journals: its shape is not recorded",
          ),
          ...pieces,
        ),
    line(left, axis, right, axis, {
      stroke: ink.text,
      width: 0.8,
      dashes: "12 3 2 3",
    }),
  );
}
