// The fillet at a journal's shoulder runs onto the edge of the bore's mouth.
import { filletFoul } from "../../core/line/blind-bore.ts";
import { metresToTenths } from "../../core/quantity/exact.ts";
import { showLength } from "../../core/quantity/show.ts";
import { given } from "../../model/entry.ts";
import { fitsOfJournal, namedIn } from "../../model/evaluate/index-of.ts";
import { settings } from "../../model/evaluate/settings.ts";
import type { Rule } from "../rule.ts";
import { ownLength } from "../threshold.ts";

export const filletFouls: Rule = {
  code: "fillet-fouls",
  level: "error",
  about: ["journal"],
  check(shop, ref, entry) {
    const fillet = given(entry, "FilletFact");
    const length = given(entry, "LengthFact");
    const reaches = given(entry, "ReachesFact");
    if (
      fillet.state !== "given" ||
      length.state !== "given" ||
      reaches.state !== "given"
    )
      return [];
    // the shoulder stands where the journal ends: what does not go into the bore keeps it off the mouth
    const gap = length.value.low - reaches.value.value;
    // what goes deeper than the journal is long is more than the journal, and where its shoulder lies is not said
    if (metresToTenths(gap) < 0) return [];
    const { system } = settings(shop);
    const mouth = ownLength(shop, "fillet-fouls") ?? 0;
    const found = filletFoul(fillet.value.value, Math.max(0, gap), mouth);
    if (!found.valid || metresToTenths(found.value) <= 0) return [];
    return fitsOfJournal(shop, ref)
      .slice(0, 1)
      .flatMap((fit) => {
        const bore = namedIn(shop, fit)[1];
        if (bore === undefined) return [];
        const show = (value: number): string => showLength(value, system);
        return [
          {
            span: fillet.span,
            message:
              `The fillet of ${show(fillet.value.value)} is larger than the ${show(Math.max(0, gap))} that ${ref} stays out of ${bore}${mouth === 0 ? "" : ` and the chamfer of ${show(mouth)} at its mouth`}: it runs ${show(found.value)} onto the mouth's edge. Chamfer the mouth by at least ${show(found.value + mouth)}, or keep the shoulder further off. ${mouth === 0 ? "Whether the mouth is chamfered already is not known here." : ""}`.trim(),
            related: [
              { ref: bore, message: `the mouth of ${bore}` },
              { ref, span: reaches.span, message: "how deep it goes in" },
            ],
            value: found.value,
          },
        ];
      });
  },
};
