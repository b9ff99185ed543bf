// What the walkthrough shows and tells is what the sample job says: its numbers, its words, and the two changes that it proposes.
import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import manifest from "../../package.json" with { type: "json" };
import { readLines } from "../../grammar/lines.ts";
import { hintsIn } from "../../server/ide/hints.ts";
import { createProject } from "../../server/rules/check.ts";

const sample = readFileSync("samples/first-job.thou", "utf8");
const withReading = sample.replace(/^#( {2}read )/m, "$1");
const [walkthrough] = manifest.contributes.walkthroughs;
const steps = walkthrough?.steps ?? [];
const picture = (id: string): string =>
  readFileSync(
    steps.find((step) => step.id === id)?.media.svg ?? "missing",
    "utf8",
  );

/** All that stands in and beside the lines of a record, and what is found. */
function said(text: string) {
  const project = createProject({ root: "/" });
  project.setFile("/job.thou", readLines(text));
  const open = project.open("/job.thou");
  if (open === undefined) throw new Error("the record is not there");
  const hints = hintsIn(open, 0, 1000).map(({ parts }) =>
    parts.map((part) => part.text).join(""),
  );
  const { findings, results } = project.check("/job.thou");
  return { hints, findings, results, lines: text.split("\n") };
}

test("the texts beside the lines are those that the sample has", () => {
  const { hints, lines } = said(sample);
  const drawn = [...picture("beside").matchAll(/<text [^>]*>([^<]+)</g)].map(
    ([, text = ""]) => text,
  );
  expect(drawn.length).toBeGreaterThan(5);
  for (const text of drawn)
    expect(
      hints.includes(text) || lines.some((line) => line.startsWith(text)),
      text,
    ).toBe(true);
});

test("the numbers of the other pictures are those of the sample", () => {
  const numbers = (id: string): readonly string[] => [
    ...new Set(picture(id).match(/\d\.\d+ to \d\.\d+ in/g)),
  ];
  const before = said(sample).results.map(({ text }) => text);
  for (const number of numbers("overview"))
    expect(before, number).toContain(number);
  const after = said(withReading).results;
  expect(numbers("reading")).toEqual([
    after.find(({ kind }) => kind === "reamer-window")?.text,
  ]);
});

test("with the reading put in the fit is in and the step is free; with the wrong reamer the cut is stopped", () => {
  expect(withReading).not.toBe(sample);
  expect(said(sample).findings.map(({ code }) => code)).toEqual([
    "cut-unchecked",
  ]);
  const { findings, results } = said(withReading);
  expect(findings.map(({ code }) => code)).toEqual(["step-open"]);
  expect(
    results.find(
      ({ entry, kind }) => entry === "fit far" && kind === "clearance",
    )?.verdict,
  ).toBe("in");
  const wrong = withReading.replace("ream with r-8755", "ream with r-8765");
  expect(wrong).not.toBe(withReading);
  const codes = said(wrong).findings.map(({ code }) => code);
  expect(codes).toContain("reamer-wrong-size");
  expect(codes).toContain("cut-unchecked");
});

test("each picture has words for those who can't see it, and no colour of its own", () => {
  for (const { media } of steps) {
    expect(media.altText).toMatch(/\w{3}/);
    const svg = readFileSync(media.svg, "utf8");
    // the editor's colours alone, so that it is legible in every theme
    expect(svg.match(/(?:fill|stroke)="(?!var\(--vscode-|none")[^"]*"/g)).toBe(
      null,
    );
  }
});
