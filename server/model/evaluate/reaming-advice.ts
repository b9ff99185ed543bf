// How fast to ream a line, as advice for whoever asks: ranges, never a finding.
import {
  reamingAdvice,
  type ReamingAdvice,
} from "../../core/line/reaming-advice.ts";
import type { MaterialClass } from "../../core/line/stock-allowances.ts";
import { known, need, outside, SILENT, unknown, type Known } from "../known.ts";
import { nameOf } from "../reference.ts";
import { query } from "../shop.ts";
import { cutOf } from "./bore.ts";
import { lineBoresOf, reamerOfLine, reamerTool } from "./line-bores.ts";
import { materialClass } from "./material-class.ts";
import { materialOfFeature } from "./size.ts";

export interface BoreAdvice {
  readonly bore: string;
  readonly reamer: string;
  readonly drive: "hand" | "machine";
  /** Undefined where it is not written, as by hand it does not matter. */
  readonly tool: "hss" | "carbide" | undefined;
  readonly material: MaterialClass;
  /** m, as cut */
  readonly diameter: number;
  /** It is advice: makers' tables differ, and a worn machine runs slower. */
  readonly isAdvice: true;
  readonly advice: ReamingAdvice;
  /** Where the ranges are from. */
  readonly source: string;
}

/** Speed, turns and feed for each bore of a line that reams; none for a line that is bored or honed. */
export const reamingAdviceFor = query<readonly Known<BoreAdvice>[]>(
  "reaming-advice",
  (shop, line) => {
    const reamer = reamerOfLine(shop, line);
    const bores = lineBoresOf(shop, line);
    if (!reamer.known || reamer.value === undefined || !bores.known) return [];
    const ref = reamer.value;
    const tool = reamerTool(shop, ref);
    return bores.value.map(({ bore }): Known<BoreAdvice> => {
      const needed = ["drive", "material", "flutes"] as const;
      if (
        tool === undefined ||
        needed.some((word) => tool.damaged.includes(word))
      )
        return SILENT;
      const { drive, material: toolMaterial, flutes } = tool;
      if (drive === undefined)
        return unknown(need(ref, "drive", `the drive of ${ref}`));
      if (toolMaterial === undefined && drive === "machine")
        return unknown(need(ref, "material", `the material of ${ref}`));
      const cut = cutOf(shop, bore);
      if (cut === undefined) return SILENT;
      if (!cut.known) return cut;
      const of = materialOfFeature(shop, bore);
      if (!of.known) return of;
      const material = materialClass(of.value.family);
      if (material === undefined)
        return outside(`no table says how to ream ${nameOf(of.value.ref)}`);
      const advice = reamingAdvice(
        cut.value.nominal,
        material,
        drive,
        toolMaterial ?? "hss",
        flutes?.count,
      );
      return advice.valid
        ? known({
            bore,
            reamer: ref,
            drive,
            tool: toolMaterial,
            material,
            diameter: cut.value.nominal,
            isAdvice: true,
            advice: advice.value,
            source:
              advice.value.from === "read"
                ? "a reamer maker's tables; advice"
                : "common practice, no source; advice",
          })
        : outside(advice.because);
    });
  },
);
