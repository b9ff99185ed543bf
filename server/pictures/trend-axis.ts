// What a chart of sizes is marked with along its foot: years, months, or running hours.
import { dateOfDay } from "../records/trend.ts";
import type { Ink } from "./ink.ts";
import { ticks, type Scale } from "./scale.ts";
import { label, line, SMALL } from "./shapes.ts";
import { together, type Markup } from "./svg.ts";

/** Years, or months where the time is short. */
export function daysOf(
  across: Scale,
  bottom: number,
  ink: Ink,
): readonly Markup[] {
  const from = dateOfDay(across.low);
  const to = dateOfDay(across.high);
  if (from === undefined || to === undefined) return [];
  const isLong = 3 * 365 < across.high - across.low;
  const first = Number(from.slice(0, 4));
  const last = Number(to.slice(0, 4));
  const every = isLong ? Math.max(1, Math.ceil((last - first) / 8)) : 1;
  const marks: { readonly day: number; readonly name: string }[] = [];
  const apart = Math.max(1, Math.ceil((across.high - across.low) / 30 / 8));
  for (let year = first; year <= last; year += every)
    for (
      let month = 1;
      month <= (isLong ? 1 : 12);
      month += isLong ? 1 : apart
    ) {
      const text = `${String(year)}-${String(month).padStart(2, "0")}`;
      marks.push({
        day: Date.parse(`${text}-01T00:00:00Z`) / 86_400_000,
        name: isLong ? String(year) : text,
      });
    }
  return marks
    .filter(({ day }) => across.low <= day && day <= across.high)
    .map(({ day, name }) =>
      together(
        line(across(day), bottom, across(day), bottom + 4, {
          stroke: ink.rule,
        }),
        label(across(day), bottom + 17, name, {
          anchor: "middle",
          size: SMALL,
          fill: ink.muted,
        }),
      ),
    );
}

/** Hours as the meter shows them. */
export function hoursOf(
  across: Scale,
  bottom: number,
  ink: Ink,
): readonly Markup[] {
  return ticks([across.low, across.high], 6, 1).values.map((hours) =>
    together(
      line(across(hours), bottom, across(hours), bottom + 4, {
        stroke: ink.rule,
      }),
      label(across(hours), bottom + 17, `${String(hours)} h`, {
        anchor: "middle",
        size: SMALL,
        fill: ink.muted,
      }),
    ),
  );
}
