// A fact without which an entry says nothing. Only those: what a single result is in want of is said with the result.
import { ENTRY_KINDS, type EntryKind } from "../../../grammar/vocabulary.ts";
import { material } from "../../core/materials/material.ts";
import { oil } from "../../core/materials/oils.ts";
import type { Entry } from "../../model/entry.ts";
import type { Rule } from "../rule.ts";

interface Wants {
  readonly has: (entry: Entry) => boolean;
  readonly message: string;
}

/** Satisfied by any of these facts, damaged ones too: those are said at their line. */
function anyOf(...words: readonly string[]): Wants["has"] {
  return (entry) => entry.facts.some((fact) => words.includes(fact.word));
}

const anyFact: Wants["has"] = (entry) =>
  entry.facts.some((fact) => fact.word !== "note");

/** What a lesson is about, and what it says of that. */
const LESSONS = [
  ["reamer", "oversize"],
  ["bush", "closes"],
  ["gauge", "reads"],
] as const;

const WANTS: Readonly<Partial<Record<EntryKind, Wants>>> = {
  line: {
    has: anyOf("bore"),
    message:
      "This line names no bore, so there is nothing that it cuts: write each bore with where it lies, `bore NAME from Z to Z`.",
  },
  stack: {
    has: anyOf("plus", "minus"),
    message:
      "This stack has no members, so it leaves no end float: write `plus NAME LOW to HIGH` and `minus NAME LOW to HIGH`.",
  },
  concession: {
    has: anyOf("allows"),
    message:
      "This concession does not say what it allows: write `allows CODE on ENTRY`, as in `allows fit-loose on fit front`.",
  },
  reamer: {
    has: anyOf("size", "read", "expands"),
    message:
      "This reamer has no size, so it is never chosen: write `size`, a reading of it, or `expands` where it is adjustable.",
  },
  pilot: {
    has: anyOf("od", "read"),
    message:
      "This pilot has no diameter, so how it runs can't be told: write `od`, or a reading of it.",
  },
  gauge: {
    has: anyFact,
    message:
      "This gauge says nothing of itself, so how sure its readings are can't be told: write its `resolution`, and its `uncertainty` or `mpe` from its certificate.",
  },
  material: {
    has: anyFact,
    message:
      "This material has no figures, and none of its name is shipped: write those that the job needs, such as `expansion` and `modulus`.",
  },
  oil: {
    has: anyOf("grade", "viscosity"),
    message:
      "This oil has no viscosity, and none of its name is shipped: write its `grade`, or its `viscosity` at two temperatures.",
  },
  route: {
    has: anyOf("step"),
    message:
      "This route has no steps: write each as `step NAME`, in the order of the work.",
  },
  lesson: {
    has: (entry) =>
      LESSONS.some(
        ([about, says]) => anyOf(about)(entry) && anyOf(says)(entry),
      ),
    message:
      "This lesson does not say of what it was learned, or does not say what: write `reamer … in …` with `oversize mean …`, `bush …` with `closes …`, or `gauge … against …` with `reads …`.",
  },
};

export const factMissing: Rule = {
  code: "fact-missing",
  level: "warning",
  about: ENTRY_KINDS.filter((kind) => Object.hasOwn(WANTS, kind)),
  check(_, __, entry) {
    const { kind, name = "" } = entry;
    const wants = kind === undefined ? undefined : WANTS[kind];
    if (wants === undefined || wants.has(entry)) return [];
    // one fault, one message: the line that nobody can make out may be it
    if (entry.problems.some(({ code: said }) => said === "word-unknown"))
      return [];
    // what the shipped one of that name says holds
    if (kind === "material" && material(name) !== undefined) return [];
    if (kind === "oil" && oil(name) !== undefined) return [];
    return [{ span: entry.nameSpan, message: wants.message }];
  },
};
