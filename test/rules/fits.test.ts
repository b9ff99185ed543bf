// What is said of fits, of stacks and of what runs, beyond what the pages' samples show: both sides of each condition. Lengths are worked out by
// hand, in millimetres.
import { describe, expect, test } from "vitest";
import { foundIn, messages, theOne, toldIn } from "./found.ts";

const HEAD = "job winch\n  units mm\n";

describe("a clearance", () => {
  const CODES = ["fit-tight", "fit-loose", "fit-interferes", "fit-unsure"];
  const told = (text: string): readonly string[] =>
    CODES.flatMap((code) => toldIn(text, code));
  const said = (text: string): string =>
    CODES.flatMap((code) => messages(text, code)).join("\n");
  const job = (
    journal: string,
    bore: string,
    want = "",
    head = "",
  ): string => `${HEAD}${head}part shaft
part case
journal a on shaft
  ${journal}
bore a in case
${bore}fit a of journal a in bore a
${want === "" ? "" : `  want ${want}\n`}`;
  const read = (size: string): string => `  read ${size}\n`;
  const cut = (limits: string): string =>
    `  limits ${limits}\nline l\n  bore a from 0 to 1\n  cut to ${limits}\n`;

  test("that is tight and loose at once is told both, and to be trued up before all else", () => {
    const related = [
      "  see 5:9-10: journal a: 20.000 to 20.050 mm, measured",
      "  see 7:6-7: bore a: 20.060 mm, measured",
    ];
    expect(
      told(job("read 20.000 20.050", read("20.060"), "0.020 to 0.040")),
    ).toEqual([
      "9:5-6 error fit-tight of fit a: The clearance is 0.010 to 0.060 mm and 0.020 to 0.040 mm is wanted: it lacks 0.010 mm at the tightest place. It is loose elsewhere: true journal a and bore a up first.",
      ...related,
      "9:5-6 error fit-loose of fit a: The clearance is 0.010 to 0.060 mm and 0.020 to 0.040 mm is wanted: 0.020 mm too much at the loosest place. It is tight elsewhere: true journal a and bore a up first.",
      ...related,
    ]);
    // just as much as is wanted at the other end is not loose, nor tight
    expect(
      said(job("read 20.000 20.050", read("20.060"), "0.020 to 0.060")),
    ).toMatch(
      /^[^\n]*at the tightest place\. Open out bore a, or size journal a down\.$/u,
    );
    expect(
      said(job("read 20.000 20.050", read("20.060"), "0.010 to 0.040")),
    ).toMatch(
      /^[^\n]*at the loosest place\. Make bore a new, or build journal a up\.$/u,
    );
  });

  test("that is foretold is told at what it is sure to lack or to have too much, and cured by the cut", () => {
    expect(
      said(job("read 20.010", cut("20.020 to 20.024"), "0.020 to 0.040")),
    ).toBe(
      "The clearance is foretold at 0.010 to 0.014 mm and 0.020 to 0.040 mm is wanted: it will lack 0.006 mm at least. Cut bore a larger, or size journal a down.",
    );
    expect(
      said(job("read 19.980", cut("20.020 to 20.024"), "0.020 to 0.030")),
    ).toBe(
      "The clearance is foretold at 0.040 to 0.044 mm and 0.020 to 0.030 mm is wanted: it will be 0.010 mm too much at least. Cut bore a smaller, or build journal a up.",
    );
  });

  test("of nothing or less is no clearance, measured at the tightest place and foretold at the best that may come", () => {
    const is = (journal: string, bore: string): string =>
      said(job(journal, bore, "0.020 to 0.030"));
    expect(is("read 20.000", read("20.000"))).toBe(
      "There is no clearance at the tightest place: a running fit needs clearance. Do not force the shaft in.",
    );
    expect(is("read 20.000 20.010", read("20.002"))).toBe(
      "There is an interference of 0.008 mm at the tightest place: a running fit needs clearance. Do not force the shaft in.",
    );
    expect(is("limits 20.030 to 20.040", "  limits 20.020 to 20.030\n")).toBe(
      "There will be no clearance: a running fit needs clearance. Make the bore larger before it is cut, or the journal smaller.",
    );
    expect(is("read 20.030", cut("20.020 to 20.024"))).toBe(
      "There will be an interference of 0.006 mm at least: a running fit needs clearance. Make the bore larger before it is cut, or the journal smaller.",
    );
    // it may still come out with some
    expect(
      is("limits 20.029 to 20.040", "  limits 20.020 to 20.030\n"),
    ).not.toContain("running fit needs");
    expect(is("read 20.000", read("20.001"))).toMatch(
      /^The clearance is 0\.001 mm/u,
    );
  });

  test("is told of none while what is wanted can't be read, or nothing is", () => {
    for (const want of ["", "0.020 too 0.030"])
      expect(said(job("read 20.000", read("20.500"), want))).toBe("");
  });

  test("that a cut may miss either way is not sure, and that of limits waits for readings", () => {
    expect(
      told(job("read 19.960", cut("20.000 to 20.020"), "0.045 to 0.055")),
    ).toEqual([
      "12:5-6 warning fit-unsure of fit a: Whether the clearance is within 0.045 to 0.055 mm is not sure: it is foretold at 0.040 to 0.060 mm, which reaches past that. A test cut in a scrap bush tells how large it comes out.",
      "  see 5:9-10: journal a: 19.960 mm, measured",
      "  see 7:6-7: bore a: 20.000 to 20.020 mm, predicted",
    ]);
    expect(
      said(job("read 19.960", "  limits 20.000 to 20.020\n", "0.045 to 0.055")),
    ).toBe("");
    expect(
      said(job("limits 19.960 to 19.970", read("20.010"), "0.045 to 0.055")),
    ).toBe("");
  });

  test("within the guard of a verdict is not sure, and needs the gauges where they are not named", () => {
    const guarded =
      "  verdict guarded\ngauge g\n  resolution 0.001\n  uncertainty 0.002\n";
    // each √(0.001² + 0.001²/12) = 0.00104, both 0.00147, by 1.645 = 0.0024
    expect(
      messages(
        job(
          "read 20.000 with g",
          read("20.021 with g"),
          "0.020 to 0.040",
          guarded,
        ),
        "fit-unsure",
      ),
    ).toEqual([
      "Whether the clearance is within 0.020 to 0.040 mm is not sure: 0.021 mm does not keep clear of a limit by 0.0024 mm (k = 1.64), as its uncertainty asks (ISO 14253-1). Read both again with surer gauges.",
    ]);
    expect(
      said(
        job(
          "read 20.000 with g",
          read("20.030 with g"),
          "0.020 to 0.040",
          guarded,
        ),
      ),
    ).toBe("");
    expect(
      messages(
        job("read 20.000", read("20.030"), "0.020 to 0.040", guarded),
        "fit-unsure",
      ),
    ).toEqual([
      "Whether the clearance is within 0.020 to 0.040 mm is not sure: the verdict is guarded, and needs the gauge that read bore a, the gauge that read journal a.",
    ]);
  });
});

