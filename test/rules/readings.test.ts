// What is said of readings, beyond what the pages' samples show: form and limits, both sides of each condition. Lengths are worked out by hand,
// in inches.
import { describe, expect, test } from "vitest";
import { foundIn, messages, theOne, toldIn } from "./found.ts";

const HEAD = `job winch
  units inch
`;
const feature = (kind: string, name: string, facts: string): string =>
  `${kind} ${name} ${kind === "journal" ? "on shaft" : "in case"}\n${facts}`;
const job = (text: string, head = ""): string =>
  `${HEAD}${head}part shaft\npart case\n${text}`;

describe("form", () => {
  const ROUND = "out-of-round";
  const read = (values: string, facts = ""): string =>
    job(feature("journal", "a", `${facts}  read ${values}\n`));

  test("against a tolerance warns past the half of it and hints past the quarter", () => {
    const of = (values: string): readonly string[] =>
      toldIn(read(values, "  limits 0.8740 to 0.8748\n"), ROUND);
    // 0.0002 is a quarter and 0.0004 a half of 0.0008
    expect(of("0.8741 0.8743")).toEqual([]);
    expect(of("0.87410 0.87431")).toEqual([
      "7:8-23 hint out-of-round of journal a: Out of round by 0.00021 in: 26 % of the tolerance 0.0008 in. From 25 % on it is worth reading again, at more angles.",
    ]);
    expect(of("0.8741 0.8745")[0]).toContain(" hint ");
    expect(of("0.87410 0.87451")).toEqual([
      "7:8-23 warning out-of-round of journal a: Out of round by 0.00041 in: 51 % of the tolerance 0.0008 in, and 50 % is the most to let pass. True it up before its mate is fitted.",
    ]);
    // one size to keep leaves no share of nothing
    expect(
      toldIn(read("0.8740 0.8741", "  limits 0.8740 to 0.8740\n"), ROUND),
    ).toEqual([]);
  });

  test("against the job's own share warns past that and hints past the half of it, whatever the clearance", () => {
    const of = (
      values: string,
      facts = "  limits 0.8740 to 0.8750\n",
    ): readonly string[] =>
      toldIn(
        `${read(values, facts).replace("part shaft", "  warn out-of-round at 40 %\npart shaft")}bore a in case
  read 0.8745
fit a of journal a in bore a
`,
        ROUND,
      );
    expect(of("0.8740 0.8742")).toEqual([]);
    expect(of("0.87400 0.87421")).toEqual([
      "8:8-23 hint out-of-round of journal a: Out of round by 0.00021 in: 21 % of the tolerance 0.0010 in. From 20 % on it is worth reading again, at more angles.",
    ]);
    expect(of("0.87400 0.87441")).toEqual([
      "8:8-23 warning out-of-round of journal a: Out of round by 0.00041 in: 41 % of the tolerance 0.0010 in, and 40 % is the most to let pass. True it up before its mate is fitted.",
    ]);
    // a share of a tolerance that is not there
    expect(of("0.8740 0.8744", "")).toEqual([]);
  });

  test("against clearances warns past a quarter of the least that there is, and names its fit", () => {
    const fits = (...bores: readonly string[]): string =>
      `${read("0.8740 0.8744")}${bores.map((size, at) => `${feature("bore", `b${String(at)}`, `  read ${size}\n`)}fit f${String(at)} of journal a in bore b${String(at)}\n`).join("")}`;
    // 0.0016 has a quarter of 0.0004, 0.0010 one of 0.00025; what has none or less counts for nothing
    expect(toldIn(fits("0.8764", "0.8754", "0.8760"), ROUND)).toEqual([
      "6:8-21 warning out-of-round of journal a: Out of round by 0.0004 in: more than a quarter of the least clearance 0.0010 in of fit f1. True it up before its mate is fitted.",
      "  see 12:5-7: fit f1",
    ]);
    expect(toldIn(fits("0.8760"), ROUND)).toEqual([]);
    expect(toldIn(fits("0.8744", "0.8740"), ROUND)).toEqual([]);
    expect(toldIn(fits("0.8744", "0.8759"), ROUND)[1]).toContain("fit f1");
  });

  test("of a bore is held against its fits as well, at the place that is worst, and of a hole against none", () => {
    const bore =
      job(`${feature("journal", "a", "  read 0.8740\n")}${feature("bore", "a", "  read near 0.8744 0.8745\n  read far 0.8744 0.8748\n")}fit a of journal a in bore a
${feature("hole", "a", "  read near 0.8744 0.8745\n  read far 0.8744 0.8748\n")}`);
    expect(toldIn(bore, ROUND)).toEqual([
      "9:12-25 warning out-of-round of bore a: Out of round by 0.0004 in at far: more than a quarter of the least clearance 0.0004 in of fit a. True it up before its mate is fitted.",
      "  see 10:5-6: fit a",
    ]);
    // by means: 0.87460 of the far, 0.87445 of the near
    expect(toldIn(bore, "taper")[0]).toMatch(
      /^9:12-25 warning taper of bore a: The taper is 0\.0002 in, larger at far than at near: more than a quarter of the least clearance 0\.0004 in of fit a\. /u,
    );
  });

  test("a taper is of the places that are named, whatever stands beside them", () => {
    const ends = ["  read near 0.8743\n", "  read far 0.8740\n"];
    const told = (...lines: readonly string[]) =>
      foundIn(
        job(
          feature(
            "journal",
            "a",
            `  limits 0.8740 to 0.8745\n${lines.join("")}`,
          ),
        ),
        "taper",
      );
    const [alone] = told(...ends);
    expect(alone?.message).toContain("larger at near than at far");
    for (const at of [0, 1, 2]) {
      const lines = ends.toSpliced(at, 0, "  read 0.8742\n");
      const [found, other] = told(...lines);
      expect(other).toBeUndefined();
      expect(found?.message).toBe(alone?.message);
      expect(lines[(found?.place.line ?? 0) - 6]).toBe(ends[0]);
    }
  });

  test("that is no more than the last digit of the readings is to be read again, and nothing is trued up for it", () => {
    const of = (places: string): string =>
      job(feature("journal", "a", `  limits 0.8740 to 0.8741\n${places}`));
    const finer =
      "That is no more than one step of its readings: read it with a finer gauge before it is trued up.";
    expect(toldIn(of("  read 0.8740 0.8741\n"), ROUND)).toEqual([
      `7:8-21 warning out-of-round of journal a: Out of round by 0.0001 in: 100 % of the tolerance 0.0001 in, and 50 % is the most to let pass. ${finer}`,
    ]);
    expect(toldIn(of("  round 0\n  read 0.8740 0.8741\n"), ROUND)[0]).toContain(
      `, and 0.0000 in is allowed. ${finer}`,
    );
    expect(
      toldIn(of("  read near 0.8741\n  read far 0.8740\n"), "taper")[0],
    ).toContain(`let pass. ${finer}`);
    expect(toldIn(of("  read 0.87400 0.87410\n"), ROUND)[0]).toContain(
      "let pass. True it up",
    );
  });

  test("is told nothing of while what is allowed can't be read", () => {
    const text = (allowed: string): string =>
      job(
        feature(
          "journal",
          "a",
          `  limits 0.8740 to 0.8744\n  round ${allowed}\n  taper ${allowed}\n  read near 0.8740 0.8743\n  read far 0.8741 0.8744\n`,
        ),
      );
    expect(toldIn(text("0.0x"), ROUND)).toEqual([]);
    expect(toldIn(text("0.0x"), "taper")).toEqual([]);
    expect(toldIn(text("0.0003"), ROUND)).toEqual([]);
    expect(toldIn(text("0.0002"), ROUND)).toEqual([
      "9:13-26 warning out-of-round of journal a: Out of round by 0.0003 in at near, and 0.0002 in is allowed. True it up before its mate is fitted.",
      "  see 7:3-15: allowed here",
    ]);
  });
});

