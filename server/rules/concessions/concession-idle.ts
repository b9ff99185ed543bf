// A concession accepts nothing: what it is for is not there, or can't be signed away.
import {
  concessionOf,
  isWhole,
  isWithin,
  NEVER,
} from "../../model/evaluate/concessions.ts";
import { given } from "../../model/entry.ts";
import { entryOf } from "../../model/shop.ts";
import type { Rule } from "../rule.ts";

export const concessionIdle: Rule = {
  code: "concession-idle",
  level: "hint",
  about: ["concession"],
  check(shop, ref, entry, findingsOf) {
    const concession = concessionOf(shop, ref);
    if (concession === undefined || !isWhole(concession)) return [];
    const { code, on } = concession;
    const found = findingsOf(shop, on).filter((each) => each.code === code);
    const isJudged = found.some(
      (finding) =>
        isWithin(finding, concession, entryOf(shop, on)) !== undefined,
    );
    if (isJudged) return [];
    const allows = given(entry, "AllowsFact");
    const why = NEVER.has(code)
      ? `\`${code}\` can't be signed away`
      : found.length === 0
        ? `${on} has no finding \`${code}\``
        : found.every(({ value }) => value === undefined)
          ? `the \`${code}\` of ${on} has no value that a bound could hold`
          : `its bound is not of the kind that \`${code}\` is measured in`;
    return [
      {
        span: allows.state === "given" ? allows.span : entry.nameSpan,
        message: `This concession accepts nothing: ${why}. Take it out, or keep it as a record of what was allowed.`,
      },
    ];
  },
};
