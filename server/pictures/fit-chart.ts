// The parts of a fit's chart of diameters: its axis, and the columns of the journal, of the bore sizes that are wanted, and of the bore.
import {
  lengthDigits,
  showLength,
  showRange,
  type System,
} from "../core/quantity/show.ts";
import type { Size } from "../model/evaluate/size.ts";
import { axisDigits } from "./band-strip.ts";
import type { FitZones, Side } from "./fit-zones.ts";
import type { Ink } from "./ink.ts";
import { roundDown, ticks, type Scale } from "./scale.ts";
import {
  about,
  bar,
  block,
  dots,
  hatch,
  label,
  lettering,
  line,
  SMALL,
  wrapped,
  type Box,
} from "./shapes.ts";
import { element, NOTHING, together, type Markup } from "./svg.ts";
import { notKnown, sureness, UNREAD } from "./words.ts";

const METRES: Readonly<Record<System, number>> = { inch: 0.0254, mm: 0.001 };

export interface Chart {
  readonly ink: Ink;
  readonly system: System;
  readonly down: Scale;
  /** Where the columns are; left of them is the axis, above them their headings. */
  readonly box: Box;
}

/** Round diameters at the left, the nominal size, and a bar of a round length. */
export function axisOf(chart: Chart, { nominal }: FitZones): Markup {
  const { ink, system, down, box } = chart;
  const right = box.x + box.width;
  const unit = METRES[system];
  const marks = ticks([down.low, down.high], 4, unit);
  const bottom = box.y + box.height;
  const long = roundDown((down.high - down.low) / 4 / unit) * unit;
  const barTop = bottom - Math.abs(down(long) - down(0));
  const says = `bar: ${axisDigits(long, long, system)} ${system === "inch" ? "in" : "mm"} of diameter`;
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

/** The lines over a column: what it is, and how it is known. */
interface Heading {
  readonly name: readonly string[];
  readonly words: readonly string[];
}

const HEAD_LEADING = 13;
const MOST_NAME = 3;
const MOST_WORDS = 4;

function headingOf(name: string, words: string, width: number): Heading {
  const room = width + 6;
  return {
    // bold letters are a little wider
    name: wrapped(name, room / 1.05).slice(0, MOST_NAME),
    words: words === "" ? [] : wrapped(words, room, SMALL).slice(0, MOST_WORDS),
  };
}

/** The room that the headings of a chart take whose columns are so wide. */
export function headHeight({ journal, bore }: FitZones, width: number): number {
  const heads = [
    sideHeading(journal, "journal", width),
    headingOf(WANTED, BY_CLEARANCE, width),
    sideHeading(bore, "bore", width),
  ];
  const most = Math.max(
    ...heads.map(({ name, words }) => name.length + words.length),
  );
  return most * HEAD_LEADING + 22;
}

const WANTED = "bore wanted";
const BY_CLEARANCE = "by the clearance";

function sideHeading(
  { ref, size }: Side,
  kind: "journal" | "bore",
  width: number,
): Heading {
  return headingOf(
    ref ?? kind,
    size?.known === true ? sureness(size.value) : "",
    width,
  );
}

function heading(
  { x, width }: Box,
  { name, words }: Heading,
  ink: Ink,
): Markup {
  const middle = x + width / 2;
  const top = HEAD_LEADING + 4;
  return together(
    lettering(
      middle,
      top,
      name,
      { fill: ink.text, bold: true, anchor: "middle" },
      HEAD_LEADING,
    ),
    lettering(
      middle,
      top + name.length * HEAD_LEADING,
      words,
      { fill: ink.text, size: SMALL, anchor: "middle" },
      HEAD_LEADING,
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
    const text =
      size === undefined
        ? `not known: mend the ${kind} that the fit names`
        : size.known
          ? ""
          : notKnown(size);
    return about(
      ref,
      `${name}: ${text}`,
      heading(column, head, ink),
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
    heading(column, head, ink),
    hasBoth
      ? zone(
          limits,
          { ...column, width: half - 2 },
          `limits of ${name}`,
          "limits",
          limits.step,
          { chart, colour, kind, full: false },
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
      },
    ),
    readings(size.value, own, name, chart),
  );
}

/** A block from its low to its high size, with both written at its ends: dashed and hatched unless it was measured. */
function zone(
  { low, high }: { readonly low: number; readonly high: number },
  { x, width }: Box,
  name: string,
  word: string,
  step: number | undefined,
  {
    chart: { ink, system, down },
    colour,
    kind,
    full,
    clear = 0,
  }: {
    readonly chart: Chart;
    readonly colour: string;
    readonly kind: "journal" | "bore";
    readonly full: boolean;
    /** Room over and under it that its bars of uncertainty take, m. */
    readonly clear?: number;
  },
): Markup {
  const box = { x, width, y: down(high), height: down(low) - down(high) };
  const middle = x + width / 2;
  const figure = {
    fill: ink.text,
    size: SMALL,
    anchor: "middle",
    rim: ink.paper,
  } as const;
  const [upper, lower] = [
    lengthDigits(high, system, step),
    lengthDigits(low, system, step),
  ];
  return element(
    "g",
    {},
    element("title", {}, `${name} ${showRange(low, high, system, step)}`),
    block(
      box,
      full
        ? { fill: colour, opacity: 0.3, stroke: colour, width: 1.5 }
        : { stroke: colour, width: 1.5, dashes: "4 2" },
    ),
    full
      ? NOTHING
      : hatch(box, {
          stroke: colour,
          spacing: kind === "bore" ? 7 : 5,
          lean: kind === "bore" ? "left" : "right",
        }),
    label(middle, Math.min(box.y, down(high + clear)) - 5, upper, figure),
    lower === upper
      ? NOTHING
      : label(
          middle,
          Math.max(box.y + box.height, down(low - clear)) + 12,
          lower,
          figure,
        ),
    word === ""
      ? NOTHING
      : label(middle, box.y + box.height / 2 + 4, word, figure),
  );
}

/** Each value as a point with a bar of its uncertainty, in the order that it was read. */
function readings(
  size: Size,
  { x, width }: Box,
  name: string,
  { ink, system, down }: Chart,
): Markup {
  const all = size.places.flatMap((place) =>
    place.readings.flatMap((reading) =>
      reading.values.map((value) => ({ value, place: place.place })),
    ),
  );
  const u = size.budget?.expanded;
  const gap = width / (all.length + 1);
  return together(
    all.map(({ value, place }, index) => {
      const at = { x: x + gap * (index + 1), y: down(value) };
      const told =
        u === undefined
          ? "uncertainty not known"
          : `U ${showLength(u, system, u / 10)} (95 %)`;
      return element(
        "g",
        {},
        element(
          "title",
          {},
          `${name}${place === undefined ? "" : `, ${place}`}: ${showLength(value, system, size.step)}, ${told}`,
        ),
        u === undefined
          ? NOTHING
          : bar(
              { x: at.x, y: down(value - u) },
              { x: at.x, y: down(value + u) },
              Math.min(3, gap / 2.5),
              { stroke: ink.text },
            ),
        element("circle", {
          cx: at.x,
          cy: at.y,
          r: Math.min(2.6, Math.max(1.4, gap / 2.5)),
          fill: ink.text,
        }),
      );
    }),
  );
}

/** The bore sizes that would give the wanted clearance over every size of the journal. */
export function windowColumn(
  { window, want, system, journal }: FitZones,
  fit: string,
  column: Box,
  chart: Chart | undefined,
  ink: Ink,
): Markup {
  const step = want?.known === true ? want.value.step : undefined;
  if (window === undefined || chart === undefined || window.high < window.low) {
    const text =
      want === undefined
        ? `not known: write the clearance that ${fit} wants`
        : window === undefined || chart === undefined
          ? `not known: ${want.known ? "waits for the journal" : UNREAD}`
          : "no one size: the journal differs by more than the wanted clearance is wide";
    return about(
      fit,
      `bore sizes wanted: ${text}`,
      heading(column, headingOf(WANTED, "", column.width), ink),
      emptyColumn(column, text, ink),
    );
  }
  const { down } = chart;
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
  const figure = {
    fill: ink.text,
    size: SMALL,
    anchor: "middle",
    rim: ink.paper,
  } as const;
  const middle = column.x + half;
  const across = { stroke: ink.wanted, width: 1, dashes: "2 3" };
  return about(
    fit,
    `bore sizes wanted ${showRange(window.low, window.high, system, shown)}`,
    heading(column, headingOf(WANTED, BY_CLEARANCE, column.width), ink),
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
    label(middle, box.y - 5, lengthDigits(window.high, system, shown), figure),
    label(
      middle,
      box.y + box.height + 12,
      lengthDigits(window.low, system, shown),
      figure,
    ),
  );
}

function emptyColumn(
  { x, y, width, height }: Box,
  text: string,
  ink: Ink,
): Markup {
  const lines = wrapped(text, width - 10, SMALL);
  const most = Math.floor((height - 12) / 14);
  return together(
    // what runs across the chart stops here, or it would run through the words
    block(
      { x, y, width, height },
      { fill: ink.paper, stroke: ink.rule, dashes: "3 4" },
    ),
    lettering(
      x + 5,
      y + 20,
      lines.length <= most
        ? lines
        : [...lines.slice(0, most - 1), `${lines[most - 1] ?? ""}…`],
      { fill: ink.text, size: SMALL },
      14,
    ),
  );
}
