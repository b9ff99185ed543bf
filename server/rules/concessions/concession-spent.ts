// What a concession is for has gone past the value that was signed for.
import {
  concessionOf,
  isWhole,
  isWithin,
} from "../../model/evaluate/concessions.ts";
import { given } from "../../model/entry.ts";
import { entryOf } from "../../model/shop.ts";
import type { Rule } from "../rule.ts";

export const concessionSpent: Rule = {
  code: "concession-spent",
  level: "error",
  about: ["concession"],
  check(shop, ref, entry, findingsOf) {
    const concession = concessionOf(shop, ref);
    if (concession === undefined || !isWhole(concession)) return [];
    const { code, on } = concession;
    const beyond = findingsOf(shop, on).filter(
      (finding) =>
        finding.code === code &&
        isWithin(finding, concession, entryOf(shop, on)) === false,
    );
    const bound = given(entry, "UpToFact");
    if (beyond.length === 0 || bound.state !== "given") return [];
    return [
      {
        span: bound.span,
        message: `The \`${code}\` of ${on} is past what was signed for, so it is not accepted. Put it right, or have it looked at and signed anew.`,
        related: beyond.map(({ span, message }) => ({
          ref: on,
          span,
          message,
        })),
      },
    ];
  },
};
