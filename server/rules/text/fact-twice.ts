// A fact that an entry takes once and that stands there twice: which one holds can't be told, so neither is used.
import type { Span } from "../../model/values.ts";
import { commentOut } from "../fixes.ts";
import type { TextRule } from "../rule.ts";

export const factTwice: TextRule = {
  code: "fact-twice",
  level: "error",
  draft({ span, data }, entry) {
    const word = String(data.word);
    const first = Number(data.firstLine);
    const lines = entry.block.lines;
    const same = lines[first]?.body === lines[span.line]?.body;
    const firstSpan: Span = {
      line: first,
      start: lines[first]?.indent ?? 0,
      end: (lines[first]?.indent ?? 0) + word.length,
    };
    return {
      message: same
        ? `\`${word}\` stands twice in this ${String(data.kind)}, in the same words: keep one.`
        : `\`${word}\` stands twice in this ${String(data.kind)}, and neither is used, since which one holds can't be told: keep one.`,
      related: [{ span: firstSpan, message: "It stands here too." }],
      fixes: [
        commentOut(span, "Make this line a comment", same),
        commentOut(firstSpan, "Make the first one a comment"),
      ],
    };
  },
};
