// The clearances that advice names for a fit, each to be taken as its `want`. None is taken by itself: whoever takes one has chosen it, and
// its source stands in the title.
import { eolOf } from "../../grammar/lines.ts";
import {
  UNIT_OF_SYSTEM,
  lengthDigits,
  type System,
} from "../core/quantity/show.ts";
import { allOf, given } from "../model/entry.ts";
import { adviceFor, type AdviceRow } from "../model/evaluate/advice.ts";
import { wanted } from "../model/evaluate/wanted.ts";
import { settings } from "../model/evaluate/settings.ts";
import type { OpenFile } from "../model/project.ts";
import type { Spot } from "./position.ts";
import {
  editAt,
  endOfFacts,
  type Refactoring,
  type RefactoringEdit,
} from "./refactoring.ts";

const CLASSES_SHOWN = 4;

/** On the `want` of a fit, and on its opening line where it has none. */
export function wantedByAdvice(
  open: OpenFile,
  spot: Spot,
): readonly Refactoring[] {
  const { entry, index, isHead, number } = spot;
  if (entry.kind !== "fit" || entry.damaged) return [];
  const want = given(entry, "WantFact");
  const isHere =
    want.state === "absent"
      ? isHead
      : allOf(entry, "WantFact").some(({ span }) => span.line === number);
  // the advice is in the unit of the job, and a bare range is in that of the file
  const { system } = settings(open.shop);
  if (
    !isHere ||
    want.state === "damaged" ||
    open.file.context.system !== system
  )
    return [];
  const near = nearest(
    adviceFor(open.shop, entry.ref),
    wanted(open.shop, entry.ref),
    system,
  );
  return near.flatMap((row): Refactoring[] => {
    const range = rangeOf(row, system);
    if (range === undefined) return [];
    const { low, high } = range;
    const text = `want ${low} to ${high}`;
    return [
      {
        title: `Want ${low} to ${high} ${UNIT_OF_SYSTEM[system]}: ${range.says} (${shortSource(row)})`,
        kind: "mend",
        edits: [editOf(open, index, want, text)],
      },
    ];
  });
}

/**
 * The rules, and of the classes of the job's own system the few nearest to what is wanted now, else to what a rule says: all that the standards
 * have would be a list that nobody reads. Completion after `want` offers every class.
 */
function nearest(
  rows: readonly AdviceRow[],
  now: ReturnType<typeof wanted>,
  system: System,
): readonly AdviceRow[] {
  const rules = rows.filter(({ kind }) => kind !== "class");
  const rule = rules.find(({ kind }) => kind === "film") ?? rules[0];
  const [low, high] =
    now?.known === true
      ? [now.value.low, now.value.high]
      : rule === undefined
        ? [0, 0]
        : bandOf(rule);
  const farOff = (row: AdviceRow): number =>
    Math.abs(row.low - low) + Math.abs(row.high - high);
  const few = rows
    .filter(({ kind, name }) => kind === "class" && isOf(name, system))
    .sort((a, b) => farOff(a) - farOff(b))
    .slice(0, CLASSES_SHOWN);
  return rows.filter((row) => row.kind !== "class" || few.includes(row));
}

/** A class of ISO 286 names hole and shaft. */
function isOf(name: string, system: System): boolean {
  return name.includes("/") === (system === "mm");
}

function editOf(
  { file, path }: OpenFile,
  index: number,
  want: ReturnType<typeof given<"WantFact">>,
  text: string,
): RefactoringEdit {
  const start = file.lines.starts[index] ?? 0;
  if (want.state === "given")
    return editAt(
      path,
      start + want.span.line,
      want.span.start,
      want.span.end,
      text,
    );
  const at = endOfFacts(file, index);
  return {
    file: path,
    range: { start: at, end: at },
    text: `${eolOf(file.lines)}  ${text}`,
  };
}

interface BandText {
  readonly low: string;
  readonly high: string;
  readonly says: string;
}

/** A row as a band in the unit's usual digits, each end on the inner side; a rule that gives one figure says which band is made of it. */
function rangeOf(row: AdviceRow, system: System): BandText | undefined {
  const [low, high] = bandOf(row);
  const unit = system === "inch" ? 0.0254e-4 : 1e-6;
  const [from, to] = [
    Math.ceil(low / unit - 1e-6) * unit,
    Math.floor(high / unit + 1e-6) * unit,
  ];
  // narrower than a tenth of a thou, it is no band to make a bore to
  if (!(0 <= from && from < to)) return undefined;
  return {
    low: lengthDigits(from, system),
    high: lengthDigits(to, system),
    says: saysOf(row),
  };
}

function bandOf({ kind, low, high }: AdviceRow): readonly [number, number] {
  switch (kind) {
    case "shop-rule":
      return [low, 2 * high];
    case "speed-rule":
      return [0.75 * low, 1.25 * high];
    default:
      return [low, high];
  }
}

/** A menu has no room for all of a film's source; the hover of the fit has it whole. */
function shortSource({ kind, source }: AdviceRow): string {
  return kind === "film" ? "Reynolds; Trumpler, from memory" : source;
}

function saysOf({ kind, name }: AdviceRow): string {
  switch (kind) {
    case "class":
      return name;
    case "shop-rule":
      return "shop rule, one to two thou an inch";
    case "speed-rule":
      return "rule by speed, give or take a quarter";
    case "film":
      return "the oil film carries";
  }
}
