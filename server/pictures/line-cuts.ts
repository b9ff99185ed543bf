// Below a line in section: the chain of dimensions, and the cuts in their order, each with its pilot, how far the reamer reaches, and what it
// leaves.
import {
  fixed,
  showLength,
  showRange,
  type System,
} from "../core/quantity/show.ts";
import { valueIn } from "../model/entry.ts";
import { cutOf } from "../model/evaluate/bore.ts";
import { ledgeFoulsOf } from "../model/evaluate/ledge.ts";
import { reamerOfLine } from "../model/evaluate/line-bores.ts";
import { guidesOf, pilotLinesOf } from "../model/evaluate/pilot.ts";
import type { Size } from "../model/evaluate/size.ts";
import { entryOf, type Shop } from "../model/shop.ts";
import type { SectionBore } from "./line-section.ts";
import { mouthOf, type Section } from "./line-shapes.ts";
import {
  about,
  arrowHead,
  block,
  hatch,
  label,
  lengthOf,
  lettering,
  line,
  SMALL,
  wrapped,
} from "./shapes.ts";
import { NOTHING, together, type Markup } from "./svg.ts";
import { notKnown } from "./words.ts";
import type { Drawn } from "./band-strip.ts";
import type { Ink } from "./ink.ts";

const METRES: Readonly<Record<System, number>> = { inch: 0.0254, mm: 0.001 };

/** A place along the axis as it was written, about: the record keeps no digits of it. */
function placeDigits(metres: number, system: System): string {
  return fixed(metres / METRES[system], system === "inch" ? 4 : 3).replace(
    /\.?0+$/,
    "",
  );
}

/** The chain of lengths from end to end of the bores, in two rows where one has no room. */
export function dimensionChain(
  bores: readonly SectionBore[],
  y: number,
  { ink, system, scales }: Section,
): Drawn {
  const places = [...new Set(bores.flatMap(({ from, to }) => [from, to]))].sort(
    (a, b) => a - b,
  );
  let rows = 1;
  let crowded = false;
  const links = places.slice(1).map((to, index) => {
    const from = places[index] ?? to;
    const [x1, x2] = [scales.along(from), scales.along(to)];
    const text = placeDigits(to - from, system);
    const fits = lengthOf(text, SMALL) + 4 <= x2 - x1;
    // every other one that has no room goes a row down
    crowded = !fits && !crowded;
    if (!fits && !crowded) rows = 2;
    const down = fits || crowded ? 0 : 13;
    const middle = (x1 + x2) / 2;
    return about(
      undefined,
      `${showLength(to - from, system)} from ${placeDigits(from, system)} to ${placeDigits(to, system)}`,
      line(x1, y + 6, x2, y + 6, { stroke: ink.text }),
      x2 - x1 < 18
        ? NOTHING
        : together(
            arrowHead(x1, y + 6, "left", ink.text),
            arrowHead(x2, y + 6, "right", ink.text),
          ),
      label(middle, y + 20 + down, text, {
        fill: ink.text,
        size: SMALL,
        anchor: "middle",
      }),
    );
  });
  const ticks = places.map((place) =>
    line(scales.along(place), y - 4, scales.along(place), y + 10, {
      stroke: ink.text,
    }),
  );
  return {
    markup: together(ticks, links),
    height: 26 + (rows - 1) * 13,
  };
}

/** What is done to each bore, in the order of cutting. */
export function cutRows(
  shop: Shop,
  lineRef: string,
  bores: readonly SectionBore[],
  y: number,
  width: number,
  section: Section,
): Drawn {
  const { ink } = section;
  let below = y;
  const rows = bores.map((bore, index) => {
    const said = cutWords(shop, lineRef, bore, section.system);
    const lines = wrapped(
      `Cut ${String(index + 1)}, ${bore.ref}: ${said}`,
      width - 12,
      SMALL,
    );
    const words = lettering(
      6,
      below + 12,
      lines,
      { fill: ink.text, size: SMALL },
      14,
    );
    const top = below + lines.length * 14 + 5;
    const tool = toolShape(shop, lineRef, bore, bores, top, section);
    below = top + 33;
    return about(lineRef, said, words, tool);
  });
  return { markup: together(rows), height: below - y };
}

/** What a bore was read as when finished: then it is past its cut. */
function finishedSize({ size }: SectionBore): Size | undefined {
  return size.known && size.value.status === "measured"
    ? size.value
    : undefined;
}

