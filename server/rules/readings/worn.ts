// A journal, hole or bore has worn past its service limit. Worn is not wrong: what is off its limits and not past this may run on.
import { metresToTenths } from "../../core/quantity/exact.ts";
import { showLength } from "../../core/quantity/show.ts";
import { given } from "../../model/entry.ts";
import { settings } from "../../model/evaluate/settings.ts";
import { placesOf } from "../../model/evaluate/size.ts";
import { wearLimit } from "../../model/evaluate/wear.ts";
import type { Draft, Rule } from "../rule.ts";
import { showExcess, stepOfExcess } from "../show-excess.ts";
import { slipWords } from "./slip.ts";

export const worn: Rule = {
  code: "worn",
  level: "error",
  about: ["journal", "hole", "bore"],
  check(shop, ref, entry) {
    const limit = given(entry, "ServiceLimitFact");
    if (limit.state !== "given") return [];
    const places = placesOf(shop, ref);
    if (!places.known) return [];
    const { system } = settings(shop);
    const bound = wearLimit(entry);
    if (bound === undefined) return [];
    const { source } = limit.value;
    const isJournal = entry.kind === "journal";
    const shown = `${showLength(bound, system, limit.value.step)}${source === undefined ? "" : ` (${source})`}`;
    return places.value.flatMap(({ place, readings }) =>
      readings.flatMap(({ values, valueSpans, step }) =>
        values.flatMap((value, index): readonly Draft[] => {
          const span = valueSpans[index];
          const past =
            (metresToTenths(value) - metresToTenths(bound)) *
            (isJournal ? -1 : 1);
          if (span === undefined || past <= 0) return [];
          const metres = past / 1e10;
          const is = `${showLength(value, system, stepOfExcess(metres, step))}${place === undefined ? "" : ` at ${place}`}`;
          const slip = slipWords(value, { low: bound, high: bound });
          const cure =
            slip === ""
              ? isJournal
                ? "Build it up, sleeve it, or replace it"
                : "Bush it, or fit a new bush"
              : "Look at the gauge before any metal goes";
          return [
            {
              span,
              message: `${is} is worn ${showExcess(metres, system, step)} past the service limit ${shown}${slip}. ${cure}.`,
              related: [
                { ref, span: limit.span, message: `service limit of ${ref}` },
              ],
              value,
            },
          ];
        }),
      ),
    );
  },
};
