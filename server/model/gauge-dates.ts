// The two days of a gauge: it is due after it was calibrated. Other facts are read line by line, by facts.ts.
import type { Block } from "../../grammar/lines.ts";
import type { Fact } from "./entry.ts";
import type { Problem } from "./problem.ts";
import type { Signature, Span } from "./values.ts";

/** The facts of an entry; where `due` is before `calibrated` one of the two is a slip, and `due` is not used. */
export function withDatesInOrder(
  block: Block,
  facts: readonly Fact[],
  problems: Problem[],
): readonly Fact[] {
  if (block.kind !== "gauge") return facts;
  const calibrated = dateOf(facts, "CalibratedFact");
  const due = dateOf(facts, "DueFact");
  if (calibrated === undefined || due === undefined || calibrated <= due)
    return facts;
  return facts.map((fact) => {
    if (fact.rule !== "DueFact") return fact;
    problems.push({
      code: "date-wrong",
      span: dateSpan(block, fact.span, due),
      data: {
        date: due,
        message: `\`${due}\` is before the gauge was calibrated, on ${calibrated}: write the day that it is due, or that it was calibrated.`,
      },
    });
    return { ...fact, value: undefined };
  });
}

function dateOf(
  facts: readonly Fact[],
  rule: "CalibratedFact" | "DueFact",
): string | undefined {
  const value = facts.find((fact) => fact.rule === rule)?.value as
    Signature | undefined; // the readers of both give that
  return value?.date;
}

function dateSpan(block: Block, span: Span, date: string): Span {
  const { indent = 0, body = "" } = block.lines[span.line] ?? {};
  const start = indent + Math.max(0, body.indexOf(date));
  return { ...span, start, end: start + date.length };
}
