// All that is offered at a caret without a finding that asks for it.
import type { OpenFile } from "../model/project.ts";
import { spotAt, type Position } from "./position.ts";
import { toCrib } from "./refactor-crib.ts";
import { doneToday, missingFacts, readingRows } from "./refactor-facts.ts";
import { otherForms } from "./refactor-ranges.ts";
import { reamersToTake } from "./refactor-reamer.ts";
import { otherUnits } from "./refactor-units.ts";
import { wantedByAdvice } from "./refactor-want.ts";
import type { Refactoring } from "./refactoring.ts";

/** @param today ISO 8601, the day where the editor is */
export function refactoringsAt(
  open: OpenFile,
  position: Position,
  today: string,
): readonly Refactoring[] {
  const spot = spotAt(open, position);
  if (spot?.kind === undefined) return [];
  const isOpening = spot.kind === "job" || spot.kind === "shop";
  return [
    ...wantedByAdvice(open, spot),
    ...reamersToTake(open, spot),
    ...doneToday(open, spot, today),
    ...missingFacts(open, spot, today),
    ...readingRows(open, spot),
    ...otherForms(open, spot),
    ...toCrib(open, spot),
    ...(isOpening ? [otherUnits(open) ?? []].flat() : []),
  ];
}
