// A concession accepts nothing: what it is for is not there, or can't be signed away.
import {
  concessionOf,
  isWhole,
  isWithin,
  NEVER,
} from "../../model/evaluate/concessions.ts";
import { given, type Entry } from "../../model/entry.ts";
import { entryOf } from "../../model/shop.ts";
import { CODES } from "../codes.ts";
import { lineAsComment } from "../fixes.ts";
import { canBeAllowed } from "../figures.ts";
import type { Draft, DraftFix, Rule } from "../rule.ts";

export const concessionIdle: Rule = {
  code: "concession-idle",
  level: "hint",
  about: ["concession"],
  check(shop, ref, entry, findingsOf) {
    const concession = concessionOf(shop, ref);
    if (concession === undefined) return [];
    const { code, on } = concession;
    if (CODES.includes(code) && !canBeAllowed(code))
      return [never(entry, code)];
    if (!isWhole(concession)) return [];
    const found = findingsOf(shop, on).filter((each) => each.code === code);
    const isJudged = found.some(
      (finding) =>
        isWithin(finding, concession, entryOf(shop, on)) !== undefined,
    );
    if (isJudged) return [];
    const allows = given(entry, "AllowsFact");
    const why =
      found.length === 0
        ? `${on} has no finding \`${code}\``
        : found.every(({ value }) => value === undefined)
          ? `the \`${code}\` of ${on} has no value that a bound could hold`
          : `its bound is not of the kind that \`${code}\` is measured in`;
    return [
      {
        span: allows.state === "given" ? allows.span : entry.nameSpan,
        message: `This concession accepts nothing: ${why}. Take it out, or keep it as a record of what was allowed.`,
        fixes: [asComment(entry)],
      },
    ];
  },
};

/** A finding that no concession can accept, signed or not. */
function never(entry: Entry, code: string): Draft {
  const allows = given(entry, "AllowsFact");
  const why = NEVER.has(code)
    ? `\`${code}\` can't be signed away`
    : `\`${code}\` has no value that a bound could hold`;
  return {
    // whoever signed it thinks that it holds
    level: "warning",
    span: allows.state === "given" ? allows.value.codeSpan : entry.nameSpan,
    message: `This concession accepts nothing: ${why}. Put right what the finding says; it stands until then.`,
    fixes: [asComment(entry)],
  };
}

/** Every line of the entry as a comment: what was signed can still be read. */
function asComment({ block }: Entry): DraftFix {
  return {
    title: "Make this concession a comment",
    safe: false,
    edits: block.lines.flatMap(({ body, indent }, line) =>
      body === "" ? [] : [lineAsComment({ line, start: indent, end: indent })],
    ),
  };
}
