// The line in section: bosses, bushes and bores where they lie along the axis, the journals in them with their clearance drawn larger and so
// said, the bottom and the ledge of a blind bore, a chain of dimensions, and the cuts in their order.
import { showRange, type System } from "../core/quantity/show.ts";
import { settings } from "../model/evaluate/settings.ts";
import type { Shop } from "../model/shop.ts";
import { inkOf, widthOf, type PictureOptions } from "./ink.ts";
import { cutRows, dimensionChain } from "./line-cuts.ts";
import { lineScales, radiiOf, type LineScales } from "./line-scales.ts";
import { sectionOf, type SectionBore } from "./line-section.ts";
import {
  journalShape,
  shaftShape,
  wallsOf,
  type Section,
} from "./line-shapes.ts";
import {
  about,
  lettering,
  line,
  picture,
  sentencePicture,
  SMALL,
  wrapped,
} from "./shapes.ts";
import { together, type Markup } from "./svg.ts";
import { judgedWords, notKnown, UNREAD, unreadText } from "./words.ts";

const EDGE = 6;

/** The picture as SVG text. What is not known is said in its place; a line that can't be read gives a picture that says so. */
export function linePicture(
  shop: Shop,
  lineRef: string,
  options: PictureOptions,
): string {
  const ink = inkOf(options.theme);
  const width = widthOf(options);
  const bores = sectionOf(shop, lineRef);
  const sentence =
    unreadText(shop, lineRef) ??
    (!bores.known
      ? `${lineRef} ${UNREAD}: mend it first.`
      : bores.value.length === 0
        ? `${lineRef}: not known: write its bores in the order of cutting, each as: bore NAME from 0 to 1.25`
        : undefined);
  if (sentence !== undefined || !bores.known)
    return sentencePicture(sentence ?? "", width, ink, lineRef);
  const { system } = settings(shop);
  const scales = lineScales(bores.value, EDGE, width - 2 * EDGE);
  const heads = headings(bores.value, shop, scales, width, options);
  const axis = heads.height + 10 + scales.half;
  const section: Section = { ink, system, scales, axis };
  const chainTop = axis + scales.half + 10;
  const chain = dimensionChain(bores.value, chainTop, section);
  const legend = wrapped(
    legendText(bores.value, scales, system),
    width - 2 * EDGE,
    SMALL,
  );
  const legendTop = chainTop + chain.height + 8;
  const cutsTop = legendTop + legend.length * 14 + 8;
  const cuts = cutRows(shop, lineRef, bores.value, cutsTop, width, section);
  return picture(
    { width, height: cutsTop + cuts.height + EDGE },
    `${lineRef} in section: ${bores.value.map((bore) => `${bore.ref}, ${clearanceWords(bore, shop)}`).join("; ")}`,
    ink,
    lineRef,
    heads.markup,
    bores.value.map((bore) => wallsOf(bore, section)),
    shaftShape(bores.value, [EDGE, width - EDGE], section),
    bores.value.map((bore) => journalShape(bore, section)),
    chain.markup,
    lettering(
      EDGE,
      legendTop + 10,
      legend,
      { fill: ink.muted, size: SMALL },
      14,
    ),
    cuts.markup,
  );
}

/** What is said of each bore above it, in columns from left to right, with a line down to the bore. */
function headings(
  bores: readonly SectionBore[],
  shop: Shop,
  scales: LineScales,
  width: number,
  options: PictureOptions,
): { readonly markup: Markup; readonly height: number } {
  const ink = inkOf(options.theme);
  const inOrder = [...bores].sort((one, other) => one.from - other.from);
  const room = (width - 2 * EDGE) / bores.length;
  const columns = inOrder.map((bore, index) => ({
    bore,
    middle: EDGE + room * (index + 0.5),
    name: wrapped(bore.ref, (room - 8) / 1.05),
    // in many columns nobody could read more than the name: the title says it
    said:
      room < 78
        ? []
        : wrapped(`clearance ${clearanceWords(bore, shop)}`, room - 8, SMALL),
  }));
  const lines = Math.max(...columns.map(({ said }) => said.length));
  const named = Math.max(...columns.map(({ name }) => name.length)) * 15;
  const foot = EDGE + 1 + named + lines * 14;
  return {
    height: foot + 8,
    markup: together(
      columns.map(({ bore, middle, name, said }) => {
        const at = scales.along((bore.from + bore.to) / 2);
        const top = foot + 18 + scales.half - radiiOf(bore, scales).outer;
        return about(
          bore.fit ?? bore.ref,
          `${bore.ref}: clearance ${clearanceWords(bore, shop)}`,
          lettering(middle, EDGE + 10, name, {
            fill: ink.text,
            bold: true,
            anchor: "middle",
          }),
          lettering(
            middle,
            EDGE + 10 + named,
            said,
            { fill: ink.text, size: SMALL, anchor: "middle" },
            14,
          ),
          line(middle, EDGE + 1 + named + said.length * 14, at, top, {
            stroke: ink.rule,
          }),
        );
      }),
    ),
  };
}

function clearanceWords(
  { clearance, verdict, ref }: SectionBore,
  shop: Shop,
): string {
  if (clearance === undefined)
    return `not known: write the fit that runs in ${ref}`;
  if (!clearance.known) return notKnown(clearance);
  const { low, high, step, status } = clearance.value;
  return `${showRange(low, high, settings(shop).system, step)}, ${judgedWords(status, verdict)}`;
}

function legendText(
  bores: readonly SectionBore[],
  { times, alongBy, acrossBy }: LineScales,
  system: System,
): string {
  const ratio = acrossBy / alongBy;
  const scale =
    Math.abs(ratio - 1) < 0.005
      ? "Lengths and diameters to one scale"
      : Math.abs(ratio - 1) < 0.05
        ? "Lengths and diameters nearly to one scale"
        : ratio < 1
          ? `Lengths drawn ${round(1 / ratio)} times as large as diameters`
          : `Diameters drawn ${round(ratio)} times as large as lengths`;
  const clearance =
    times === undefined
      ? "clearance not known and drawn as a gap of no size"
      : `clearance drawn ${String(times)} times`;
  const hatches = [
    ...(bores.some((bore) => bore.bush !== undefined)
      ? ["fine hatch: bush", "wide hatch: case"]
      : ["hatch: case"]),
    "dashed: predicted or not recorded",
    ...(bores.some(
      ({ ledge }) => ledge?.known === true && 0 < ledge.value.nominal,
    )
      ? ["filled: the ledge that the reamer leaves"]
      : []),
  ];
  return `Lengths in ${system === "inch" ? "inches" : "mm"}. ${scale}; ${clearance}; ${hatches.join("; ")}.`;
}

function round(value: number): string {
  return value < 10 ? String(Number(value.toFixed(1))) : value.toFixed(0);
}
