// What a reamer cuts over its own size in a material: written, else learned from the shop's records, else taken as zero, and that is said.
import type { Oversize } from "../../core/line/cut-size.ts";
import {
  showCount,
  showLength,
  type System,
} from "../../core/quantity/show.ts";
import { allOf } from "../entry.ts";
import { known, SILENT, type Known } from "../known.ts";
import { nameOf } from "../reference.ts";
import { entryOf, refOf, type Shop } from "../shop.ts";
import type { Learned } from "../values.ts";
import { lessonsOfReamer, type ReamerLesson } from "./lessons.ts";

export interface OversizeOf {
  readonly oversize: Oversize;
  /** The lesson of this reamer in this material, where no oversize is written; it counts only where it has a spread. */
  readonly lesson: ReamerLesson | undefined;
}

/**
 * The oversize written for this material, else the one written for any, else the one learned in this material, else zero. A lesson of a single
 * cut has no spread, so that no range could be given by it: it does not count.
 */
export function oversizeOf(
  shop: Shop,
  reamer: string,
  material: string | undefined,
): Known<OversizeOf> {
  const entry = entryOf(shop, reamer);
  if (entry === undefined) return SILENT;
  const facts = allOf(entry, "OversizeFact");
  if (facts.some((fact) => fact.value === undefined)) return SILENT;
  const values = facts
    .map((fact) => fact.value)
    .filter((value) => value !== undefined);
  const own = values.find(
    (value) =>
      value.material !== undefined && refOf(shop, value.material) === material,
  );
  const found = own ?? values.find((value) => value.material === undefined);
  if (found !== undefined) {
    const { low, high } = found.range;
    return known({
      oversize: { kind: "written", low, high },
      lesson: undefined,
    });
  }
  const lessons = lessonsOfReamer(shop, reamer);
  if (!lessons.known) return lessons;
  const lesson = lessons.value.find((each) => each.material === material);
  const oversize: Oversize =
    lesson?.learned.spread === undefined
      ? { kind: "assumed-zero" }
      : {
          kind: "learned",
          mean: lesson.learned.mean,
          spread: lesson.learned.spread,
          count: lesson.learned.count,
        };
  return known({ oversize, lesson });
}

/** Where an oversize is from that nobody wrote; "" of one that is written, or not known. */
export function oversizeWords(
  { oversize, lesson }: OversizeOf,
  system: System,
): string {
  if (oversize.kind === "written") return "";
  if (oversize.kind === "learned" && lesson !== undefined)
    return `oversize as learned: ${learnedLengthWords(lesson.learned, system, "cut")} (${lesson.ref})`;
  const zero = "oversize taken as zero: none is written";
  return lesson === undefined
    ? zero
    : `${zero}, and ${lesson.ref} is of a single cut, which has no spread`;
}

/** "mean 0.00031 in, spread 0.00008 in, of 9 cuts" */
export function learnedLengthWords(
  { mean, spread, count, step }: Learned,
  system: System,
  one: "cut" | "day",
): string {
  const of = `of ${showCount(count, one)}`;
  return spread === undefined
    ? `${showLength(mean, system, step)}, of a single ${one}, which has no spread`
    : `mean ${showLength(mean, system, step)}, spread ${showLength(spread, system, step)}, ${of}`;
}

/** "in bronze-c932: mean …", for the reamer's own hover. */
export function reamerLessonWords(
  { material, ref, learned }: ReamerLesson,
  system: System,
): string {
  return `in ${nameOf(material)}: ${learnedLengthWords(learned, system, "cut")} (${ref})`;
}
