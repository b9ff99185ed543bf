// What readings come to before they are written: the record is read again with the lines in it, and the model is asked. So the figures are
// those that a check will give once they stand there.
import { editLines } from "../../../grammar/lines.ts";
import { allOf, valueIn, type Entry, type Fact } from "../../model/entry.ts";
import { readingsAt } from "../../model/evaluate/readings.ts";
import {
  judgeEstimate,
  materialOfFeature,
  sizeFromPlaces,
  type Size,
} from "../../model/evaluate/size.ts";
import { readFile } from "../../model/file-entries.ts";
import type { Known } from "../../model/known.ts";
import type { OpenFile } from "../../model/project.ts";
import { setFiles } from "../../model/shop-files.ts";
import { createShop, entryOf, isWhole, type Shop } from "../../model/shop.ts";
import type { LengthRange, Stage } from "../../model/values.ts";
import type { TakingPlan } from "../../protocol/guide.ts";
import { insertion } from "./lines.ts";

export interface Figures {
  readonly size: Known<Size>;
  /** Undefined where there are no limits to judge by. */
  readonly verdict: "in" | "out" | "unsure" | undefined;
  readonly limits: LengthRange | undefined;
  /** Something takes the readings to 20 °C from another temperature. */
  readonly isCorrected: boolean;
}

/** The record as it will be with the lines in it. */
export function withLines(
  open: OpenFile,
  index: number,
  plan: TakingPlan,
  lines: readonly string[],
): OpenFile {
  const { at, text } = insertion(open, index, plan, lines);
  const edited = editLines(open.file.lines, { start: at, end: at, text });
  const file = readFile(open.path, edited, open.file);
  const shop = createShop();
  setFiles(shop, [file, ...open.shop.files.slice(1)], isWhole(open.shop));
  return { ...open, file, shop };
}

/** What all readings come to that count with those of the plan: earlier ones of the record among them, as a check counts them. */
export function figuresOf(
  { shop }: OpenFile,
  plan: TakingPlan,
): Figures | undefined {
  const { ref } = plan;
  const entry = entryOf(shop, ref);
  if (entry === undefined) return undefined;
  const unwritten = unwrittenStage(entry);
  const stage = (plan.stage ?? unwritten) as Stage; // planFrom lets no other word through
  const places = readingsAt(
    shop,
    factsOf(entry, plan),
    unwritten,
    [stage],
    () => materialOfFeature(shop, ref),
  );
  if (!places.known)
    return {
      size: places,
      verdict: undefined,
      limits: undefined,
      isCorrected: false,
    };
  const size = sizeFromPlaces(shop, ref, places.value);
  const limits = limitsOf(entry, plan);
  return {
    size: { known: true, value: size },
    verdict: limits === undefined ? undefined : verdictOf(shop, size, limits),
    limits,
    isCorrected: places.value.some((place) =>
      place.readings.some(({ heat }) => heat !== 0),
    ),
  };
}

function verdictOf(shop: Shop, size: Size, limits: LengthRange) {
  return judgeEstimate(shop, size, limits, size.budget).verdict;
}

export function factsOf(
  entry: Entry,
  { fact, side }: Pick<TakingPlan, "fact" | "side">,
): readonly Fact<"ReadFact" | "RepeatFact" | "BushReadFact">[] {
  if (fact === "repeat") return allOf(entry, "RepeatFact");
  return side === null
    ? allOf(entry, "ReadFact")
    : allOf(entry, "BushReadFact").filter(
        ({ value }) => value === undefined || value.side === side,
      );
}

/** The stage of a reading that does not say one. */
function unwrittenStage({ kind }: Entry): Stage {
  return kind === "bush" ? "bought" : "finished";
}

/** The limits that readings of the plan's stage are held against: a bore's are for when it is finished. */
function limitsOf(
  entry: Entry,
  { side, stage }: Pick<TakingPlan, "side" | "stage">,
): LengthRange | undefined {
  if (side !== null)
    return stage === null || stage === "bought"
      ? valueIn(entry, side === "od" ? "OdFact" : "IdFact")
      : undefined;
  if (entry.kind === "pilot") return valueIn(entry, "OdFact");
  return stage === null || stage === "finished" || stage === "run"
    ? valueIn(entry, "LimitsFact")
    : undefined;
}
