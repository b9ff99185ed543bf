// The surface runs faster than the bearing material bears.
import { showSpeeds } from "../../core/quantity/show-running.ts";
import { surfaceSpeed } from "../../model/evaluate/running.ts";
import { settings } from "../../model/evaluate/settings.ts";
import type { Rule } from "../rule.ts";
import { overDrafts } from "./over.ts";

export const speedOver: Rule = {
  code: "speed-over",
  level: "error",
  about: ["fit"],
  check(shop, ref, entry) {
    const { system } = settings(shop);
    return overDrafts(shop, ref, entry, {
      what: "The surface speed",
      of: "speed",
      dimension: "speed",
      found: surfaceSpeed(shop, ref),
      show: (value) => showSpeeds(value, value, system),
      words: ["runs", "oscillates"],
      todo: "take a material that bears more, or run slower",
    });
  },
};