describe("a reading past its limits", () => {
  const CODE = "reading-off-limits";

  test("is held against limits that are not shown rounded", () => {
    // ANSI B4.1, RC 1 at 0.875 in: shaft −0.00030 to −0.00055
    const text = job(
      feature("journal", "a", "  limits 0.875 in RC1\n  read 0.87443\n"),
    );
    expect(toldIn(text, CODE)[0]).toContain(
      "0.87443 in is 0.00002 in under the limits 0.87445 to 0.87470 in.",
    );
  });

  test("is worn where it may run on, wrong the other way, and past its service limit is that finding's", () => {
    const both = (text: string): readonly string[] => [
      ...toldIn(text, CODE),
      ...toldIn(text, "worn"),
    ];
    const limits = (range: string, service: string): string =>
      `  limits ${range}\n  service-limit ${service}\n`;
    expect(
      both(
        job(
          feature(
            "journal",
            "b",
            `${limits("0.8740 to 0.8745", "0.8735")}  read near 0.8737 0.8734\n  read far 0.8746\n`,
          ),
        ),
      ),
    ).toEqual([
      "8:13-19 information reading-off-limits of journal b: 0.8737 in at near is 0.0003 in under the limits 0.8740 to 0.8745 in, as it wears; its service limit is 0.8735 in.",
      "  see 6:3-26: limits of journal b: 0.8740 to 0.8745 in",
      "9:12-18 error reading-off-limits of journal b: 0.8746 in at far is 0.0001 in over the limits 0.8740 to 0.8745 in. There is metal to take off: size it down.",
      "  see 6:3-26: limits of journal b: 0.8740 to 0.8745 in",
      "8:20-26 error worn of journal b: 0.8734 in at near is worn 0.0001 in past the service limit 0.8735 in. Build it up, sleeve it, or replace it.",
      "  see 7:3-23: service limit of journal b",
    ]);
    expect(
      both(
        job(
          feature(
            "bore",
            "c",
            `${limits("0.8750 to 0.8755", "0.8765")}  read 0.8757 0.8766\n  read 0.8749\n`,
          ),
        ),
      ),
    ).toEqual([
      "8:8-14 information reading-off-limits of bore c: 0.8757 in is 0.0002 in over the limits 0.8750 to 0.8755 in, as it wears; its service limit is 0.8765 in.",
      "  see 6:3-26: limits of bore c: 0.8750 to 0.8755 in",
      "9:8-14 error reading-off-limits of bore c: 0.8749 in is 0.0001 in under the limits 0.8750 to 0.8755 in. There is metal to take off: open it out.",
      "  see 6:3-26: limits of bore c: 0.8750 to 0.8755 in",
      "8:15-21 error worn of bore c: 0.8766 in is worn 0.0001 in past the service limit 0.8765 in. Bush it, or fit a new bush.",
      "  see 7:3-23: service limit of bore c",
    ]);
  });

  test("is cured by the kind that it is, says where its limits are from, and that it was brought to 20 °C", () => {
    const told = (kind: string, value: string, source = ""): string =>
      messages(
        job(
          feature(
            kind,
            "d",
            `  limits 1.0000 to 1.0005${source}\n  read ${value}\n`,
          ),
        ),
        CODE,
      ).join("\n");
    expect(told("hole", "1.0006", ' from "DWG 7"')).toBe(
      "1.0006 in is 0.0001 in over the limits 1.0000 to 1.0005 in (DWG 7). Sleeve it, or make the bush to suit.",
    );
    expect(told("bore", "1.0006")).toMatch(
      / Fit a new bush, or have the larger size allowed\.$/u,
    );
    expect(told("journal", "0.9999")).toMatch(
      / Build it up, or have the smaller size allowed\.$/u,
    );
    expect(told("journal", "1.0006")).toMatch(/ size it down\.$/u);
    expect(told("hole", "0.9999")).toMatch(/ open it out\.$/u);
    expect(told("hole", "1.0000 1.0005")).toBe("");
    // a part that grows 10·10⁻⁶ a degree more than the gauge beside it, 50 °C over: 1.0010 is 1.0005 at 20 °C, and 1.0020 is 1.0015
    const warm = `material own\n  expansion 21.5 um/m-K\npart case\n  material own\n${feature("hole", "d", "  limits 1.0000 to 1.0005\n  read 1.0020 at 70 C\n")}`;
    expect(messages(HEAD + warm, CODE).join("\n")).toMatch(
      /^1\.0015\d* in, brought to 20 °C, is 0\.0010\d* in over the limits/u,
    );
  });

  test("is not sure within the guard that a verdict asks for, and needs a gauge where none is named", () => {
    const guarded = (read: string): string =>
      job(
        feature("journal", "a", `  limits 0.8740 to 0.8745\n  read ${read}\n`),
        "  verdict guarded\ngauge mic-1\n  resolution 0.0001\n  uncertainty 0.0001\n",
      );
    // √(0.00005² + 0.0001²/12) = 0.0000577, by 1.645
    expect(toldIn(guarded("0.8740 with mic-1"), CODE)).toEqual([
      "9:9-10 warning reading-off-limits of journal a: Whether journal a is within 0.8740 to 0.8745 in is not sure: it does not keep clear of a limit by 0.000095 in (k = 1.64), as its uncertainty asks (ISO 14253-1). Read it with a surer gauge.",
      "  see 10:3-26: limits of journal a: 0.8740 to 0.8745 in",
    ]);
    expect(messages(guarded("0.8742"), CODE)).toEqual([
      "Whether journal a is within 0.8740 to 0.8745 in is not sure: the verdict is guarded, and needs the gauge that read journal a.",
    ]);
    expect(theOne(guarded("0.8738 with mic-1"), CODE).level).toBe("error");
    expect(foundIn(guarded("0.87425 with mic-1"), CODE)).toEqual([]);
  });
});

