// Every rule, by what it is about.
import type { Rule } from "./rule.ts";
import { bushNotReamable } from "./cutting/bush-not-reamable.ts";
import { filletFouls } from "./cutting/fillet-fouls.ts";
import { grooveMeetsFlutes } from "./cutting/groove-meets-flutes.ts";
import { jointNotAsService } from "./cutting/joint-not-as-service.ts";
import { ledgeFouls } from "./cutting/ledge-fouls.ts";
import { lineNeedsTwoReamers } from "./cutting/line-needs-two-reamers.ts";
import { pilotInCutBore } from "./cutting/pilot-in-cut-bore.ts";
import { pilotSlack } from "./cutting/pilot-slack.ts";
import { pilotTight } from "./cutting/pilot-tight.ts";
import { reamerNotInCrib } from "./cutting/reamer-not-in-crib.ts";
import { reamerWrongSize } from "./cutting/reamer-wrong-size.ts";
import { stockHeavy } from "./cutting/stock-heavy.ts";
import { stockThin } from "./cutting/stock-thin.ts";
import { ventMissing } from "./cutting/vent-missing.ts";
import { wontCleanUp } from "./cutting/wont-clean-up.ts";
import { fitInterferes } from "./fits/fit-interferes.ts";
import { fitLoose } from "./fits/fit-loose.ts";
import { fitTight } from "./fits/fit-tight.ts";
import { fitUnsure } from "./fits/fit-unsure.ts";
import { cutUnchecked } from "./order/cut-unchecked.ts";
import { stepEarly } from "./order/step-early.ts";
import { stepLoop } from "./order/step-loop.ts";
import { stepOpen } from "./order/step-open.ts";
import { PRESS_RULES } from "./press/index.ts";
import { gaugeOverdue } from "./readings/gauge-overdue.ts";
import { lobed } from "./readings/lobed.ts";
import { outOfRound } from "./readings/out-of-round.ts";
import { readingFinerThanGauge } from "./readings/reading-finer-than-gauge.ts";
import { readingOffLimits } from "./readings/reading-off-limits.ts";
import { readingOffNominal } from "./readings/reading-off-nominal.ts";
import { readingUneven } from "./readings/reading-uneven.ts";
import { readingStray } from "./readings/reading-stray.ts";
import { swingBlind } from "./readings/swing-blind.ts";
import { taper } from "./readings/taper.ts";
import { filmThin } from "./running/film-thin.ts";
import { gradeUnknown } from "./running/grade-unknown.ts";
import { loadOver } from "./running/load-over.ts";
import { pvOver } from "./running/pv-over.ts";
import { speedOver } from "./running/speed-over.ts";
import { floatOff } from "./stack/float-off.ts";
import { shimNone } from "./stack/shim-none.ts";
import { concessionUnsigned } from "./concessions/concession-unsigned.ts";
import { concessionSpent } from "./concessions/concession-spent.ts";
import { concessionIdle } from "./concessions/concession-idle.ts";
import { serviceLimitWithin } from "./readings/service-limit-within.ts";
import { worn } from "./readings/worn.ts";
import { gaugeCoarse } from "./readings/gauge-coarse.ts";
import { gaugeOff } from "./readings/gauge-off.ts";
import { hoursBack } from "./readings/hours-back.ts";
import { gaugeUnset } from "./readings/gauge-unset.ts";
import { lineCrooked } from "./cutting/line-crooked.ts";
import { NAME_RULES } from "./text/index.ts";

export { TEXT_RULES } from "./text/index.ts";

export const RULES: readonly Rule[] = [
  ...NAME_RULES,
  readingOffLimits,
  readingOffNominal,
  serviceLimitWithin,
  worn,
  outOfRound,
  taper,
  lobed,
  swingBlind,
  readingStray,
  readingUneven,
  readingFinerThanGauge,
  gaugeCoarse,
  gaugeOverdue,
  gaugeUnset,
  gaugeOff,
  hoursBack,
  fitTight,
  fitLoose,
  fitInterferes,
  fitUnsure,
  ...PRESS_RULES,
  reamerNotInCrib,
  reamerWrongSize,
  lineNeedsTwoReamers,
  stockThin,
  stockHeavy,
  wontCleanUp,
  pilotSlack,
  pilotTight,
  pilotInCutBore,
  ledgeFouls,
  filletFouls,
  ventMissing,
  grooveMeetsFlutes,
  jointNotAsService,
  bushNotReamable,
  lineCrooked,
  gradeUnknown,
  filmThin,
  pvOver,
  loadOver,
  speedOver,
  floatOff,
  shimNone,
  stepEarly,
  stepOpen,
  stepLoop,
  cutUnchecked,
  concessionUnsigned,
  concessionSpent,
  concessionIdle,
];
