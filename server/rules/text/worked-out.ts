// Words for heating and cooling a press fit, which no fact begins with: how hot and how cold is worked out, what is done is said in a step.
import { entrySpec } from "../../../grammar/vocabulary.ts";
import { allOf, type Entry } from "../../model/entry.ts";
import type { Span } from "../../model/values.ts";
import type { DraftFix, TextRule } from "../rule.ts";

type Said = ReturnType<TextRule["draft"]>;

const HEATING =
  /^(?:heat|heated|heating|warm|warmed|freeze|frozen|freezing|chill|chilled|cool|shrink)$/i;

export function isHeating(word: string): boolean {
  return HEATING.test(word);
}

/** `heat case to 300 F` */
export function heating(word: string, span: Span, entry: Entry): Said {
  const fact = factFor(entry);
  const worked =
    "how hot the case is to be, or how cold the bush, is worked out under its press (`heat-to`, `freeze-to`) and not written";
  const done =
    fact === "do"
      ? "what this step does is said in words, with `do`"
      : "what is done is said in words, with `do` under the step that presses it";
  const { indent = 0, body = "" } = entry.block.lines[span.line] ?? {};
  const fix: DraftFix = {
    title: `Write it as \`${fact ?? ""}\``,
    safe: false,
    edits: [
      {
        span: { ...span, start: indent, end: indent + body.length },
        text: `${fact ?? ""} "${body}"`,
      },
    ],
  };
  return {
    message: `\`${word}\` begins no ${entry.kind === undefined ? "entry" : "fact"}: ${worked}; ${done}.`,
    fixes: fact === undefined || body.includes('"') ? [] : [fix],
  };
}

/** The fact of the entry that takes it as text: what a step does once, and a note any number of times. */
function factFor(entry: Entry): "do" | "note" | undefined {
  if (entry.kind === "step" && allOf(entry, "DoFact").length === 0) return "do";
  const facts = entry.kind === undefined ? [] : entrySpec(entry.kind)?.facts;
  return facts?.some(({ word }) => word === "note") === true
    ? "note"
    : undefined;
}
