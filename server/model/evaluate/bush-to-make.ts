// The outside diameter to make a bush to, from the hole as it is and the interference that is wanted, or usual where none is.
import { bushOdToMake } from "../../core/press/interference.ts";
import { lengthDigits, showRange } from "../../core/quantity/show.ts";
import {
  known,
  lacking,
  need,
  outside,
  SILENT,
  unknown,
  type Estimate,
  type Known,
} from "../known.ts";
import { finer } from "../ranges.ts";
import { query } from "../shop.ts";
import { partsOf } from "./press.ts";
import { usualWant } from "./press-usual.ts";
import { settings } from "./settings.ts";
import { sizeOf } from "./size.ts";
import { wanted } from "./wanted.ts";

/** Outside diameter of the bush to make: what gives every reading of the hole the wanted interference. */
export const odToMake = query<Known<Estimate>>(
  "press-od-to-make",
  (shop, ref) => {
    const parts = partsOf(shop, ref);
    if (parts === undefined) return SILENT;
    const hole = sizeOf(shop, parts.hole);
    const written = wanted(shop, ref);
    const noWant = unknown(
      need(ref, "want", `the wanted interference of ${ref}`),
    );
    if (!hole.known || written?.known === false)
      return lacking(hole, written ?? noWant);
    const usual =
      written === undefined ? usualWant(shop, ref, hole.value) : undefined;
    const want = written?.value ?? usual;
    if (want === undefined) return noWant;
    const found = bushOdToMake(hole.value, want);
    // what nobody asked for is no reason to refuse: the shop has to say what it wants over such a hole
    if (!found.valid)
      return usual === undefined ? outside(found.because) : noWant;
    const { low, high } = found.value;
    const { system } = settings(shop);
    const step = finer(hole.value.step, written?.value.step);
    return known({
      low,
      nominal: (low + high) / 2,
      high,
      status: hole.value.status,
      step,
      working: [
        ...hole.value.working,
        {
          formula:
            "od = largest hole + least wanted, to smallest hole + most wanted (before smoothing)",
          with: `${lengthDigits(hole.value.high, system, step)} + ${lengthDigits(want.low, system, step)} to ${lengthDigits(hole.value.low, system, step)} + ${lengthDigits(want.high, system, step)} = ${showRange(low, high, system, step)}`,
          source: "",
        },
        ...(usual === undefined
          ? []
          : [
              {
                formula: "wanted = what is usual",
                with: usual.says,
                source: "common practice, no source",
              },
            ]),
      ],
    });
  },
);
