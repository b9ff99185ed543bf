// Bores in line from text to results and findings: cases whose best shaft is plain by symmetry, worked out here.
import { describe, expect, test } from "vitest";
import { checkText, resultOf } from "./check-text.ts";

/** Three bores of 20 in a row, the middle one off by so much, over journals with so much clearance; all in mm. */
function job(
  off: number,
  options: {
    readonly runout?: string;
    readonly want?: string;
    readonly centres?: boolean;
    readonly units?: "inch";
  } = {},
): string {
  const {
    runout = "",
    want = "0.010 to 0.080",
    centres = true,
    units,
  } = options;
  const l = (mm: number): string =>
    units === "inch" ? (mm / 25.4).toFixed(9) : mm.toFixed(6);
  const names = ["top", "middle", "bottom"];
  const bore = (name: string): string => `journal ${name} on shaft
  limits ${l(24.96)} to ${l(24.96)}
${runout}bore ${name} in case
  limits ${l(25)} to ${l(25)}
fit ${name} of journal ${name} in bore ${name}
  want ${want}
`;
  const at = (y: number): string => (centres ? ` centre 0, ${l(y)}` : "");
  return `
job winch-9
  units ${units ?? "mm"}
part shaft
part case
${names.map(bore).join("")}
line capstan
  bore top from 0 to ${l(20)}${at(0)}
  bore middle from ${l(100)} to ${l(120)}${at(off)}
  bore bottom from ${l(200)} to ${l(220)}${at(0)}
`;
}

const effective = (text: string, of: string): number =>
  Number(
    resultOf(checkText(text), "line capstan", "effective-clearance", { of })
      ?.nominal,
  ) * 1000;

describe("effective clearance", () => {
  test.each([0, 0.01, 0.03])(
    "of three bores whose middle is off by %f: the shaft lies half way",
    (off) => {
      for (const name of ["top", "middle", "bottom"])
        expect(effective(job(off), `bore ${name}`)).toBeCloseTo(0.04 - off, 7);
    },
  );

  test("run-out comes off once", () => {
    expect(
      effective(job(0.01, { runout: "  runout 0.004\n" }), "bore middle"),
    ).toBeCloseTo(0.026, 7);
  });

  test("inch and metric twins are one", () => {
    expect(
      effective(
        job(0.01, { units: "inch", want: "0.0004 to 0.0030" }),
        "bore top",
      ),
    ).toBeCloseTo(effective(job(0.01), "bore top"), 6);
  });

  test("needs the centres of every bore, named", () => {
    const found = resultOf(
      checkText(job(0, { centres: false })),
      "line capstan",
      "effective-clearance",
      { of: "bore top" },
    );
    expect(found?.status).toBe("unknown");
    expect(found?.needs.map((each) => `${each.ref} ${each.fact}`)).toEqual([
      "line capstan bore",
      "line capstan bore",
      "line capstan bore",
    ]);
  });

  test("a shaft turned about the line's datum is as straight", () => {
    const tilted = job(0).replace(
      /bore (\w+) from ([\d.]+) to ([\d.]+) centre 0, 0.000000/g,
      (_, name: string, from: string, to: string) =>
        `bore ${name} from ${from} to ${to} centre 0, ${(Number(from) * 1e-4).toFixed(6)} to 0, ${(Number(to) * 1e-4).toFixed(6)}`,
    );
    expect(tilted).toContain("0.020000");
    for (const name of ["top", "middle", "bottom"])
      expect(effective(tilted, `bore ${name}`)).toBeCloseTo(0.04, 6);
  });
});

describe("line-crooked", () => {
  const crooked = (text: string): readonly string[] =>
    checkText(text)
      .findings.filter((each) => each.code === "line-crooked")
      .map((each) => `${each.level} ${each.message}`);

  test("what leaves less than is wanted is a warning at each bore, and what stops the shaft an error at one", () => {
    expect(crooked(job(0.029))).toEqual([]);
    expect(crooked(job(0.031))).toHaveLength(3);
    expect(
      crooked(job(0.031)).every((each) => each.startsWith("warning ")),
    ).toBe(true);
    const [stopped, ...others] = crooked(job(0.05));
    expect(others).toEqual([]);
    // with the shaft at its best in the outer two, the middle lacks 2 · 0.05 − 0.04
    expect(stopped).toMatch(
      /^error A straight shaft does not go through: bore middle stops it by 0\.0600* mm/,
    );
  });

  test("a concession holds the clearance that is left", () => {
    const signed = (bound: string): readonly string[] =>
      checkText(
        `${job(0.031)}concession bent\n  allows line-crooked on line capstan\n  up to ${bound}\n  why "turns free by hand" by AK on 2026-11-20\n`,
      )
        .findings.map(({ level, code }) => `${level} ${code}`)
        .filter((each) => /crooked|concession/.test(each));
    expect(new Set(signed("0.008"))).toEqual(
      new Set(["information line-crooked"]),
    );
    expect(signed("0.0095")).toContain("error concession-spent");
  });
});
