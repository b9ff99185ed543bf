// The end float of a stack is not what is wanted, or none is left of it at temperature.
import { metresToTenths } from "../../core/quantity/exact.ts";
import { showLength, showRange } from "../../core/quantity/show.ts";
import { settings } from "../../model/evaluate/settings.ts";
import { wanted as wantedFloat } from "../../model/evaluate/wanted.ts";
import {
  floatCases,
  floatOf,
  floatVerdict,
  shimsOf,
} from "../../model/evaluate/stack.ts";
import type { Shop } from "../../model/shop.ts";
import type { Entry } from "../../model/entry.ts";
import type { Draft, Rule } from "../rule.ts";
import { packFor } from "./pack.ts";

export const floatOff: Rule = {
  code: "float-off",
  level: "error",
  about: ["stack"],
  check(shop, ref, entry) {
    return [...coldDrafts(shop, ref, entry), ...caseDrafts(shop, ref)];
  },
};

function coldDrafts(shop: Shop, ref: string, entry: Entry): readonly Draft[] {
  const found = floatOf(shop, ref);
  const want = wantedFloat(shop, ref);
  const verdict = floatVerdict(shop, ref);
  // shims that are at hand and do are not a fault: the result says which
  if (
    !found.known ||
    want?.known !== true ||
    verdict === undefined ||
    verdict === "in" ||
    shimsOf(shop, ref)?.known === true
  )
    return [];
  const { system } = settings(shop);
  const { worst, step } = found.value;
  const { low, high } = want.value;
  const shown = showRange(worst.low, worst.high, system, step);
  const wanted = showRange(low, high, system, want.value.step);
  const tight = metresToTenths(worst.low) < metresToTenths(low);
  const { least, greatest } = packFor(worst, want.value);
  const todo =
    0 < greatest && least <= greatest
      ? `shims of ${showRange(Math.max(0, least), greatest, system, step)} bring it in`
      : greatest < least
        ? "read its members, or narrow their limits"
        : `take ${showRange(Math.max(0, -greatest), -least, system, step)} off what closes it`;
  return [
    {
      ...(verdict === "unsure" ? { level: "warning" as const } : {}),
      span: entry.nameSpan,
      message: `The end float ${verdict === "out" ? "is" : "may be anything of"} ${shown}, and ${wanted} is wanted: ${todo}.`,
      value: tight ? worst.low : worst.high,
    },
  ];
}

/** At temperature only a float that is gone is a fault: a wider one does no harm until the stack is cold again. */
function caseDrafts(shop: Shop, ref: string): readonly Draft[] {
  const { system } = settings(shop);
  const shims = shimsOf(shop, ref);
  const sum = shims?.known === true ? shims.value.sum : 0;
  return floatCases(shop, ref).flatMap(({ kind, span, float }) => {
    if (!float.known) return [];
    const { worst, step } = float.value;
    const [low, high] = [worst.low - sum, worst.high - sum];
    if (0 < metresToTenths(low)) return [];
    const sure = metresToTenths(high) <= 0;
    const withShims =
      0 < sum ? ` with ${showLength(sum, system)} of shims` : "";
    return [
      {
        ...(sure ? {} : { level: "warning" as const }),
        span,
        message: `${sure ? "No end float is left" : "The end float may be gone"} when ${kind}${withShims}: ${showRange(low, high, system, step)}, and the stack binds. Leave more of it at 20 °C.`,
        value: low,
      },
    ];
  });
}
