// The parts of a fit's chart of diameters: its axis, and the columns of the journal, of the bore sizes that are wanted, and of the bore.
import {
  UNIT_OF_SYSTEM,
  lengthDigits,
  showLength,
  showRange,
  type System,
} from "../core/quantity/show.ts";
import { axisDigits } from "./band-strip.ts";
import type { FitZones, Side } from "./fit-zones.ts";
import type { Size } from "../model/evaluate/size.ts";
import type { Ink } from "./ink.ts";
import { roundDown, ticks, type Scale } from "./scale.ts";
import { emptyColumn, sideLacks, windowLacks } from "./fit-empty.ts";
import { placesClearOf, type Across, type Figures } from "./fit-figures.ts";
import { headingAbove, sideHeading, wantedHeading } from "./fit-heads.ts";
import { figureIn, readings, zone } from "./fit-sizes.ts";
import {
  about,
  bar,
  block,
  dots,
  label,
  lengthOf,
  line,
  SMALL,
  type Box,
} from "./shapes.ts";
import { NOTHING, together, type Markup } from "./svg.ts";
import { sureness } from "./words.ts";

const METRES: Readonly<Record<System, number>> = { inch: 0.0254, mm: 0.001 };

export interface Chart {
  readonly ink: Ink;
  readonly system: System;
  readonly down: Scale;
  /** Where the columns are; left of them is the axis, above them their headings. */
  readonly box: Box;
  readonly figures: Figures;
}

/** A chart with nothing in it yet. */
export function chartOf(
  { nominal, window, system }: FitZones,
  box: Box,
  down: Scale,
  ink: Ink,
): Chart {
  const whole = { from: box.x, to: box.x + box.width };
  const lines: readonly Across[] = [
    ...marksOf(down, system).values.map((at) => ({ ...whole, y: down(at) })),
    ...(nominal === undefined ? [] : [{ ...whole, y: down(nominal) }]),
    ...(window === undefined
      ? []
      : [window.low, window.high].map((at) => ({
          // over the column of the sizes that are wanted and that of the bore
          from: box.x + box.width / 3,
          to: whole.to,
          y: down(at),
        }))),
  ];
  return {
    ink,
    system,
    down,
    box,
    figures: placesClearOf(lines, [box.y, box.y + box.height + 4]),
  };
}

function marksOf({ low, high }: Scale, system: System) {
  return ticks([low, high], 4, METRES[system]);
}

/** Round diameters at the left, the nominal size, and a bar of a round length. */
export function axisOf(chart: Chart, { nominal }: FitZones): Markup {
  const { ink, system, down, box } = chart;
  const right = box.x + box.width;
  const unit = METRES[system];
  const marks = marksOf(down, system);
  const bottom = box.y + box.height;
  const long = roundDown((down.high - down.low) / 4 / unit) * unit;
  const barTop = bottom - Math.abs(down(long) - down(0));
  const says = `bar: ${axisDigits(long, long, system)} ${UNIT_OF_SYSTEM[system]} of diameter`;
  const isNominal = (value: number): boolean =>
    nominal !== undefined && Math.abs(down(value) - down(nominal)) < 12;
  return together(
    marks.values.map((value) =>
      together(
        line(box.x - 4, down(value), right, down(value), {
          stroke: ink.rule,
          width: 0.5,
        }),
        // the nominal size has the room above its line
        label(
          box.x - 7,
          down(value) + (isNominal(value) ? 11 : 4),
          axisDigits(value, marks.step, system),
          { fill: ink.muted, size: SMALL, anchor: "end" },
        ),
      ),
    ),
    nominal === undefined
      ? NOTHING
      : about(
          undefined,
          `nominal size ${showLength(nominal, system)}`,
          line(box.x - 4, down(nominal), right, down(nominal), {
            stroke: ink.text,
            dashes: "10 3 2 3",
          }),
          label(box.x - 7, down(nominal) - 3, "nominal", {
            fill: ink.text,
            size: SMALL,
            anchor: "end",
          }),
        ),
    about(
      undefined,
      says,
      bar({ x: 9, y: bottom }, { x: 9, y: barTop }, 3, {
        stroke: ink.text,
        width: 1.5,
      }),
      label(6, bottom + 16, says, { fill: ink.text, size: SMALL }),
    ),
  );
}

