// A range whose larger end stands first.
import { readNumber, toNumber } from "../../core/quantity/exact.ts";
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
    const [high, low] = [String(data.high), String(data.low)];
    return {
      message: `The smaller end of a range comes first, and ${high} is more than ${low}: write \`${text}\`.`,
      fixes: [
        {
          title: `Turn it round: ${text}`,
          safe: areNear(high, low),
          edits: [{ span, text }],
        },
      ],
    };
  },
};

/** Ends of one size, as they mostly are; a point in the wrong place or a digit too many sets them far apart. */
function areNear(high: string, low: string): boolean {
  const [larger, smaller] = [high, low].map((each) => {
    const written = readNumber(/^[+-]?[\d./ -]*\d/.exec(each)?.[0] ?? "");
    return written === undefined ? Number.NaN : toNumber(written);
  });
  return larger !== undefined && smaller !== undefined && larger <= 2 * smaller;
}
