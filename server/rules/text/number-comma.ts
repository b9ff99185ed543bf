// A comma in a number: a decimal point in half the world, thousands in the other. Only whoever wrote it knows.
import type { TextRule } from "../rule.ts";

export const numberComma: TextRule = {
  code: "number-comma",
  level: "error",
  draft({ span, data }) {
    const written = String(data["number"]);
    const pointed = written.replace(",", ".");
    const joined = written.replaceAll(",", "");
    const ambiguous = /,\d{3}(?!\d)/.test(written);
    const point = {
      title: `Write a point: ${pointed}`,
      safe: !ambiguous,
      edits: [{ span, text: pointed }],
    };
    const thousands = {
      title: `Take the comma out: ${joined}`,
      safe: false,
      edits: [{ span, text: joined }],
    };
    return {
      message: ambiguous
        ? `\`${written}\` can be read two ways: write ${pointed} or ${joined}.`
        : `A number takes a point, not a comma: write ${pointed}.`,
      fixes: ambiguous ? [point, thousands] : [point],
    };
  },
};
