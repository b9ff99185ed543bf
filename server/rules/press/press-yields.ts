// The press comes near to the yield of the bush at its bore, or of the case at its hole.
import { showPressures } from "../../core/quantity/show-force.ts";
import { fixed } from "../../core/quantity/show.ts";
import { stressesOf } from "../../model/evaluate/press-pressure.ts";
import { figureOf, ringsOf } from "../../model/evaluate/press-rings.ts";
import { settings } from "../../model/evaluate/settings.ts";
import { nameOf } from "../../model/reference.ts";
import type { Rule } from "../rule.ts";
import { ownFactor } from "../threshold.ts";
import { relatedPress } from "./allowed.ts";

/** Yield over the most stress: common practice, no source. */
const MARGIN = 1.2;

export const pressYields: Rule = {
  code: "press-yields",
  level: "warning",
  about: ["press"],
  check(shop, ref, entry) {
    const stresses = stressesOf(shop, ref);
    const rings = ringsOf(shop, ref);
    if (!stresses.known || !rings.known) return [];
    const { system } = settings(shop);
    const asked = ownFactor(shop, "press-yields") ?? MARGIN;
    const over = (["bush", "hole"] as const).flatMap((at) => {
      const material = at === "bush" ? rings.value.bush : rings.value.case;
      const limit = figureOf(shop, material, "yield");
      const stress = stresses.value[at].high;
      if (!limit.known || asked * stress <= limit.value) return [];
      const where =
        at === "bush" ? "the bush at its bore" : "the case at its hole";
      return [
        {
          margin: limit.value / stress,
          says: `${where} carries up to ${showPressures(stress, stress, system)}, and ${nameOf(material.ref)} yields at ${showPressures(limit.value, limit.value, system)}: a margin of ${fixed(limit.value / stress, 2)}`,
        },
      ];
    });
    const worst = over.sort((a, b) => a.margin - b.margin)[0];
    if (worst === undefined) return [];
    return [
      {
        span: entry.nameSpan,
        message: `At the most interference ${over.map((each) => each.says).join("; ")}, where ${fixed(asked, 1)} is asked. ${worst.margin < 1 ? "It gives way and holds less than it should" : "There is little to spare"}: take less interference, a thicker wall or a stronger material.`,
        related: relatedPress(shop, ref),
      },
    ];
  },
};