function cutWords(
  shop: Shop,
  lineRef: string,
  bore: SectionBore,
  system: System,
): string {
  const entry = entryOf(shop, lineRef);
  const reamer = reamerOfLine(shop, lineRef);
  const cut = cutOf(shop, bore.ref);
  const isBored = valueIn(entry, "CutFact") !== undefined;
  const finished = finishedSize(bore);
  if (finished !== undefined) {
    const { low, high, step } = finished;
    return `already cut: ${showRange(low, high, system, step)}, measured`;
  }
  const to =
    cut === undefined
      ? `not known: write the reamer of ${lineRef}`
      : cut.known
        ? `${showRange(cut.value.low, cut.value.high, system, cut.value.step)}, predicted`
        : notKnown(cut);
  const tool = isBored
    ? `bored or honed to ${to}`
    : reamer.known && reamer.value !== undefined
      ? `${reamer.value} cuts ${to}`
      : to;
  return [
    tool,
    ...pilotWords(shop, lineRef, bore, system),
    ...ledgeWords(bore, system),
    ...ledgeFoulsOf(shop, bore.ref).map(
      ({ journal, foul }) =>
        `${journal} runs onto the ledge by ${showLength(foul.by, system)}`,
    ),
  ].join("; ");
}

function pilotWords(
  shop: Shop,
  lineRef: string,
  bore: SectionBore,
  system: System,
): readonly string[] {
  const guides = guidesOf(shop, lineRef);
  return pilotLinesOf(shop, lineRef).flatMap((pilot, index) => {
    const guide = guides[index];
    if (pilot.guides !== bore.ref || guide === undefined) return [];
    const offset = guide.known
      ? `lets it wander up to ${showLength(guide.value.high, system, guide.value.step)}, ${guide.value.status}`
      : `its slack ${notKnown(guide)}`;
    return [`${pilot.pilot} in ${pilot.runsIn} ${offset}`];
  });
}

function ledgeWords(
  { ledge, bottom, mouthAssumed }: SectionBore,
  system: System,
): readonly string[] {
  const side = mouthAssumed
    ? ["which end is blind is not recorded, so the near end is drawn so"]
    : [];
  if (bottom !== "blind" || ledge === undefined) return side;
  if (!ledge.known) return [`ledge ${notKnown(ledge)}`, ...side];
  return [
    ledge.value.nominal === 0
      ? "no ledge: cut to its end"
      : `leaves a ledge of ${showLength(ledge.value.nominal, system)} at the bottom, predicted`,
    ...side,
  ];
}

/** A word below its bar, where no edge and no hatch runs through it; none where the bar has no room for it. */
function wordBelow(
  x1: number,
  x2: number,
  y: number,
  word: string,
  ink: Ink,
): Markup {
  return lengthOf(word, SMALL) < x2 - x1
    ? label((x1 + x2) / 2, y + 23, word, {
        fill: ink.text,
        size: SMALL,
        anchor: "middle",
      })
    : NOTHING;
}

/** The tool over the axis' own scale: the pilot where it runs, a rod on to the cut, the cut hatched while it is foretold and full once it is made. */
function toolShape(
  shop: Shop,
  lineRef: string,
  bore: SectionBore,
  bores: readonly SectionBore[],
  y: number,
  { ink, scales }: Section,
): Markup {
  const isCut = finishedSize(bore) !== undefined;
  const ledge = bore.ledge?.known === true ? bore.ledge.value : undefined;
  const reach = ledge?.ledge.cutDepth ?? bore.to - bore.from;
  const mouth = bore.mouth === undefined ? bore.from : mouthOf(bore);
  const way = bore.mouth === "to" ? -1 : 1;
  const ends = [scales.along(mouth), scales.along(mouth + way * reach)];
  const [from, to] = [Math.min(...ends), Math.max(...ends)];
  const cutBox = { x: from, y, width: to - from, height: 12 };
  const pilots = pilotLinesOf(shop, lineRef).flatMap(
    ({ guides, runsIn, pilot }) => {
      const seat = bores.find((each) => each.ref === runsIn);
      if (guides !== bore.ref || seat === undefined) return [];
      const [x1, x2] = [scales.along(seat.from), scales.along(seat.to)];
      const near = x2 <= from ? [x2, from] : to <= x1 ? [to, x1] : [x1, x1];
      return [
        about(
          pilot,
          `${pilot} runs in ${runsIn} and guides the cut of ${guides}`,
          block(
            { x: x1, y: y + 2, width: x2 - x1, height: 8 },
            { stroke: ink.text },
          ),
          wordBelow(x1, x2, y, "pilot", ink),
          line(near[0] ?? x1, y + 6, near[1] ?? x1, y + 6, {
            stroke: ink.text,
            width: 2,
          }),
        ),
      ];
    },
  );
  return together(
    pilots,
    about(
      bore.ref,
      `the cut of ${bore.ref}`,
      isCut ? NOTHING : hatch(cutBox, { stroke: ink.bore, spacing: 4 }),
      block(
        cutBox,
        isCut
          ? { fill: ink.bore, opacity: 0.3, stroke: ink.bore, width: 1.5 }
          : { stroke: ink.bore, width: 1.5, dashes: "4 2" },
      ),
      wordBelow(from, to, y, "cut", ink),
    ),
    ledge !== undefined && 0 < ledge.nominal
      ? block(
          {
            x: way === 1 ? to : from,
            y,
            width: way * Math.max(3, ledge.nominal * scales.alongBy),
            height: 12,
          },
          { fill: ink.wrong, stroke: ink.wrong },
        )
      : NOTHING,
  );
}
