// The findings of press fits, and of fits hot and cold.
import type { Rule } from "../rule.ts";
import { bushSlipsHot } from "./bush-slips-hot.ts";
import { closureNotValid } from "./closure-not-valid.ts";
import { coldLoose } from "./cold-loose.ts";
import { coldTight } from "./cold-tight.ts";
import { heatOver } from "./heat-over.ts";
import { hotLoose } from "./hot-loose.ts";
import { hotTight } from "./hot-tight.ts";
import { pressHeavy } from "./press-heavy.ts";
import { pressLight } from "./press-light.ts";
import { pressYields } from "./press-yields.ts";
import { wallMissing } from "./wall-missing.ts";

export const PRESS_RULES: readonly Rule[] = [
  wallMissing,
  hotTight,
  hotLoose,
  coldTight,
  coldLoose,
  pressLight,
  pressHeavy,
  pressYields,
  closureNotValid,
  bushSlipsHot,
  heatOver,
];
