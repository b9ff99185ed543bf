// Load times speed is more than the bearing material bears where no full film carries.
import { showPvs } from "../../core/quantity/show-running.ts";
import { pvOf } from "../../model/evaluate/running.ts";
import { settings } from "../../model/evaluate/settings.ts";
import type { Rule } from "../rule.ts";
import { overDrafts } from "./over.ts";

export const pvOver: Rule = {
  code: "pv-over",
  level: "error",
  about: ["fit"],
  check(shop, ref, entry) {
    const { system } = settings(shop);
    return overDrafts(shop, ref, entry, {
      what: "PV",
      of: "pv",
      dimension: "pv",
      found: pvOf(shop, ref),
      show: (value) => showPvs(value, value, system),
      words: [],
      todo: "take a material that bears more, a longer bearing, or less load or speed",
    });
  },
};
