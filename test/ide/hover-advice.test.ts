// Advice over a fit and a line, which nobody has to take.
import { describe, expect, test } from "vitest";
import { hover, said, job, row } from "./hover-said.ts";

describe("advice, which nobody has to take", () => {
  const RUNNING = `job winch-9
  units mm
part shaft
part case
journal one on shaft
  length 25
  limits 24.98 to 24.98
bore one in case
  length 25
fit one of journal one in bore one
  RUNS
  wa|nt 0.02 to 0.05
`;

  test("over a fit's `want`: classes, the shop rule, and what the film still needs", () => {
    const markdown = said(RUNNING.replace("RUNS", "runs 600 rpm"));
    // H7/f7 at 25 mm: +21 and 0 over -20 and -41 µm (ISO 286-2)
    expect(row(markdown, "H7/f7")).toEqual([
      "H7/f7",
      "0.020 to 0.062 mm",
      "ISO 286-2\\:2010",
    ]);
    // a thousandth of 24.98 mm
    expect(row(markdown, "one thou an inch of diameter, 1 in 1000")[1]).toBe(
      "0.025 mm",
    );
    // 0.8·(π·0.02498·10)^¼ ‰ of 24.98 mm
    expect(
      row(
        markdown,
        "0.8 per mille times the fourth root of the speed in m/s",
      )[1],
    ).toBe("0.019 mm");
    expect(markdown).not.toContain("RC4");
    expect(markdown).toMatch(/The film's own range needs .*oil of fit one/);
  });

  test("over a fit that wants nothing yet it stands below what is known", () => {
    const markdown = said(
      RUNNING.replace("  wa|nt 0.02 to 0.05\n", "")
        .replace("RUNS", "runs 600 rpm")
        .replace("fit one", "f|it one"),
    );
    expect(markdown.indexOf("| clearance (diametral)")).toBeLessThan(
      markdown.indexOf("What may be wanted here"),
    );
    expect(markdown.indexOf("| clearance (diametral)")).toBeGreaterThan(0);
  });

  test("an inch job is told the inch classes", () => {
    const markdown = said(
      RUNNING.replace("RUNS", "runs 600 rpm")
        .replace("units mm", "units inch")
        .replace("24.98 to 24.98", "0.984 to 0.984")
        .replace("length 25\n  limits", "length 1\n  limits"),
    );
    // RC4 from 0.71 to 1.19 in: 0.8 to 2.8 thou (ANSI B4.1, table of running fits)
    expect(row(markdown, "RC4")[1]).toBe("0.0008 to 0.0028 in");
    expect(row(markdown, "H7/f7")).toEqual([]);
  });

  test("where the film cannot be full, it says why", () => {
    expect(
      said(
        RUNNING.replace(
          "RUNS",
          "runs 600 rpm\n  load 600 N steady\n  oil iso-vg-68 at 40 C\n  feed drip",
        ),
      ),
    ).toContain("No range of the film: drip does not keep the gap filled");
  });

  test("over a line: how fast to ream, by hand as turns", () => {
    const { markdown } = hover(job("li|ne layshaft"));
    expect(markdown).toContain("How fast to ream (advice;");
    // common practice: 10 to 30 turns a minute
    expect(markdown).toContain("10 to 30 rpm");
  });
});
