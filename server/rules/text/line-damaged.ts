// A line that can't be read. The grammar says why and what would mend it; the word that was meant is found here.
import type { TextRule } from "../rule.ts";
import { nearest } from "./near.ts";
import { oneOf, writeInstead } from "./wording.ts";

export const lineDamaged: TextRule = {
  code: "line-damaged",
  level: "error",
  draft({ span, data }) {
    const message = String(data.message);
    const mended = data.mended;
    const written = String(data.written ?? "");
    const near = nearest(written, [data.choices ?? []].flat());
    if (0 < near.length) {
      return {
        message: `\`${written}\` does not fit here: did you mean ${oneOf(near)}?`,
        fixes: writeInstead(span, near),
      };
    }
    if (typeof mended !== "string") return { message };
    return {
      message,
      fixes: [
        {
          title: `Write \`${mended.trim()}\``,
          safe: data.safe === "yes",
          edits: [{ span, text: mended }],
        },
      ],
    };
  },
};
