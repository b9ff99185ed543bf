// What the marks of a trend's chart mean, in words, for a picture that stands by itself: who is sent it has nothing else to go by.
import { kindOf } from "../model/reference.ts";
import type { Series } from "../records/trend.ts";

/** What stands along the side of a panel; its unit is in the figures. */
export function sideWords({ entry }: Series): string {
  return kindOf(entry) === "fit"
    ? "Clearance on the diameter, at 20 °C"
    : "Diameter at 20 °C";
}

/** Only the marks that there are. */
export function keyWords(series: readonly Series[]): string {
  const runs = series.flatMap((each) => each.runs);
  const points = runs.flatMap((run) => run.points);
  return [
    "Point: as read.",
    points.some(({ uncertainty }) => uncertainty !== undefined)
      ? "Bar through it: what it is known to (95\u00A0%)."
      : "",
    runs.some(({ line }) => line !== undefined)
      ? "Line: the rate; band round it: where the line may lie (95\u00A0%)."
      : "",
    points.some(({ datedBy }) => datedBy === "commit")
      ? "The day of some points is that of a commit."
      : "",
  ]
    .filter((words) => words !== "")
    .join(" ");
}
