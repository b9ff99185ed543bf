// What interference is usual for a press that writes no `want`: the job's own thresholds, else the shares of the outside diameter that the
// findings of a press hold bronze and brass to. Whether a press keeps to it is the rules' to say.
import {
  interferenceOfShare,
  usualInterference,
} from "../../core/press/interference.ts";
import { fixed, showLength } from "../../core/quantity/show.ts";
import { query, type Shop } from "../shop.ts";
import { materialOf } from "./material.ts";
import { partsOf } from "./press.ts";
import { settings } from "./settings.ts";
import type { Size } from "./size.ts";
import { ownThreshold, type Threshold } from "./threshold.ts";

/** "bronze" or "brass"; undefined of another bush, for which nothing is usual. */
export const usualFamily = query<"bronze" | "brass" | undefined>(
  "press-usual-family",
  (shop, press) => {
    const parts = partsOf(shop, press);
    const material =
      parts === undefined ? undefined : materialOf(shop, parts.bush);
    const family = material?.known === true ? material.value.family : undefined;
    return family === "bronze" || family === "brass" ? family : undefined;
  },
);

export interface UsualInterference {
  /** m; the least over the largest hole, the most over the smallest. */
  readonly low: number;
  readonly high: number;
  readonly says: string;
}

/** Undefined where one end is nowhere written and not usual either. */
export function usualWant(
  shop: Shop,
  press: string,
  hole: Size,
): UsualInterference | undefined {
  const family = usualFamily(shop, press);
  const { system } = settings(shop);
  const end = (
    code: "press-light" | "press-heavy",
    share: number,
    size: number,
  ): { readonly value: number; readonly says: string } | undefined => {
    const own = ownThreshold(shop, code);
    const threshold: Threshold | undefined =
      own ?? (family === undefined ? undefined : { share });
    if (threshold === undefined) return undefined;
    const whose =
      own === undefined ? `usual for ${family ?? ""}` : "this job's own";
    return "length" in threshold
      ? {
          value: threshold.length,
          says: `${showLength(threshold.length, system)} (${whose})`,
        }
      : {
          value: interferenceOfShare(size, threshold.share),
          says: `${fixed(threshold.share * 1000, 1)} ‰ of the od (${whose})`,
        };
  };
  const low = end("press-light", usualInterference.low, hole.high);
  const high = end("press-heavy", usualInterference.high, hole.low);
  return low === undefined || high === undefined
    ? undefined
    : {
        low: low.value,
        high: high.value,
        says: `no \`want\` is written: ${low.says} to ${high.says}`,
      };
}
