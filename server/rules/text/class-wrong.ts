// A class of size that no standard has, or that is not of this place.
import type { TextRule } from "../rule.ts";
import { capitalised } from "../../model/sentences.ts";
import { oneOf, writeInstead } from "./wording.ts";

export const classWrong: TextRule = {
  code: "class-wrong",
  level: "error",
  draft({ span, data }) {
    const because = capitalised(String(data.because));
    const near = [data.near ?? []].flat().slice(0, 4);
    return near.length === 0
      ? {
          message: `${because}: ${String(data.class)} gives no size here, so write the range itself, LOW \`to\` HIGH.`,
        }
      : {
          message: `${because}: did you mean ${oneOf(near)}?`,
          fixes: writeInstead(span, near),
        };
  },
};
