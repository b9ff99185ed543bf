// Owns the second look at what is shown of a length: digits as whole numbers, with no point to round at.
import { lengthDigits } from "../../../server/core/quantity/show.ts";
import { chance } from "../../core/readings/chance.ts";
import type { Side } from "./sides.ts";

/** Lengths as they are shown, halves among them: the text's digits as a whole number, against that of the fraction, halves away from zero. */
export function shown(): readonly Side[] {
  const { even } = chance(58175);
  const decimals = { inch: 5, mm: 4 } as const;
  return (["inch", "mm"] as const).flatMap((system) =>
    Array.from({ length: 2000 }, (_, index) => {
      // 0.00001 in and 0.0001 mm, shown to them or to one digit less
      const count = Math.floor(even() * 200_000) * (index % 2 === 0 ? 5 : 1);
      const kept = decimals[system] - (index % 4 < 2 ? 1 : 0);
      const tenths = count * (system === "inch" ? 2540 : 1000);
      const step = system === "inch" ? 0.0254 : 0.001;
      const text = lengthDigits(tenths / 1e10, system, step / 10 ** kept);
      const size = BigInt(Math.abs(count));
      const cut = kept === decimals[system] ? size : (size + 5n) / 10n;
      return {
        at: `${String(count)} of ${String(decimals[system])} decimals, ${system}`,
        ours: Number(text.replace(".", "")),
        theirs: Math.sign(count) * Number(cut) + 0,
      };
    }),
  );
}
