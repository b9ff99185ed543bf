// Every kind of result with what it is, for `thou explain` and the docs; and what a person is shown of it: its name, how
// sure it is, the verdict.
import type { Result, Verdict } from "./result.ts";

export const RESULT_KINDS: Readonly<Record<string, string>> = {
  size: "smallest, mean and largest diameter at 20 °C, or what it will be",
  "out-of-round": "two-point difference at one place",
  roundness:
    "radial roundness by the swing of a pointer, for so many lobes as are written",
  taper: "difference of the means of places along the length",
  uncertainty: "expanded uncertainty U, 95 %",
  interference:
    "bush over hole, less smoothing; its verdict is on what it is before that",
  "contact-pressure": "pressure between bush and hole",
  "bush-stress": "von Mises stress at the bush's bore",
  "hole-stress": "von Mises stress at the hole",
  "bore-closure": "how much the bush's bore closes when pressed",
  "bore-after-press": "the bush's bore once pressed",
  "press-force": "force to press it home",
  "heat-to":
    "temperature of the case at which its hole is as wide as the bush: heat it past that, for room to drop in",
  "freeze-to":
    "temperature of the bush at which it is as small as its hole: cool it below that, for room to drop in",
  "bush-od-to-make": "outside diameter that gives the wanted interference",
  "release-temperature":
    "temperature of bush and case alike at which the case lets the bush go",
  clearance: "bore over journal, diametral",
  "hot-clearance": "the clearance when warm in service",
  "cold-clearance": "the clearance at the coldest start",
  "surface-speed": "speed of the journal's surface",
  "specific-load": "load on the projected area",
  pv: "specific load times surface speed",
  film: "least thickness of the oil film",
  "film-ratio": "least film over composite roughness",
  "relative-eccentricity": "eccentricity over radial clearance",
  sommerfeld: "Sommerfeld number, US form",
  "friction-power": "power lost to oil friction",
  "oil-rise": "rise of the oil's temperature",
  "reamer-window": "bore sizes that suit every journal of a line",
  "cut-size": "bore that a reamer leaves",
  chance: "chance that every bore lands in its window",
  stock: "what the reamer has to take off",
  "pilot-offset": "how far the pilot lets the cut wander",
  "effective-clearance":
    "clearance left by the straightest shaft through the line",
  ledge: "length that the reamer leaves uncut at the bottom of a blind bore",
  "end-float": "axial play of a stack",
  shim: "thickness of shims that brings the float in",
  ratio: "tolerance over twice a gauge's uncertainty",
  ready: "whether a step can be done now, or what it waits for",
};

/** How each kind of result is called; all clearances and interferences are diametral. */
export const RESULT_NAMES: Readonly<Record<string, string>> = {
  size: "size",
  "out-of-round": "out of round (two-point)",
  roundness: "roundness (radial)",
  taper: "taper",
  uncertainty: "uncertainty U",
  interference: "interference (diametral)",
  "contact-pressure": "contact pressure",
  "bush-stress": "stress at the bush's bore (von Mises)",
  "hole-stress": "stress at the hole",
  "bore-closure": "closure of the bore",
  "bore-after-press": "bore after pressing",
  "press-force": "press force",
  "heat-to": "heat the case past",
  "freeze-to": "cool the bush below",
  "bush-od-to-make": "od to make the bush to",
  "release-temperature": "lets go at",
  clearance: "clearance (diametral)",
  "hot-clearance": "clearance hot (diametral)",
  "cold-clearance": "clearance cold (diametral)",
  "surface-speed": "surface speed",
  "specific-load": "specific load",
  pv: "load times speed (PV)",
  film: "least film",
  "film-ratio": "film to roughness",
  "relative-eccentricity": "relative eccentricity",
  sommerfeld: "Sommerfeld number (US form)",
  "friction-power": "friction power",
  "oil-rise": "rise of the oil",
  "reamer-window": "bore sizes that suit every journal",
  "cut-size": "cuts",
  chance: "chance that the bore suits",
  stock: "stock",
  "pilot-offset": "pilot's offset at the cut",
  "effective-clearance": "effective clearance in line (diametral)",
  ledge: "ledge",
  "end-float": "end float",
  shim: "shims",
  ratio: "tolerance to uncertainty",
  ready: "ready",
};

export function resultName(kind: string): string {
  return RESULT_NAMES[kind] ?? kind.replaceAll("-", " ");
}

/** How sure a result is, in a word; "" where it is no figure: that a step is next is neither measured nor predicted. */
export function statusWord({
  kind,
  status,
}: Pick<Result, "kind" | "status">): string {
  return kind === "ready" && status !== "unknown" ? "" : status;
}

/** Beside a figure "in" alone reads as an inch. */
export const VERDICT_WORDS: Readonly<Record<Verdict, string>> = {
  in: "in tolerance",
  out: "out",
  unsure: "unsure",
  none: "",
};

/** The result that an entry is known by, by its kind: it stands beside the opening line. */
export const HEADLINES: Readonly<Record<string, string>> = {
  journal: "size",
  hole: "size",
  bore: "size",
  press: "interference",
  fit: "clearance",
  line: "reamer-window",
  stack: "end-float",
  step: "ready",
};
