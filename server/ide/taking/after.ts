// What a person may do once readings are taken: read what comes next, or see what they come to.
import type { OpenFile } from "../../model/project.ts";
import { isFirstOfName } from "../../model/shop.ts";
import type { AfterTaking, TakingPlan } from "../../protocol/guide.ts";
import { toMeasure } from "../to-measure.ts";
import { isUnturned, targetLabel, targetName, targetsIn } from "./targets.ts";

/** Why a swing is worth the turn. */
export const HIDES =
  "An odd number of lobes hides from two points, and its mate meets it";

/** What may follow, what is likely wanted first: the other journals before a reamer can be chosen, and then the choice. */
export function choicesAfter(
  open: OpenFile,
  { ref, side, fact }: TakingPlan,
): readonly AfterTaking[] {
  const unread = targetsIn(open).filter(
    (each) => each.count === 0 && (each.ref !== ref || each.side !== side),
  );
  const wanted = stillToMeasure(open, ref, side);
  const first = unread.filter(
    (each) => wanted.has(each.ref) && each.side !== "id",
  );
  const next =
    first.find(({ entry }) => entry.kind === "journal") ??
    first[0] ??
    unread[0];
  const read: readonly AfterTaking[] =
    next === undefined
      ? []
      : [
          {
            does: "take",
            target: targetName(next),
            label: `Take readings of ${targetLabel(next)}`,
            below: first.includes(next)
              ? wanted.size === 1
                ? "The last one left to measure"
                : `${String(wanted.size)} are left to measure`
              : "It has no reading, and nothing waits for one",
          },
        ];
  const see: AfterTaking = {
    does: "see",
    target: null,
    label: "Show the bench view",
    below: "The job in pictures: which reamer serves, what is next",
  };
  const turn = fact === "read" ? turnOf(open, ref) : [];
  return next?.entry.kind === "journal"
    ? [...read, see, ...turn]
    : [see, ...read, ...turn];
}

/** What the overview will count once what was read just now is written. */
function stillToMeasure(
  { shop, file }: OpenFile,
  ref: string,
  side: TakingPlan["side"],
): ReadonlySet<string> {
  const own = file.entries.filter((entry, index) =>
    isFirstOfName(shop, entry.ref, index),
  );
  const wanted = new Set(toMeasure(shop, own).keys());
  // of a bush it is the outside that is waited for
  if (side !== "id") wanted.delete(ref);
  return wanted;
}

/** What was just read may be turned under a pointer, where it has no swing yet. */
function turnOf(open: OpenFile, ref: string): readonly AfterTaking[] {
  return targetsIn(open)
    .filter((each) => each.ref === ref && isUnturned(each))
    .map((each) => ({
      does: "take",
      target: targetName({ ...each, isSwing: true }),
      label: `Take the swing of ${ref}`,
      below: HIDES,
    }));
}
