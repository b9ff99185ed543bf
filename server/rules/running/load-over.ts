// The load on the projected area is more than the bearing material bears.
import { showPressures } from "../../core/quantity/show-force.ts";
import { specificLoad } from "../../model/evaluate/running.ts";
import { settings } from "../../model/evaluate/settings.ts";
import type { Rule } from "../rule.ts";
import { overDrafts } from "./over.ts";

export const loadOver: Rule = {
  code: "load-over",
  level: "error",
  about: ["fit"],
  check(shop, ref, entry) {
    const { system } = settings(shop);
    return overDrafts(shop, ref, entry, {
      what: "The specific load",
      of: "specificLoad",
      dimension: "pressure",
      found: specificLoad(shop, ref),
      show: (value) => showPressures(value, value, system),
      words: ["load"],
      todo: "take a longer bearing, a stronger material, or less load",
    });
  },
};
