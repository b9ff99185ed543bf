// Every rule, in the order of the language page.
import type { Rule } from "./rule.ts";
import { lineNeedsTwoReamers } from "./cutting/line-needs-two-reamers.ts";
import { reamerNotInCrib } from "./cutting/reamer-not-in-crib.ts";
import { reamerWrongSize } from "./cutting/reamer-wrong-size.ts";
import { fitInterferes } from "./fits/fit-interferes.ts";
import { fitLoose } from "./fits/fit-loose.ts";
import { fitTight } from "./fits/fit-tight.ts";
import { fitUnsure } from "./fits/fit-unsure.ts";
import { cutUnchecked } from "./order/cut-unchecked.ts";
import { stepEarly } from "./order/step-early.ts";
import { stepLoop } from "./order/step-loop.ts";
import { stepOpen } from "./order/step-open.ts";
import { gaugeOverdue } from "./readings/gauge-overdue.ts";
import { outOfRound } from "./readings/out-of-round.ts";
import { readingFinerThanGauge } from "./readings/reading-finer-than-gauge.ts";
import { readingOffLimits } from "./readings/reading-off-limits.ts";
import { readingStray } from "./readings/reading-stray.ts";
import { taper } from "./readings/taper.ts";
import { filmThin } from "./running/film-thin.ts";
import { pvOver } from "./running/pv-over.ts";
import { loadOver } from "./running/load-over.ts";
import { speedOver } from "./running/speed-over.ts";
import { NAME_RULES } from "./text/index.ts";

export { TEXT_RULES } from "./text/index.ts";

export const RULES: readonly Rule[] = [
  ...NAME_RULES,
  readingOffLimits,
  outOfRound,
  taper,
  readingStray,
  readingFinerThanGauge,
  gaugeOverdue,
  fitTight,
  fitLoose,
  fitInterferes,
  fitUnsure,
  reamerNotInCrib,
  reamerWrongSize,
  lineNeedsTwoReamers,
  filmThin,
  pvOver,
  loadOver,
  speedOver,
  stepEarly,
  stepOpen,
  stepLoop,
  cutUnchecked,
];