describe("an end float", () => {
  const stack = (
    plus: string,
    more = "",
    want = "0.10 to 0.20",
  ): string => `job float
  units mm
stack s
${want === "" ? "" : `  want ${want}\n`}  plus w ${plus}
  minus s 10.00
${more}`;
  const said = (...of: Parameters<typeof stack>): readonly string[] => [
    ...toldIn(stack(...of), "float-off"),
    ...toldIn(stack(...of), "shim-none"),
  ];

  test("that is too large is brought in by shims of what it has too much, and is none where those at hand do", () => {
    expect(said("10.50")).toEqual([
      "3:7-8 error float-off of stack s: The end float is 0.500 mm, and 0.100 to 0.200 mm is wanted: shims of 0.300 to 0.400 mm bring it in.",
    ]);
    expect(said("10.50", "  shims 0.10, 0.20, 0.35\n")).toEqual([]);
    // 0.15 to 0.25 of which at its most 0.05 has to go, and at its least no more may
    expect(said("10.15 to 10.25")).toEqual([
      "3:7-8 warning float-off of stack s: The end float may be anything of 0.150 to 0.250 mm, and 0.100 to 0.200 mm is wanted: shims of 0.050 mm bring it in.",
    ]);
    expect(said("10.16 to 10.21")).toEqual([
      "3:7-8 warning float-off of stack s: The end float may be anything of 0.160 to 0.210 mm, and 0.100 to 0.200 mm is wanted: shims of 0.010 to 0.060 mm bring it in.",
    ]);
  });

  test("that is too small has metal taken off, at the least to where it touches what is wanted", () => {
    expect(said("10.05")).toEqual([
      "3:7-8 error float-off of stack s: The end float is 0.050 mm, and 0.100 to 0.200 mm is wanted: take 0.050 to 0.150 mm off what closes it.",
    ]);
    expect(said("10.05 to 10.10")).toEqual([
      "3:7-8 warning float-off of stack s: The end float may be anything of 0.050 to 0.100 mm, and 0.100 to 0.200 mm is wanted: take 0.050 to 0.100 mm off what closes it.",
    ]);
  });

  test("that varies by more than is wanted has its members read", () => {
    expect(said("10.00 to 10.25")).toEqual([
      "3:7-8 warning float-off of stack s: The end float may be anything of 0.000 to 0.250 mm, and 0.100 to 0.200 mm is wanted: read its members, or narrow their limits.",
    ]);
  });

  test("that no pack of the shims at hand brings in says why", () => {
    const why = (...of: Parameters<typeof stack>): string =>
      theOne(stack(...of), "shim-none").message;
    const shims = (sizes: string): string => `  shims ${sizes}\n`;
    expect(said("10.50", shims("0.01, 0.02")).slice(1)).toEqual([
      "7:3-19 warning shim-none of stack s: No pack of these shims brings the end float 0.500 mm to the 0.100 to 0.200 mm that is wanted: a pack of 0.300 to 0.400 mm would, and these don't make one of six or fewer.",
    ]);
    // as wide as what is wanted, so that one pack would do
    expect(why("10.15 to 10.25", shims("0.30, 0.40"))).toContain(
      ": a pack of 0.050 mm would,",
    );
    expect(why("10.25", shims("0.30, 0.40"))).toContain(
      ": a pack of 0.050 to 0.150 mm would,",
    );
    expect(why("10.30 to 10.50", shims("0.10, 0.20"))).toMatch(
      /0\.300 to 0\.500 mm .*: it varies by more than is wanted, and shims don't narrow it: read the members\.$/u,
    );
    expect(why("10.05", shims("0.10, 0.20"))).toMatch(
      /: it is too small already, and shims make it smaller\.$/u,
    );
  });

  test("is told nothing of without a want, or with one that can't be read", () => {
    for (const want of ["", "0.10 too 0.20"])
      expect(said("10.50", "  shims 0.01\n", want)).toEqual([]);
  });

  // 100 · (20 − 10)·10⁻⁶ is 0.001 a degree
  const warm = (plus: string, more: string): string => `job float
  units mm
material a
  expansion 10 um/m-K
material b
  expansion 20 um/m-K
part shaft
  material a
part case
  material b
stack s
  plus w ${plus} of case
  minus s 100.00 of shaft
${more}`;

  test("that is gone cold or hot is an error where it is sure to be, and a warning where it may be", () => {
    const cold =
      "  cold shaft -80 C, case -80 C\n  cold shaft -79 C, case -79 C\n";
    expect(
      toldIn(
        warm("100.10", `${cold}  hot shaft 120 C, case 20 C\n`),
        "float-off",
      ),
    ).toEqual([
      "14:3-31 error float-off of stack s: No end float is left when cold: 0.000 mm, and the stack binds. Leave more of it at 20 °C.",
      "16:3-29 error float-off of stack s: No end float is left when hot: 0.000 mm, and the stack binds. Leave more of it at 20 °C.",
    ]);
    expect(toldIn(warm("100.10 to 100.14", cold), "float-off")).toEqual([
      "14:3-31 warning float-off of stack s: The end float may be gone when cold: 0.000 to 0.040 mm, and the stack binds. Leave more of it at 20 °C.",
    ]);
  });

  test("is told of with the shims that are to be put in", () => {
    expect(
      messages(
        warm(
          "100.30",
          "  want 0.10 to 0.20\n  shims 0.15\n  hot shaft 70 C, case 20 C\n  hot shaft 170 C, case 20 C\n",
        ),
        "float-off",
      ),
    ).toEqual([
      // 0.30 − 0.15, and 100 · 10·10⁻⁶ · 150 of it
      "No end float is left when hot with 0.150 mm of shims: 0.000 mm, and the stack binds. Leave more of it at 20 °C.",
    ]);
  });
});

