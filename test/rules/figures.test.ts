// What each finding is measured in, held to the findings themselves: over the samples of the pages, what has a value has one of its kind,
// and a threshold changes what is found where the table takes it and nowhere else.
import { describe, expect, test } from "vitest";
import { readLines } from "../../grammar/lines.ts";
import type { Dimension } from "../../server/core/quantity/units.ts";
import { createProject } from "../../server/rules/check.ts";
import { findingsOfEntry } from "../../server/rules/entry-findings.ts";
import type { EntryFinding } from "../../server/rules/rule.ts";
import { CODES } from "../../server/rules/codes.ts";
import { canBeAllowed, figuresOf } from "../../server/rules/figures.ts";
import { allPages, FIRST, type Sample } from "./pages.ts";

/** The findings of the job of a sample, with lines of its own put under its head in place of the thresholds that it has. */
function found(
  { files }: Sample,
  lines: readonly string[] = [],
): readonly EntryFinding[] {
  const project = createProject({ root: "" });
  for (const { name, text } of files)
    project.setFile(
      name,
      readLines(
        name === FIRST && 0 < lines.length
          ? text
              .replace(/^ {2}warn .*\n/gmu, "")
              .replace(/^(?:job|shop) .*\n/mu, (head) => head + lines.join(""))
          : text,
      ),
    );
  for (const missing of project.missingUses(FIRST))
    project.setFile(missing, null);
  const open = project.open(FIRST);
  if (open === undefined) throw new Error("no job");
  return open.file.entries.flatMap((_, index) => findingsOfEntry(open, index));
}

const pages = allPages();

/** Far under and far over anything that a job would be held against. */
const EXTREMES: Readonly<Partial<Record<Dimension, readonly string[]>>> = {
  length: ["0.0000001 in", "10 in"],
  ratio: ["0.0001 %", "1000000 %"],
  temperature: ["-60 F", "3000 F"],
  pressure: ["0.001 psi", "10000000 psi"],
  speed: ["0.0001 ft/min", "1000000 ft/min"],
  pv: ["0.0001 psi-ft/min", "100000000000 psi-ft/min"],
};
const DIMENSIONS = Object.keys(EXTREMES) as readonly Dimension[]; // its own keys

const shownOf = (findings: readonly EntryFinding[]): string =>
  findings
    .filter(({ code }) => code !== "warn-idle")
    .map(({ code, level, message }) => `${level} ${code}: ${message}`)
    .join("\n");

test("the values of findings are of the kinds that the table says, and each kind that it says is met", () => {
  const met = new Set<string>();
  for (const { samples } of pages)
    for (const sample of samples)
      for (const { code, value, dimension = "length" } of found(sample)) {
        if (value === undefined) continue;
        expect(figuresOf(code).value, code).toContain(dimension);
        met.add(code);
      }
  const said = CODES.filter((code) => 0 < figuresOf(code).value.length);
  expect([...met].sort()).toEqual([...said].sort());
});

describe("thresholds", () => {
  const withThreshold = pages.filter(
    ({ code }) => 0 < figuresOf(code).warn.length,
  );

  test.each(withThreshold.map((page) => [page.code, page] as const))(
    "%s: each kind that is taken changes what is found, and no other does",
    (code, { samples }) => {
      for (const dimension of DIMENSIONS) {
        const differs = samples.some((sample) => {
          const [low, high] = (EXTREMES[dimension] ?? []).map((at) =>
            shownOf(found(sample, [`  warn ${code} at ${at}\n`])),
          );
          return low !== high;
        });
        expect(differs, dimension).toBe(
          figuresOf(code).warn.includes(dimension),
        );
      }
    },
  );

  test("a finding without one is the same whatever is written", () => {
    const without = CODES.filter((code) => figuresOf(code).warn.length === 0);
    for (const { code, samples } of pages) {
      const [sample] = samples;
      if (sample === undefined || !without.includes(code)) continue;
      const [low, high] = ["0.0000001 in", "1000000 %"].map((at) =>
        shownOf(
          found(
            sample,
            without.map((each) => `  warn ${each} at ${at}\n`),
          ),
        ),
      );
      expect(low, code).toBe(high);
    }
  });
});

test("a concession can hold against what has a value and may be signed away", () => {
  expect(canBeAllowed("fit-loose")).toBe(true);
  for (const code of ["press-yields", "heat-over", "cut-unchecked"])
    expect(canBeAllowed(code), code).toBe(false);
  for (const code of ["line-damaged", "name-unknown", "fit-unsure", "no-such"])
    expect(canBeAllowed(code), code).toBe(false);
});
