// The clearance of a fit at its coldest is under what it wants, or none is left.
import type { Rule } from "../rule.ts";
import { warmDrafts } from "./warm.ts";

export const coldTight: Rule = {
  code: "cold-tight",
  level: "error",
  about: ["fit"],
  check: (shop, ref) => warmDrafts(shop, ref, "cold", "tight"),
};
