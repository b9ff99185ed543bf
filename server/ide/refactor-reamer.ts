// The reamers of the crib that serve a line which names none yet, each to be taken. Whoever takes one has chosen it: the order is that of the
// choice, and what it leaves stands beside the line at once.
import { eolOf } from "../../grammar/lines.ts";
import { given } from "../model/entry.ts";
import { cribRankingOf } from "../model/evaluate/window.ts";
import type { OpenFile } from "../model/project.ts";
import type { Spot } from "./position.ts";
import { endOfFacts, type Refactoring } from "./refactoring.ts";
import { nameOf } from "../model/reference.ts";

/** More is a list that nobody reads, and the bench view has them all. */
const SHOWN = 3;

/** At a line that says neither what it is reamed with nor that it is cut in another way. */
export function reamersToTake(
  { file, path, shop }: OpenFile,
  { entry, index }: Spot,
): readonly Refactoring[] {
  if (
    entry.kind !== "line" ||
    entry.damaged ||
    given(entry, "ReamFact").state !== "absent" ||
    given(entry, "CutFact").state !== "absent"
  )
    return [];
  const ranking = cribRankingOf(shop, entry.ref);
  if (!ranking.known) return [];
  const at = endOfFacts(file, index);
  return ranking.value.crib
    .flatMap(({ ranked, reamer }) =>
      ranked.serves && reamer !== undefined ? [reamer] : [],
    )
    .slice(0, SHOWN)
    .map((reamer, place) => ({
      title: `Ream with ${reamer}${place === 0 ? ", the best of those that serve" : ", which serves"}`,
      kind: "mend",
      edits: [
        {
          file: path,
          range: { start: at, end: at },
          text: `${eolOf(file.lines)}  ream with ${nameOf(reamer)}`,
        },
      ],
    }));
}