describe("an hour meter", () => {
  const told = (...lines: readonly string[]): readonly string[] =>
    toldIn(
      `job winch\n  units inch\n${lines.map((line) => `  ${line}\n`).join("")}`,
      "hours-back",
    );

  test("is held against the day before it, in the order of the days, the first on the day that the job was opened", () => {
    expect(
      told(
        "opened 2026-01-05",
        "hours 95 h on 2026-02-04",
        "hours 100 h",
        "hours 90 h on 2026-01-04",
      ),
    ).toEqual([
      "4:3-27 information hours-back of job winch: The hour meter shows 95 h on 2026-02-04, less than 100 h on 2026-01-05: correct the one that is wrong. If it is another meter, or one set anew, wear against hours begins anew here.",
      "  see 5:3-14: 100 h on 2026-01-05",
    ]);
  });

  test("that stands still is right, and on one day shows one thing", () => {
    expect(
      told("hours 95 h on 2026-02-04", "hours 95 h on 2026-02-05"),
    ).toEqual([]);
    expect(
      told("hours 95 h on 2026-02-04", "hours 95 h on 2026-02-04"),
    ).toEqual([]);
    expect(
      told("hours 95 h on 2026-02-04", "hours 96.5 h on 2026-02-04"),
    ).toEqual([
      "4:3-29 information hours-back of job winch: The hour meter shows 96.5 h and 95 h on one day, 2026-02-04: neither counts in a trend against hours. Keep the one that it showed.",
      "  see 3:3-27: 95 h on 2026-02-04",
    ]);
  });

  test("of no day is held against none", () => {
    expect(told("hours 95 h", "hours 90 h on 2026-02-04")).toEqual([]);
    expect(told("hours 95 on 2026-02-03", "hours 90 h on 2026-02-04")).toEqual(
      [],
    );
  });
});

