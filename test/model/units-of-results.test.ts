// Each kind of result is in one unit of SI, whether it is known or not: over the samples, and over each of them without any one of its facts.
import { expect, test } from "vitest";
import { editLines, readLines } from "../../grammar/lines.ts";
import { RESULT_KINDS } from "../../server/model/result-kinds.ts";
import { createProject } from "../../server/rules/check.ts";
import { soundSamples } from "../samples.ts";

const UNITS: Readonly<Record<string, readonly string[]>> = {
  m: [
    ...["size", "out-of-round", "roundness", "taper", "uncertainty"],
    ...["interference", "bore-closure", "bore-after-press", "bush-od-to-make"],
    ...["clearance", "hot-clearance", "cold-clearance", "film"],
    ...["reamer-window", "cut-size", "stock", "pilot-offset"],
    ...["effective-clearance", "ledge", "end-float", "shim"],
  ],
  Pa: ["contact-pressure", "bush-stress", "hole-stress", "specific-load"],
  N: ["press-force"],
  degC: ["heat-to", "freeze-to", "release-temperature"],
  "m/s": ["surface-speed"],
  "Pa.m/s": ["pv"],
  W: ["friction-power"],
  K: ["oil-rise"],
  1: [
    ...["film-ratio", "relative-eccentricity", "sommerfeld"],
    ...["chance", "ratio", "ready"],
  ],
};
const UNIT_OF = new Map(
  Object.entries(UNITS).flatMap(([unit, kinds]) =>
    kinds.map((kind) => [kind, unit] as const),
  ),
);

test("every kind has a unit here", () => {
  expect([...UNIT_OF.keys()].sort()).toEqual(Object.keys(RESULT_KINDS).sort());
});

test("with every fact, and without any one of them", () => {
  const project = createProject({ root: "/" });
  for (const { path, text } of soundSamples)
    project.setFile(`/${path}`, readLines(text));
  const found = new Map<string, Set<string>>();
  const note = (path: string): void => {
    for (const { kind, unit, status } of project.check(`/${path}`).results) {
      if (unit !== UNIT_OF.get(kind))
        throw new Error(`${path}: ${kind} is in ${unit}`);
      const how = status === "unknown" ? "unknown" : "known";
      found.set(kind, (found.get(kind) ?? new Set()).add(how));
    }
  };
  for (const { path, text } of soundSamples) {
    const whole = readLines(text);
    note(path);
    whole.lines.forEach(({ indent, body }, line) => {
      if (indent === 0 || body === "") return;
      const start = { line, character: 0 };
      const end = { line: line + 1, character: 0 };
      project.setFile(`/${path}`, editLines(whole, { start, end, text: "" }));
      note(path);
    });
    project.setFile(`/${path}`, whole);
  }
  expect([...found.keys()].sort()).toEqual([...UNIT_OF.keys()].sort());
  // these are said only where they are known
  const never = [...found].filter(([, how]) => !how.has("unknown"));
  expect(never.map(([kind]) => kind).sort()).toEqual([
    "cut-size",
    "out-of-round",
    "taper",
  ]);
  for (const how of found.values()) expect(how).toContain("known");
});