export function sideColumn(
  side: Side,
  kind: "journal" | "bore",
  column: Box,
  chart: Chart | undefined,
  ink: Ink,
): Markup {
  const { ref, size, limits } = side;
  const head = sideHeading(side, kind, column.width);
  const name = ref ?? kind;
  const colour = kind === "journal" ? ink.journal : ink.bore;
  if (size?.known !== true || chart === undefined) {
    const text = sideLacks(side, kind) ?? "";
    return about(
      ref,
      `${name}: ${text}`,
      headingAbove(column, head, ink),
      emptyColumn(column, text, ink),
    );
  }
  const half = column.width / 2;
  const hasBoth = limits !== undefined && size.value.from !== "limits";
  const own: Box = hasBoth
    ? { ...column, x: column.x + half + 2, width: half - 2 }
    : { ...column, x: column.x + half / 2, width: half };
  return about(
    ref,
    `${name}, ${sureness(size.value)}: ${showRange(size.value.low, size.value.high, chart.system, size.value.step)}`,
    headingAbove(column, head, ink),
    hasBoth
      ? zone(
          limits,
          { ...column, width: half - 2 },
          `limits of ${name}`,
          "limits",
          limits.step,
          // away from those of the size beside them, or the two read as one
          { chart, colour, kind, full: false, aside: -4 },
        )
      : NOTHING,
    zone(
      size.value,
      own,
      name,
      size.value.from === "limits" ? "limits" : "",
      size.value.step,
      {
        chart,
        colour,
        kind,
        full: size.value.status === "measured",
        clear: size.value.budget?.expanded ?? 0,
        aside: hasBoth
          ? offLimits(size.value, own, chart.system, roomBeside(kind, column))
          : 0,
      },
    ),
    readings(size.value, own, name, chart),
  );
}

/** Right of a column, up to the next one's block or to the edge of the picture, px. */
function roomBeside(kind: "journal" | "bore", { width }: Box): number {
  return kind === "journal" ? 8 + width / 4 : 10;
}

/** How far to the right the sizes of a block stand, so that none is on the block of the limits at its left. */
function offLimits(
  { low, high, step }: Size,
  { width }: Box,
  system: System,
  room: number,
): number {
  const long = Math.max(
    ...[low, high].map((value) =>
      lengthOf(lengthDigits(value, system, step), SMALL),
    ),
  );
  const over = (long - width) / 2;
  return Math.max(0, Math.min(over, room - over));
}

/** The bore sizes that would give the wanted clearance over every size of the journal. */
export function windowColumn(
  zones: FitZones,
  fit: string,
  column: Box,
  chart: Chart | undefined,
  ink: Ink,
): Markup {
  const { window, want, system, journal } = zones;
  const step = want?.known === true ? want.value.step : undefined;
  if (window === undefined || chart === undefined || window.high < window.low) {
    const text = windowLacks(zones, fit) ?? "";
    return about(
      fit,
      `bore sizes wanted: ${text}`,
      headingAbove(column, wantedHeading(column.width, false), ink),
      emptyColumn(column, text, ink),
    );
  }
  const { down, figures } = chart;
  const half = column.width / 2;
  const box: Box = {
    x: column.x + half / 2,
    width: half,
    y: down(window.high),
    height: down(window.low) - down(window.high),
  };
  const journalStep =
    journal.size?.known === true ? journal.size.value.step : undefined;
  const shown = journalStep ?? step;
  const figure = figureIn(ink);
  const [least, most] = [window.low, window.high].map((value) =>
    lengthDigits(value, system, shown),
  ) as [string, string];
  const middle = column.x + half;
  const across = { stroke: ink.wanted, width: 1, dashes: "2 3" };
  return about(
    fit,
    `bore sizes wanted ${showRange(window.low, window.high, system, shown)}`,
    headingAbove(column, wantedHeading(column.width, true), ink),
    // on to the bore's own column, where it is compared
    [window.low, window.high].map((value) =>
      line(
        box.x,
        down(value),
        column.x + 2 * column.width + 8,
        down(value),
        across,
      ),
    ),
    dots(box, ink.wanted),
    block(box, { stroke: ink.wanted, width: 1.5, dashes: "2 2" }),
    label(middle, figures.place(middle, box.y - 5, most, "up"), most, figure),
    label(
      middle,
      figures.place(middle, box.y + box.height + 12, least, "down"),
      least,
      figure,
    ),
  );
}
