// The clearance of a fit when hot is over what it wants.
import type { Rule } from "../rule.ts";
import { warmDrafts } from "./warm.ts";

export const hotLoose: Rule = {
  code: "hot-loose",
  level: "warning",
  about: ["fit"],
  check: (shop, ref) => warmDrafts(shop, ref, "hot", "loose"),
};
