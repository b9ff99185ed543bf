// None of the shims at hand, nor a pack of them, brings the end float to what is wanted.
import { showRange } from "../../core/quantity/show.ts";
import { settings } from "../../model/evaluate/settings.ts";
import { wanted } from "../../model/evaluate/wanted.ts";
import { floatOf, shimsOf } from "../../model/evaluate/stack.ts";
import { given } from "../../model/entry.ts";
import type { Rule } from "../rule.ts";
import { packFor } from "./pack.ts";

export const shimNone: Rule = {
  code: "shim-none",
  level: "warning",
  about: ["stack"],
  check(shop, ref, entry) {
    const written = given(entry, "ShimsFact");
    const shims = shimsOf(shop, ref);
    const found = floatOf(shop, ref);
    const want = wanted(shop, ref);
    if (
      written.state !== "given" ||
      shims === undefined ||
      shims.known ||
      !found.known ||
      want?.known !== true
    )
      return [];
    const { system } = settings(shop);
    const { worst, step } = found.value;
    const { least, greatest } = packFor(worst, want.value);
    const todo =
      greatest < least
        ? "it varies by more than is wanted, and shims don't narrow it: read the members"
        : greatest < 0
          ? "it is too small already, and shims make it smaller"
          : `a pack of ${showRange(Math.max(0, least), greatest, system, step)} would, and these don't make one of six or fewer`;
    return [
      {
        span: written.span,
        message: `No pack of these shims brings the end float ${showRange(worst.low, worst.high, system, step)} to the ${showRange(want.value.low, want.value.high, system, want.value.step)} that is wanted: ${todo}.`,
      },
    ];
  },
};
