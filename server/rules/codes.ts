// The codes of findings, by what they are about. `warn` and `allows` name them; a test holds the rules to them.

export const CODES: readonly string[] = [
  // text
  ...["word-unknown", "word-misplaced", "line-damaged", "name-unknown"],
  ...["name-twice", "name-ambiguous", "unit-missing", "unit-wrong"],
  ...["number-comma", "range-reversed", "class-wrong", "date-wrong"],
  ...["file-missing", "use-loop", "fact-twice", "fact-missing"],
  ...["not-valid-here", "warn-idle"],
  // readings
  ...[
    "reading-off-limits",
    "reading-off-nominal",
    "service-limit-within",
    "worn",
    "out-of-round",
    "taper",
    "lobed",
    "swing-blind",
    "reading-stray",
    "reading-uneven",
  ],
  ...["reading-finer-than-gauge", "gauge-coarse", "gauge-overdue"],
  ...["gauge-unset", "gauge-off", "hours-back"],
  // fits
  ...["fit-tight", "fit-loose", "fit-interferes", "fit-unsure"],
  ...["hot-tight", "hot-loose", "cold-tight", "cold-loose"],
  // presses
  "wall-missing",
  ...["press-light", "press-heavy", "press-yields", "closure-not-valid"],
  ...["bush-slips-hot", "bush-not-reamable", "heat-over"],
  // cutting
  ...["reamer-not-in-crib", "reamer-wrong-size", "line-needs-two-reamers"],
  ...["stock-thin", "stock-heavy", "wont-clean-up", "pilot-slack"],
  ...["pilot-tight", "pilot-in-cut-bore", "ledge-fouls", "fillet-fouls"],
  ...["vent-missing", "groove-meets-flutes", "joint-not-as-service"],
  "line-crooked",
  // running
  "grade-unknown",
  ...["film-thin", "pv-over", "load-over", "speed-over"],
  // stack
  ...["float-off", "shim-none"],
  // order
  ...["step-early", "step-open", "step-loop", "cut-unchecked"],
  ...["concession-unsigned", "concession-spent", "concession-idle"],
];
