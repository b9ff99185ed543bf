// What hover says over numbers and units: the same in the other system, and what a reading is at 20 °C.
import { describe, expect, test } from "vitest";
import { said, job } from "./hover-said.ts";

describe("numbers and units", () => {
  // 1 in = 25.4 mm, 1 lbf = 4.4482216152605 N, °C = (°F − 32)/1.8, 1 psi = 1 lbf/in²: exact by definition
  test.each([
    ["inch", "length 1.25|0", "1.250 in (the file's unit) = 31.75 mm"],
    [
      "inch",
      "limits 0.87|43 to 0.8745",
      "0.8743 in (the file's unit) = 22.207 mm",
    ],
    [
      "inch",
      "limits 0.8740 to 0.87|432",
      "0.87432 in (the file's unit) = 22.2077 mm",
    ],
    ["inch", "limits 7/|8 to 1", "7/8 in (the file's unit) = 22.225 mm"],
    ["mm", "limits 25.|40 to 25.41", "25.40 mm (the file's unit) = 1.0000 in"],
    ["mm", "limits 0.|6 to 1.2 thou", "0.6 thou = 15 um"],
    ["mm", "limits 1.1875 in +/- 3| tenths", "3 tenths = 8 um"],
    ["inch", "finish 16| uin Ra", "16 uin = 0.41 um"],
    [
      "inch",
      "read 0.8742 0.87|43 at 68 F",
      "0.8743 in (the file's unit) = 22.207 mm",
    ],
    ["inch", "read 0.8742 at 6|8 F", "68 F = 20 C"],
  ])("%s: %s", (units, line, expected) => {
    expect(
      said(`job j\n  units ${units}\njournal a on b\n  ${line}\n`),
    ).toContain(expected);
  });

  test.each([
    ["fit a of b in c\n  load 18|0 lbf\n", "180 lbf = 800 N"],
    ["fit a of b in c\n  runs 24|0 rpm\n", "240 rpm = 4.00 turns a second"],
    ["fit a of b in c\n  hot shaft -4|0 F\n", "-40 F = -40 C"],
    ["part a\n  bolts 1|8 lbf-ft\n", "18 lbf-ft = 24 N-m"],
    ["material a\n  modulus 14.5|e6 psi\n", "14.5e6 psi = 100000 MPa"],
    ["material a\n  expansion 18.|0 um/m-K\n", "18.0 um/m-K = 10.0 uin/in-F"],
    ["part a\n  bolts 18 lbf|-ft\n", "1 lbf-ft = 1.35582 N-m"],
    ["part a\n  joint gasket 4 th|ou\n", "1 thou = 25.4 um"],
    [
      "fit a of b in c\n  hot shaft 140 |F\n",
      "degree Fahrenheit; a unit of temperature",
    ],
  ])("%s", (marked, expected) => {
    expect(said(marked)).toContain(expected);
  });

  test("a bare length in a file without a unit says nothing", () => {
    expect(said("journal a on b\n  length 1.2|5\n")).toBe("");
  });

  test("a reading away from 20 °C: what it is there, and why", () => {
    // 0.87432 · (12.3 − 11.5)e-6/K · 4 °F/1.8 = 0.0000016 in off
    const found = said(job("read near 0.87|432"));
    expect(found).toContain(
      "At 20 °C: 0.87432 in (read at 72 °F, material steel-4140 grows 12.3 um/m-K (shipped value), the steel of the gauge 11.5)",
    );
    expect(said(job("read far  0.87|435".replace("  ", " ")))).not.toContain(
      "At 20 °C",
    );
  });

  test("a gauge that reads many: the narrowest tolerances first, and how many more", () => {
    // ratio T/(2U): 0.00040/(2 · 0.00004) = 5 at the narrowest, 0.00051/(2 · 0.00004) = 6.375 at the twelfth
    const widths = [7, 3, 11, 0, 14, 5, 9, 1, 13, 4, 8, 2, 12, 6, 10];
    const features = widths.map(
      (width) =>
        `journal j${String(width)} on a\n  limits 0.80000 to ${(0.8004 + width / 1e5).toFixed(5)}\n  read 0.8002 with g at 68 F\n`,
    );
    const text = `job j\n  units inch\ngauge |g\n  uncertainty 0.00004\npart a\n${features.join("")}`;
    const rows = said(text)
      .split("\n")
      .filter((line) => line.startsWith("| tolerance to uncertainty"));
    expect(rows.map((line) => /journal j(\d+)/u.exec(line)?.[1])).toEqual(
      Array.from({ length: 12 }, (_, index) => String(index)),
    );
    expect(rows[0]).toContain("| 5.0, good |");
    expect(rows[11]).toContain("| 6.4, good |");
    expect(said(text)).toContain("and 3 more, none of a narrower tolerance.");
    // what is shown of many is what is shown of them where they are few
    const few = said(text.replace(features.slice(0, 3).join(""), ""));
    expect(few).not.toContain("more, none of");
    for (const line of rows.filter((each) => !/ j(?:7|3|11),? /u.test(each)))
      expect(few.split("\n")).toContain(line);
  });

  test("a gauge's correction, and a need where the growth can't be known", () => {
    expect(
      said(
        "job j\n  units mm\ngauge g\n  adds -0.01\njournal a on b\n  read 25.0|00 with g at 20 C\npart b\n",
      ),
    ).toContain("At 20 °C: 24.990 mm (gauge g adds -0.01");
    expect(
      said(
        "job j\n  units mm\npart b\njournal a on b\n  read 25.0|00 at 30 C\n",
      ),
    ).toContain("At 20 °C: needs the material of part b");
  });
});
