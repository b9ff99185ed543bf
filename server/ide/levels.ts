// The levels that the user has set for findings, in place of the shipped ones. It changes what an editor shows and nothing else: the gate
// before a cut, the terminal and CI keep to the shipped levels.
import type { Finding, Level } from "../model/result.ts";
import { CODES } from "../rules/codes.ts";
import { nearest } from "../rules/text/near.ts";
import { shown, type ShownFinding } from "./diagnostics.ts";
import { eitherOf } from "../rules/text/wording.ts";

export type SetLevel = Level | "off";

/** By code; a code that is left out keeps its shipped level. */
export type Levels = Readonly<Record<string, SetLevel>>;

export const SET_LEVELS: readonly SetLevel[] = [
  "off",
  "hint",
  "information",
  "warning",
  "error",
];

/**
 * Reads what stands in the setting, whatever it is.
 * @returns the levels that can be taken, and a sentence for each that can't
 */
export function readLevels(written: unknown): {
  readonly levels: Levels;
  readonly problems: readonly string[];
} {
  if (written === undefined || written === null)
    return { levels: {}, problems: [] };
  if (typeof written !== "object" || Array.isArray(written))
    return {
      levels: {},
      problems: [
        `thou.findings.levels is not a list of codes with their levels, so every finding keeps its own level. Write it as { "out-of-round": "off" }.`,
      ],
    };
  const levels: [string, SetLevel][] = [];
  const problems: string[] = [];
  for (const [code, level] of Object.entries(written)) {
    const taken = SET_LEVELS.find((each) => each === level);
    if (!CODES.includes(code))
      problems.push(
        `thou.findings.levels: there is no finding ${quoted(code)}${meant(code, CODES)}.`,
      );
    else if (taken === undefined)
      problems.push(
        `thou.findings.levels: ${quoted(level)} is no level${typeof level === "string" ? meant(level, SET_LEVELS) : ""}, so ${code} keeps its own. A level is ${eitherOf(SET_LEVELS)}.`,
      );
    else levels.push([code, taken]);
  }
  return { levels: Object.fromEntries(levels), problems };
}

/** A finding as the user wants it shown; undefined where its code is off. What a concession accepts stays information. */
export function levelled(
  finding: Finding,
  levels: Levels,
): ShownFinding | undefined {
  const level = levelOf(finding, levels);
  return level === "off" ? undefined : { ...shown(finding), level };
}

/** The level that a finding has for the user. */
export function levelOf(
  { code, level, accepted }: Pick<Finding, "code" | "level" | "accepted">,
  levels: Levels,
): SetLevel {
  const set = Object.hasOwn(levels, code) ? levels[code] : undefined;
  if (set === "off") return "off";
  return accepted === null ? (set ?? level) : "information";
}

export function isOff(finding: Finding, levels: Levels): boolean {
  return levelOf(finding, levels) === "off";
}

function quoted(value: unknown): string {
  const text =
    typeof value === "string" ? value : JSON.stringify([value]).slice(1, -1);
  return `"${text.length < 60 ? text : `${text.slice(0, 60)}…`}"`;
}

function meant(word: string, candidates: readonly string[]): string {
  const near = nearest(word, candidates);
  return near.length === 0 ? "" : ` (did you mean ${near.join(" or ")}?)`;
}
