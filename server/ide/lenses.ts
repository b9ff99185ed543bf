// The line above a fit, a press or a line of bores: how it stands, in words, and what a click on it leads to. Which there are costs a look
// at the opening lines; what each says is worked out only when it is looked at.
import type { FileLines } from "../../grammar/lines.ts";
import type { OpenFile } from "../model/project.ts";
import type { Result, Verdict } from "../model/result.ts";
import { resultName } from "../model/result-kinds.ts";
import { findingsOfEntry } from "../rules/entry-findings.ts";
import { headlineResult, headlineText } from "./headline.ts";
import { levelOf, type Levels } from "./levels.ts";
import { rangeIn, type Range } from "./position.ts";
import { entriesNamedIn } from "./workspace-symbols.ts";

export interface Lens {
  readonly ref: string;
  /** The name in the opening line. */
  readonly range: Range;
}

export interface LensSays {
  readonly title: string;
  /** The first thing that is found on the entry; undefined where there is nothing: then a click shows where its name is used. */
  readonly finding: Range | undefined;
}

const KINDS = new Set(["fit", "press", "line"]);

export function lensesIn(file: FileLines): readonly Lens[] {
  return entriesNamedIn(file).filter(({ kind }) => KINDS.has(kind));
}

/** What a lens says; undefined where its entry is gone, can't be read, or has a name that stands before it already. */
export function lensSays(
  open: OpenFile,
  ref: string,
  levels: Levels,
): LensSays | undefined {
  const place = open.shop.places.get(ref);
  if (place?.file !== 0) return undefined;
  const { index } = place;
  const result = headlineResult(open, index);
  if (result === undefined) return undefined;
  const found = findingsOfEntry(open, index).flatMap((finding) => {
    const level = levelOf(
      { ...finding, accepted: finding.accepted ?? null },
      levels,
    );
    return level === "off" ? [] : [{ level, span: finding.span }];
  });
  const [first] = [...found].sort((a, b) => a.span.line - b.span.line);
  const counts = LEVELS.flatMap(([level, one, many]) => {
    const count = found.filter((each) => each.level === level).length;
    return count === 0 ? [] : [`${String(count)} ${count === 1 ? one : many}`];
  });
  const standing = standingOf(open, index, result);
  return {
    title: [standing, ...counts].join(" \u{B7} "),
    finding:
      first === undefined ? undefined : rangeIn(open.file, index, first.span),
  };
}

const LEVELS = [
  ["error", "error", "errors"],
  ["warning", "warning", "warnings"],
  ["information", "remark", "remarks"],
  ["hint", "hint", "hints"],
] as const;

const VERDICTS: Readonly<Record<Verdict, string>> = {
  in: "within what is wanted",
  out: "outside what is wanted",
  unsure: "in or out can't be told",
  none: "",
};

/** "clearance 0.0010 to 0.0013 in, measured: within what is wanted" */
function standingOf(open: OpenFile, index: number, result: Result): string {
  const { kind, status, verdict, text } = result;
  if (kind === "reamer-window" || status === "unknown") {
    const said = headlineText(open, index);
    return status === "unknown" ? `${resultName(kind)} unknown: ${said}` : said;
  }
  const judged = VERDICTS[verdict] === "" ? "" : `: ${VERDICTS[verdict]}`;
  return `${resultName(kind)} ${text}, ${status}${judged}`;
}
