// Which slip of the hand would put a size where it can't be.
import { factorOf, type Expected } from "../../core/readings/expected.ts";

/** How a sentence goes on that has said how far a size is off: ", as if …"; "" where no slip explains it. */
export function slipWords(metres: number, expected: Expected): string {
  const factor = factorOf(metres, expected);
  if (factor === undefined) return "";
  return factor === 25.4 || factor === 1 / 25.4
    ? ", as if one of the two were in the other unit: write mm or in after it if so"
    : ", as if a decimal mark had moved";
}
