// The tolerance picture of a fit: the journal's zone and readings, the bore sizes that would give the wanted clearance, the bore's zone and
// readings, all against one axis of diameters; below it the clearances cold and hot against what is wanted.
import { showRange } from "../core/quantity/show.ts";
import type { Shop } from "../model/shop.ts";
import { bandStrip, type Drawn } from "./band-strip.ts";
import { axisOf, chartOf, sideColumn, windowColumn } from "./fit-chart.ts";
import { saidBelow, windowLacks } from "./fit-empty.ts";
import { headHeight } from "./fit-heads.ts";
import {
  clearanceRows,
  fitZones,
  type FitZones,
  type Side,
} from "./fit-zones.ts";
import { inkOf, widthOf, type Ink, type PictureOptions } from "./ink.ts";
import { scale, spanOf } from "./scale.ts";
import {
  lettering,
  picture,
  sentencePicture,
  SMALL,
  wrapped,
  type Box,
} from "./shapes.ts";
import { NOTHING, together } from "./svg.ts";
import { unreadText } from "./words.ts";

const AXIS = 66;
const EDGE = 6;
/** Beside each column. */
const GAP = 4;
const HEIGHT = 190;
const FOOT = 24;

/** The picture as SVG text. What is not known is said in its place; a fit that can't be read gives a picture that says so. */
export function fitPicture(
  shop: Shop,
  fit: string,
  options: PictureOptions,
): string {
  const ink = inkOf(options.theme);
  const width = widthOf(options);
  const unread = unreadText(shop, fit);
  if (unread !== undefined) return sentencePicture(unread, width, ink, fit);
  const zones = fitZones(shop, fit);
  const sizes = sizesOf(zones, fit, width, ink);
  const { says, drawn } = clearancesOf(shop, zones, fit, sizes.height, {
    width,
    ink,
  });
  return picture(
    { width, height: sizes.height + drawn.height + EDGE },
    says,
    ink,
    fit,
    sizes.markup,
    drawn.markup,
  );
}

/** The same as two pictures, so that the end of a page may come between them: the sizes, then the clearances. */
export function fitPictures(
  shop: Shop,
  fit: string,
  options: PictureOptions,
): readonly string[] {
  if (unreadText(shop, fit) !== undefined)
    return [fitPicture(shop, fit, options)];
  const ink = inkOf(options.theme);
  const width = widthOf(options);
  const zones = fitZones(shop, fit);
  const sizes = sizesOf(zones, fit, width, ink);
  const { says, drawn } = clearancesOf(shop, zones, fit, 0, { width, ink });
  const one = ({ markup, height }: Drawn, what: string): string =>
    picture({ width, height: height + EDGE }, what, ink, fit, markup);
  return [one(sizes, `${fit}: journal and bore`), one(drawn, says)];
}

/** The chart of diameters, and below it what a column has no room for. */
function sizesOf(zones: FitZones, fit: string, width: number, ink: Ink): Drawn {
  const values = valuesShown(zones);
  const across = { x: AXIS, width: width - AXIS - EDGE };
  const box: Box = {
    ...across,
    y: headHeight(zones, across.width / 3 - 2 * GAP),
    height: HEIGHT,
  };
  const chart =
    values.length === 0
      ? undefined
      : chartOf(
          zones,
          box,
          // a wide enough span keeps one value alone from filling the chart
          scale(spanOf(values, 0.16, 2e-6), [box.y + HEIGHT, box.y]),
          ink,
        );
  const columns = columnsOf(box);
  const below = saidBelow(zones, windowLacks(zones, fit), columns).flatMap(
    (said) => wrapped(said, width - 2 * EDGE, SMALL),
  );
  const belowTop = box.y + HEIGHT + FOOT;
  return {
    markup: together(
      chart === undefined ? NOTHING : axisOf(chart, zones),
      sideColumn(zones.journal, "journal", columns[0], chart, ink),
      windowColumn(zones, fit, columns[1], chart, ink),
      sideColumn(zones.bore, "bore", columns[2], chart, ink),
      lettering(
        EDGE,
        belowTop + 12,
        below,
        { fill: ink.text, size: SMALL },
        14,
      ),
    ),
    height: belowTop + below.length * 14 + (below.length === 0 ? 0 : 4),
  };
}

/** The clearances cold and hot against what is wanted, and what is said of the first. */
function clearancesOf(
  shop: Shop,
  zones: FitZones,
  fit: string,
  top: number,
  { width, ink }: { readonly width: number; readonly ink: Ink },
): { readonly says: string; readonly drawn: Drawn } {
  const rows = clearanceRows(shop, fit);
  const title = wrapped(wantedTitle(zones), (width - 2 * EDGE) * 0.95);
  const titleHeight = title.length * 15 + 4;
  const strip = bandStrip(rows, {
    x: EDGE,
    y: top + titleHeight,
    width: width - 2 * EDGE,
    system: zones.system,
    ink,
    zero: "no clearance",
  });
  return {
    says: `${fit}: clearance ${rows[0]?.words ?? "not known"}`,
    drawn: {
      markup: together(
        lettering(EDGE, top + 12, title, { fill: ink.text, bold: true }),
        strip.markup,
      ),
      height: titleHeight + strip.height,
    },
  };
}

function wantedTitle({ want, system }: FitZones): string {
  if (want === undefined) return "Clearance, diametral; none is wanted yet";
  if (!want.known) return "Clearance, diametral";
  const { low, high, step, className } = want.value;
  const named = className === undefined ? "" : ` (${className})`;
  return `Clearance, diametral; wanted ${showRange(low, high, system, step)}${named}`;
}

function columnsOf({ x, y, width, height }: Box): readonly [Box, Box, Box] {
  const room = width / 3;
  const column = (index: number): Box => ({
    x: x + index * room + GAP,
    y,
    width: room - 2 * GAP,
    height,
  });
  return [column(0), column(1), column(2)];
}

function valuesShown({
  journal,
  bore,
  window,
  nominal,
}: FitZones): readonly number[] {
  const ofSide = ({ size, limits }: Side): readonly number[] => {
    const u = size?.known === true ? (size.value.budget?.expanded ?? 0) : 0;
    return [
      ...(size?.known === true
        ? [size.value.low - u, size.value.high + u]
        : []),
      ...(limits === undefined ? [] : [limits.low, limits.high]),
    ];
  };
  return [
    ...ofSide(journal),
    ...ofSide(bore),
    ...(window === undefined ? [] : [window.low, window.high]),
    ...(nominal === undefined ? [] : [nominal]),
  ];
}
