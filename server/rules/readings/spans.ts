// Where the values of a place stand, for findings about all of them.
import type { PlaceReadings } from "../../model/evaluate/readings.ts";
import type { Span } from "../../model/values.ts";

/** From the first to the last value of the place's last line; undefined where it has none. */
export function spanOfValues(
  place: PlaceReadings | undefined,
): Span | undefined {
  const spans = place?.readings.at(-1)?.valueSpans ?? [];
  const [first, last] = [spans[0], spans.at(-1)];
  return first === undefined || last === undefined
    ? undefined
    : { ...first, end: last.end };
}
