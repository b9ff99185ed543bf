// A bore that no line cuts, and one before it is cut: foretold from the press of its bush, or as it was read.
import { describe, expect, test } from "vitest";
import { readLines } from "../../grammar/lines.ts";
import { boreBeforeCut } from "../../server/model/evaluate/before-cut.ts";
import { createProject } from "../../server/rules/check.ts";
import { checkText, resultOf } from "./check-text.ts";
import { INCH } from "./press-job.ts";

const IN = 0.0254;

describe("the bore that no line cuts", () => {
  test("is foretold from its press, and its limits stand back", () => {
    for (const text of [
      INCH,
      INCH.replace(
        "bore front in bush front\n",
        "bore front in bush front\n  limits 0.8750 to 0.8760\n",
      ),
    ]) {
      const check = checkText(text);
      const bore = resultOf(check, "bore front", "size");
      const pressed = resultOf(check, "press front", "bore-after-press");
      expect([bore?.low, bore?.nominal, bore?.high]).toEqual([
        pressed?.low,
        pressed?.nominal,
        pressed?.high,
      ]);
    }
  });

  test("counts as read once it is read as pressed", () => {
    const check = checkText(
      INCH.replace(
        "bore front in bush front\n",
        "bore front in bush front\n  read 0.8712 0.8713 as pressed\n",
      ),
    );
    const bore = resultOf(check, "bore front", "size");
    expect(bore?.status).toBe("measured");
    expect(bore?.low).toBeCloseTo(0.8712 * IN, 12);
  });

  test("before a cut: roughed, else pressed, else foretold; a bore in a part by its hole", () => {
    const of = (text: string, bore: string): unknown => {
      const project = createProject({ root: "" });
      project.setFile("job.thou", readLines(text));
      project.check("job.thou");
      const open = project.open("job.thou");
      if (open === undefined) throw new Error("no job");
      const found = boreBeforeCut(open.shop, bore);
      return found.known
        ? [found.value.from, Math.round((found.value.nominal / IN) * 1e6)]
        : found.needs.map((need) => need.text);
    };
    const reads = (...lines: readonly string[]): string =>
      INCH.replace(
        "bore front in bush front\n",
        `bore front in bush front\n${lines.map((line) => `  read ${line}\n`).join("")}`,
      );
    expect(
      of(reads("0.8710 as pressed", "0.8740 as roughed"), "bore front"),
    ).toEqual(["readings", 874000]);
    expect(of(reads("0.8710 as pressed"), "bore front")).toEqual([
      "readings",
      871000,
    ]);
    expect(of(INCH, "bore front")).toEqual(["press", expect.any(Number)]);
    const plain =
      "job winch-9\n  units inch\npart case\nhole rear in case\n  read 0.8600\nbore rear in case\n";
    expect(of(plain, "bore rear")).toEqual(["readings", 860000]);
    expect(of(plain.replace("  read 0.8600\n", ""), "bore rear")).toEqual([
      "a reading of bore rear as roughed",
    ]);
  });
});
