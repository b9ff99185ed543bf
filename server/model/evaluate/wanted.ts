// What a fit, a press or a stack wants: a clearance, an interference, an end float.
import { given } from "../entry.ts";
import { known, SILENT, type Known } from "../known.ts";
import { entryOf, query } from "../shop.ts";
import type { LengthRange } from "../values.ts";

/** The band that an entry's `want` writes; undefined where it writes none. */
export const wanted = query<Known<LengthRange> | undefined>(
  "wanted",
  (shop, ref) => {
    const entry = entryOf(shop, ref);
    if (entry === undefined) return SILENT;
    const want = given(entry, "WantFact");
    if (want.state === "damaged") return SILENT;
    return want.state === "absent" ? undefined : known(want.value);
  },
);
