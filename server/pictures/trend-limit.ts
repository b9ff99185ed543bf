// The limit of a size in its trend's chart: a line where it is near, words alone where it is far.
import { showLength } from "../core/quantity/show.ts";
import type { Series } from "../records/trend.ts";
import type { Ink } from "./ink.ts";
import type { Scale } from "./scale.ts";
import { block, label, lengthOf, line, SMALL } from "./shapes.ts";
import { together, type Markup } from "./svg.ts";

/** A limit that lies so far off that the points would be one line is named in words alone. */
export function nearEnough(
  { limit }: Series,
  values: readonly number[],
): boolean {
  if (limit === undefined) return false;
  const wide = Math.max(...values) - Math.min(...values);
  const off = Math.max(
    0,
    limit - Math.max(...values),
    Math.min(...values) - limit,
  );
  return off <= 6 * Math.max(wide, 2e-6);
}

export function limitOf(
  series: Series,
  isNear: boolean,
  up: Scale,
  left: number,
  right: number,
  plotTop: number,
  ink: Ink,
): Markup {
  const { limit, limitIs, system, towards } = series;
  if (limit === undefined || limitIs === undefined) return together();
  const name = `${limitIs === "wanted" ? "most that is wanted" : limitIs} ${showLength(limit, system, series.runs.at(-1)?.points.at(-1)?.step)}`;
  if (!isNear)
    return limitLabel(
      right,
      plotTop + 14,
      `${name}: far ${towards === 1 ? "above" : "below"}`,
      ink.muted,
      ink,
    );
  return together(
    line(left, up(limit), right, up(limit), {
      stroke: ink.wrong,
      width: 1.5,
      dashes: "8 4",
    }),
    limitLabel(right, up(limit) - 5, name, ink.wrong, ink),
  );
}

/** On a ground of its own and without a rim: not every program that a picture is mailed to draws a rim below the letters. */
function limitLabel(
  right: number,
  y: number,
  text: string,
  fill: string,
  ink: Ink,
): Markup {
  const long = lengthOf(text, SMALL);
  return together(
    block(
      { x: right - long, y: y - 9, width: long, height: 11 },
      { fill: ink.paper },
    ),
    label(right, y, text, { anchor: "end", size: SMALL, fill }),
  );
}