describe("a slip of the unit or of the decimal mark", () => {
  const CUT = /metal to take off|size it down|Build it up/u;

  test.each([
    ["0.8740 to 0.8745 mm", "0.8743", "in the other unit"],
    ["0.8740 to 0.8745", "22.207", "in the other unit"],
    ["8.740 to 8.745", "0.8743", "a decimal mark had moved"],
  ])("limits %s, read %s: no metal is to go for it", (limits, read, slip) => {
    const [said = ""] = messages(
      job(feature("journal", "a", `  limits ${limits}\n  read ${read}\n`)),
      "reading-off-limits",
    );
    expect(said).toContain(slip);
    expect(said).toContain("before any metal goes");
    expect(said).not.toMatch(CUT);
  });

  test("nor for wear that is one", () => {
    const worn = (read: string): string =>
      messages(
        job(
          feature("journal", "a", `  service-limit 0.8735\n  read ${read}\n`),
        ),
        "worn",
      ).join("\n");
    expect(worn("0.8720")).toMatch(CUT);
    const slip = worn("0.08743");
    expect(slip).toContain("as if a decimal mark had moved");
    expect(slip).not.toMatch(CUT);
  });

  test("what no slip explains has its cure", () => {
    expect(
      messages(
        job(
          feature("journal", "a", "  limits 0.8740 to 0.8745\n  read 0.8841\n"),
        ),
        "reading-off-limits",
      )[0],
    ).toMatch(CUT);
  });

  test("limits are held against the nominal size, a tenth off and no less", () => {
    const of = (limits: string): readonly string[] =>
      messages(
        job(feature("journal", "a", `  nominal 1\n  limits ${limits}\n`)),
        "reading-off-nominal",
      );
    expect(of("0.8990 to 0.9010")).toEqual([]);
    expect(of("0.8990 to 0.9000")).toEqual([
      "The limits 0.8990 to 0.9000 in are far from the nominal 1.0000 in. One of the two is not what the drawing has.",
    ]);
    expect(of("1.0000 to 1.0005 mm")[0]).toContain(
      "as if one of the two were in the other unit",
    );
  });
});