describe("a fit that runs", () => {
  const job = (
    fit: string,
    { figures = "", length = "  length 20\n", head = "" } = {},
  ): string => `${HEAD}${head}material own
  expansion 10 um/m-K
${figures}part shaft
part case
  material own
journal b on shaft
  read 20.000
${length}bore b in case
  read 20.040
fit b of journal b in bore b
${fit}`;
  const FIGURES = "  specific-load 2 MPa\n  pv 1 MPa-m/s\n  speed 1 m/s\n";
  const told = (...of: Parameters<typeof job>): readonly string[] =>
    ["speed-over", "load-over", "pv-over"].flatMap((code) =>
      toldIn(job(...of), code),
    );
  const RUNS = "  load 1000 N\n  runs 1000 rpm\n";

  test("is held against what its material bears, at the line that says it, and at its name where two do", () => {
    // π · 0.020 · 1000 / 60; 1000 / 20²; both together
    expect(told(RUNS, { figures: FIGURES })).toEqual([
      "18:3-16 error speed-over of fit b: The surface speed is 1.05 m/s, over the 1.00 m/s that own bears: take a material that bears more, or run slower.",
      "  see 9:6-10: part case, which bears it",
      "17:3-14 error load-over of fit b: The specific load is 2.50 MPa, over the 2.00 MPa that own bears: take a longer bearing, a stronger material, or less load.",
      "  see 9:6-10: part case, which bears it",
      "16:5-6 error pv-over of fit b: PV is 2.62 MPa-m/s, over the 1.00 MPa-m/s that own bears: take a material that bears more, a longer bearing, or less load or speed.",
      "  see 9:6-10: part case, which bears it",
    ]);
  });

  test("that swings is told at its `oscillates`", () => {
    const [speed] = toldIn(
      job("  load 1000 N\n  oscillates 180 deg, 1000 per min\n", {
        figures: FIGURES,
      }),
      "speed-over",
    );
    expect(speed).toMatch(
      /^18:3-\d+ error speed-over of fit b: The surface speed is /u,
    );
  });

  test("is told nothing of without a figure or a length to hold it by, nor while it stands", () => {
    expect(told(RUNS)).toEqual([]);
    expect(
      told("  load 1000 N\n", { figures: FIGURES }).filter((line) =>
        line.includes("speed-over"),
      ),
    ).toEqual([]);
    expect(told("", { figures: FIGURES })).toEqual([]);
    expect(
      told(RUNS, { figures: FIGURES, length: "" }).filter((line) =>
        line.includes("load-over"),
      ),
    ).toEqual([]);
  });

  test("is held against the job's own limit in place of the material's", () => {
    expect(
      messages(
        job(RUNS, { head: "  warn speed-over at 1.04 m/s\n" }),
        "speed-over",
      ),
    ).toEqual([
      "The surface speed is 1.05 m/s, over the 1.04 m/s that this job allows: take a material that bears more, or run slower.",
    ]);
    expect(
      foundIn(
        job(RUNS, {
          head: "  warn speed-over at 1.05 m/s\n",
          figures: FIGURES,
        }),
        "speed-over",
      ),
    ).toEqual([]);
  });
});

describe("a size of a fit in the other unit", () => {
  const fit = (journal: string, bore: string): readonly string[] =>
    ["fit-loose", "fit-interferes"].flatMap((code) =>
      messages(
        `${HEAD}part shaft\npart case\njournal a on shaft\n  limits ${journal}\nbore a in case\n  limits ${bore}\nline l\n  bore a from 0 to 1\n  cut to ${bore}\nfit a of journal a in bore a\n  want 0.02 to 0.05\n`,
        code,
      ),
    );

  test("is told to look like that, and no metal is to go for it", () => {
    for (const [journal, bore] of [
      ["0.9835 to 0.9840", "25.01 to 25.02"],
      ["24.98 to 24.99", "0.9845 to 0.9850"],
    ] as const) {
      const said = fit(journal, bore);
      expect(said.length).toBe(1);
      expect(said[0]).toContain("as if one of the two were in the other unit");
      expect(said[0]).toMatch(/Look at both sizes before any metal goes\.$/u);
    }
    expect(fit("24.98 to 24.99", "25.41 to 25.42")[0]).not.toContain("as if");
  });
});
