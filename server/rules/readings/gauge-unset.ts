// A gauge that compares was used, and nothing says what it was set on.
import { given } from "../../model/entry.ts";
import { gaugeValue, isComparator } from "../../model/evaluate/gauge.ts";
import { nameOf } from "../../model/reference.ts";
import { entryOf, refOf, refsOfKind, type Shop } from "../../model/shop.ts";
import { factUnder, MOST_OFFERED } from "../fixes.ts";
import type { DraftFix, Rule } from "../rule.ts";
import { readingsIn } from "./readings-in.ts";

export const gaugeUnset: Rule = {
  code: "gauge-unset",
  level: "warning",
  about: ["journal", "hole", "bore", "bush", "stack", "reamer", "pilot"],
  check(shop, _, entry) {
    const seen = new Set<string>();
    return readingsIn(entry).flatMap(({ gauge: site }) => {
      const ref = refOf(shop, site);
      if (site === undefined || ref === undefined || seen.has(ref)) return [];
      seen.add(ref);
      const gauge = entryOf(shop, ref);
      const kind = gaugeValue(shop, ref)?.kind;
      if (
        gauge === undefined ||
        !isComparator(kind) ||
        given(gauge, "SetFact").state !== "absent"
      )
        return [];
      return [
        {
          span: site.span,
          message: `${ref} is a comparator (${kind ?? ""}): it shows how far a size is from what it was set on, and that is not written. Write \`set on ring\` with the ring's size, or \`set with\` and the gauge it was set in.`,
          related: [{ ref, message: `${ref} has no \`set\`` }],
          fixes: settingGauges(shop, ref),
        },
      ];
    });
  },
};

/** The gauges that it may have been set in: those that show a size by themselves, a micrometer first. */
function settingGauges(shop: Shop, comparator: string): readonly DraftFix[] {
  const kindOf = (gauge: string): string | undefined =>
    gaugeValue(shop, gauge)?.kind;
  return refsOfKind(shop, "gauge")
    .filter(
      (gauge) =>
        gauge !== comparator &&
        kindOf(gauge) !== undefined &&
        !isComparator(kindOf(gauge)),
    )
    .sort(
      (a, b) =>
        Number(kindOf(b) === "micrometer") - Number(kindOf(a) === "micrometer"),
    )
    .slice(0, MOST_OFFERED)
    .flatMap((gauge) => {
      const fact = `set with ${nameOf(gauge)}`;
      const edit = factUnder(shop, comparator, fact);
      return edit === undefined
        ? []
        : [
            {
              title: `Write \`${fact}\` under ${comparator}`,
              safe: false,
              edits: [edit],
            },
          ];
    });
}
