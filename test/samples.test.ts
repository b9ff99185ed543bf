// What the sample shop says, whole: findings by code, and every result in a golden file beside (`npm test -- -u` writes it anew; read the
// difference before it is committed). The few figures below are worked out by hand.
import { describe, expect, test } from "vitest";
import { readLines } from "../grammar/lines.ts";
import type { FileCheck, Result } from "../server/model/result.ts";
import { createProject } from "../server/rules/check.ts";
import { soundSamples } from "./samples.ts";

const project = createProject({ root: "/" });
for (const { path, text } of soundSamples)
  project.setFile(`/${path}`, readLines(text));

function check(path: string): FileCheck {
  return project.check(`/${path}`);
}

/** A result, and under it how it was worked out and what it still needs. */
function said(result: Result): readonly string[] {
  return [
    line(result),
    ...result.working.map(
      ({ formula, with: numbers, source }) =>
        `    ${[formula, numbers, source].filter((part) => part !== "").join(" | ")}`,
    ),
    ...result.needs.map(
      ({ ref, fact, text }) => `    needs ${text} (${fact} of ${ref})`,
    ),
  ];
}

function line(result: Result): string {
  const { entry, kind, of, case: number, text, status, verdict } = result;
  const what = [kind, of, number === null ? null : `case ${String(number)}`]
    .filter((part) => part !== null)
    .join(" ");
  return `${entry}: ${what} = ${text} [${status}${verdict === "none" ? "" : `, ${verdict}`}]`;
}

describe.each(soundSamples)("$path", ({ path }) => {
  test("says what it said", async () => {
    const { findings, results } = check(path);
    const found = findings.map(
      ({ level, code, place, message, accepted }) =>
        `${level} ${code} at line ${String(place.line + 1)}: ${message}${accepted === null ? "" : ` [accepted by ${accepted}]`}`,
    );
    const text = [...found, "", ...results.flatMap(said), ""].join("\n");
    await expect(text).toMatchFileSnapshot(
      `fixtures/results/${path.replace(/\//g, "-").replace(/\.thou$/, "")}.txt`,
    );
  });

  test("every result carries all that the contract names", () => {
    for (const { step, ...result } of check(path).results) {
      // of lengths alone, and not in the contract
      if (step !== undefined) expect(result.unit).toBe("m");
      expect(Object.keys(result).sort()).toEqual([
        "case",
        "entry",
        "high",
        "kind",
        "low",
        "needs",
        "nominal",
        "of",
        "status",
        "text",
        "unit",
        "verdict",
        "working",
      ]);
      const numbers = [result.low, result.nominal, result.high];
      if (result.status === "unknown")
        expect(numbers).toEqual([null, null, null]);
      else {
        for (const number of numbers)
          expect(Number.isFinite(number) && !Object.is(number, -0)).toBe(true);
        expect(Number(result.low)).toBeLessThanOrEqual(Number(result.high));
      }
      expect(result.text).not.toBe("");
    }
  });
});

describe("the winch", () => {
  // asked for in each test, not while they are gathered: a fault in a rule then meets the tests that it bears on alone
  const winch = (): FileCheck => check("shop/winch.thou");
  const inches = (
    entry: string,
    kind: string,
    of: string | null = null,
  ): readonly number[] => {
    const found = winch().results.find(
      (result) =>
        result.entry === entry && result.kind === kind && result.of === of,
    );
    return [found?.low, found?.high].map((metres) =>
      Number((Number(metres) / 0.0254).toFixed(7)),
    );
  };

  test("is clean but for what is still to measure", () => {
    const { findings } = winch();
    expect(
      findings
        .filter((finding) => finding.level !== "hint")
        .map((finding) => finding.code),
    ).toEqual(["cut-unchecked"]);
    expect(
      findings.find((finding) => finding.code === "cut-unchecked")?.message,
    ).toContain("journal rear is not measured");
  });

  // the journal as read, all at 68 °F which is 20 °C
  test("front journal", () => {
    expect(inches("journal front", "size")).toEqual([0.87428, 0.87435]);
  });

  // front: 0.87435 + 0.0008 to 0.87428 + 0.0016; rear, from its limits: 0.8745 + 0.0008 to 0.8740 + 0.0016; both: the narrower
  test("bore sizes that suit both journals", () => {
    expect(inches("line layshaft", "reamer-window")).toEqual([0.8753, 0.8756]);
  });

  test("the reamer to take is the one that the line names, and the best of the crib", () => {
    expect(
      winch().results.find(
        (result) =>
          result.entry === "line layshaft" && result.kind === "cut-size",
      )?.of,
    ).toBe("reamer r-8755");
  });

  test("a measured rear journal opens the gate, and a changed reading changes the clearance", () => {
    const text =
      soundSamples.find((sample) => sample.path === "shop/winch.thou")?.text ??
      "";
    const read = text.replace(
      "journal rear on layshaft\n",
      "journal rear on layshaft\n  read near 0.87431 0.87430 with mic-1 at 68 F\n",
    );
    const measured = createProject({ root: "/" });
    for (const sample of soundSamples)
      measured.setFile(
        `/${sample.path}`,
        readLines(sample.path === "shop/winch.thou" ? read : sample.text),
      );
    const after = measured.check("/shop/winch.thou");
    expect(after.findings.map((finding) => finding.code)).not.toContain(
      "cut-unchecked",
    );
    expect(
      after.results.find(
        (result) => result.entry === "step ream" && result.kind === "ready",
      )?.low,
    ).toBe(1);
  });
});
