// The clearance of a fit when hot is under what it wants, or none is left.
import type { Rule } from "../rule.ts";
import { warmDrafts } from "./warm.ts";

export const hotTight: Rule = {
  code: "hot-tight",
  level: "error",
  about: ["fit"],
  check: (shop, ref) => warmDrafts(shop, ref, "hot", "tight"),
};
