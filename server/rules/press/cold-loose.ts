// The clearance of a fit at its coldest is over what it wants.
import type { Rule } from "../rule.ts";
import { warmDrafts } from "./warm.ts";

export const coldLoose: Rule = {
  code: "cold-loose",
  level: "warning",
  about: ["fit"],
  check: (shop, ref) => warmDrafts(shop, ref, "cold", "loose"),
};
