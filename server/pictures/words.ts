// The words that the pictures say: what is not known and what to write, how sure a size is, whether it is as wanted.
import { missingTexts, type Unknown } from "../model/known.ts";
import type { Size } from "../model/evaluate/size.ts";
import { entryOf, isLoose, type Shop } from "../model/shop.ts";
import type { Status, Verdict } from "../model/result.ts";

/** Said wherever something hangs on a line that can't be read, or on a name that is nowhere, so that a page can tell it from what was never written. */
export const UNREAD = "waits for a line with an error";

/** "not known: write a reading of journal rear" */
export function notKnown({ needs, because, silent }: Unknown): string {
  if (because !== undefined)
    return `not known: not valid here, because ${because}`;
  const texts = missingTexts(needs);
  if (0 < texts.length) return `not known: write ${texts.join(" and ")}`;
  return silent ? `not known: ${UNREAD}` : "not known";
}

/** How a size came to be, so that nobody takes a forecast for a reading. */
export function sureness({
  status,
  from,
}: Pick<Size, "status" | "from">): string {
  if (status === "measured") return "measured";
  const BASIS = {
    limits: "predicted from its limits",
    cut: "predicted from the cut",
    press: "predicted from the press",
    readings: "predicted",
  } as const;
  return BASIS[from];
}

const VERDICTS: Readonly<Record<Verdict, string>> = {
  in: "as wanted",
  out: "not as wanted",
  unsure: "can't be sure",
  none: "",
};

/** "predicted, as wanted" */
export function judgedWords(
  status: Status,
  verdict: Verdict | undefined,
): string {
  return [status, VERDICTS[verdict ?? "none"]]
    .filter((word) => word !== "")
    .join(", ");
}

/** What a person reads in place of a picture of an entry that can't be read. */
export function unreadText(shop: Shop, ref: string): string | undefined {
  const entry = entryOf(shop, ref);
  if (entry?.damaged === false) return undefined;
  return entry === undefined && !isLoose(shop, ref)
    ? `There is no ${ref}.`
    : `The opening line of ${ref} can't be read: mend it first.`;
}
