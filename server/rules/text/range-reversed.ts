// A range whose larger end stands first.
import type { TextRule } from "../rule.ts";

export const rangeReversed: TextRule = {
  code: "range-reversed",
  level: "error",
  draft({ span, data }) {
    const { swapped, tolerance } = data;
    if (typeof tolerance === "string") {
      const text = tolerance.replace(/^[-\u{2212}]/u, "");
      return {
        message: `A tolerance either way has no sign of its own: write \`${text}\`.`,
        fixes: [
          {
            title: `Write \`${text}\``,
            safe: true,
            edits: [{ span, text }],
          },
        ],
      };
    }
    const text = String(swapped);
    return {
      message: `The smaller end of a range comes first, and ${String(data.high)} is more than ${String(data.low)}: write \`${text}\`.`,
      fixes: [
        {
          title: `Turn it round: ${text}`,
          safe: true,
          edits: [{ span, text }],
        },
      ],
    };
  },
};
