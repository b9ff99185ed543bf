// What is said of presses, and of fits hot and cold, beyond what the pages' samples show. Growth, pressures and stresses are worked out by hand,
// in millimetres, with materials of round figures: rings of one material press by δ·E/d over 6.2222, the sum of (D² + d²)/(D² − d²) and
// (d² + b²)/(d² − b²) for b 20, d 25 and D 50 (Lamé).
import { describe, expect, test } from "vitest";
import { foundIn, messages, toldIn } from "./found.ts";

describe("a fit hot and cold", () => {
  const WARM = ["hot-tight", "hot-loose", "cold-tight", "cold-loose"];
  const job = (journal: string, bore: string, fit: string): string => `job winch
  units mm
material own
  expansion 10 um/m-K
part shaft
  material own
part case
  material own
journal front on shaft
  ${journal}
bore front in case
  ${bore}
fit front of journal front in bore front
${fit}`;
  const told = (text: string): readonly string[] =>
    WARM.flatMap((code) => toldIn(text, code));

  test("is told that nothing is left where the shaft grows by all that it has, and not while any is left", () => {
    // 20 · 10·10⁻⁶ · 150 = 0.030; a degree less leaves 0.0002, ten more take 0.002
    expect(
      told(
        job(
          "read 20.000",
          "read 20.030",
          "  hot shaft 169 C, case 20 C\n  hot shaft 170 C, case 20 C\n  hot shaft 180 C, case 20 C\n",
        ),
      ),
    ).toEqual([
      "15:3-29 error hot-tight of fit front: When hot no clearance is left: 0.000 mm of interference at the tightest. The journal will seize. Open out the bore or size the journal down, or keep the two nearer in temperature.",
      "  see 9:9-14: journal front: 20.000 mm, measured",
      "  see 11:6-11: bore front: 20.030 mm, measured",
      "16:3-29 error hot-tight of fit front: When hot no clearance is left: 0.002 mm of interference at the tightest. The journal will seize. Open out the bore or size the journal down, or keep the two nearer in temperature.",
      "  see 9:9-14: journal front: 20.000 mm, measured",
      "  see 11:6-11: bore front: 20.030 mm, measured",
    ]);
  });

  test("is told of what is foretold only where not even the loosest leaves any", () => {
    // the loosest has 0.050, which 20 · 10·10⁻⁶ · 160 = 0.032 does not take and that of 260 °C does
    expect(
      messages(
        job(
          "limits 19.990 to 20.000",
          "limits 20.030 to 20.040",
          "  hot shaft 180 C, case 20 C\n  hot shaft 280 C, case 20 C\n",
        ),
        "hot-tight",
      ),
    ).toEqual([
      "When hot no clearance is left: 0.002 mm of interference at the loosest that is foretold. The journal will seize. Open out the bore or size the journal down, or keep the two nearer in temperature.",
    ]);
  });

  test("is held against what it wants hot, too little at its least and too much at its most", () => {
    // 20 · 10·10⁻⁶ · 100 = 0.020 of 0.026 to 0.030; cold, half of that more
    expect(
      told(
        job(
          "read 20.000 20.004",
          "read 20.030",
          "  want-hot 0.010 to 0.020\n  hot shaft 120 C, case 20 C\n  cold shaft -30 C, case 20 C\n",
        ),
      ),
    ).toEqual([
      "15:3-29 error hot-tight of fit front: When hot the clearance is 0.006 to 0.010 mm and 0.010 to 0.020 mm is wanted: 0.004 mm too little. Open out the bore or size the journal down, or keep the two nearer in temperature.",
      "  see 9:9-14: journal front: 20.000 to 20.004 mm, measured",
      "  see 11:6-11: bore front: 20.030 mm, measured",
      "16:3-30 warning cold-loose of fit front: When cold the clearance is 0.036 to 0.040 mm and 0.010 to 0.020 mm is wanted: 0.020 mm too much. Use a smaller bore, or keep the two nearer in temperature.",
      "  see 9:9-14: journal front: 20.000 to 20.004 mm, measured",
      "  see 11:6-11: bore front: 20.030 mm, measured",
    ]);
  });

  test("of a part that is read and one that is foretold is judged as at 20 °C: the one has all of its sizes, the other one of them", () => {
    // journal 20.000 to 20.004, 0.020 more when hot; of a bore of 20.030 to 20.034 the best leaves 0.010 to 0.014, and 0.006 at its smallest
    const of = (want: string): string =>
      job(
        "read 20.000 20.004",
        "limits 20.030 to 20.034",
        `  want-hot ${want}\n  hot shaft 120 C, case 20 C\n`,
      );
    expect(told(of("0.0102 to 0.020"))[0]).toBe(
      "15:3-29 error hot-tight of fit front: When hot the clearance is foretold at 0.006 to 0.014 mm and 0.0102 to 0.0200 mm is wanted: 0.0002 mm too little at least. Open out the bore or size the journal down, or keep the two nearer in temperature.",
    );
    expect(told(of("0.0098 to 0.020"))).toEqual([]);
    expect(told(of("0.002 to 0.0096"))[0]).toContain(
      "hot-loose of fit front: When hot the clearance is foretold at 0.006 to 0.014 mm and 0.0020 to 0.0096 mm is wanted: 0.0004 mm too much at least.",
    );
    // none is left where the largest bore leaves none at the largest place of the journal
    const none = (shaft: string): string =>
      job(
        "read 20.000 20.030",
        "limits 20.030 to 20.040",
        `  hot shaft ${shaft} C, case 20 C\n`,
      );
    expect(told(none("72"))[0]).toContain(
      "When hot no clearance is left: 0.000 mm of interference at the loosest that is foretold.",
    );
    expect(told(none("60"))).toEqual([]);
  });

  test("has a value for each, which a concession is held against", () => {
    const conceded = (code: string, bound: string): readonly string[] =>
      foundIn(
        `${job(
          "read 20.000 20.004",
          "read 20.030",
          "  want-hot 0.010 to 0.020\n  hot shaft 120 C, case 20 C\n  cold shaft -30 C, case 20 C\n",
        )}concession c
  allows ${code} on fit front
  up to ${bound}
  why "Slow" by AK on 2026-11-05
`,
        code,
      ).map(({ accepted }) => accepted ?? "no");
    expect(conceded("hot-tight", "0.0055")).toEqual(["c"]);
    expect(conceded("hot-tight", "0.0065")).toEqual(["no"]);
    expect(conceded("cold-loose", "0.0405")).toEqual(["c"]);
    expect(conceded("cold-loose", "0.0395")).toEqual(["no"]);
  });

  test("is told nothing of while what it wants can't be read, nor of a fit that has nothing at 20 °C", () => {
    expect(
      told(
        job(
          "read 20.000",
          "read 20.030",
          "  want-hot 0.010 too 0.020\n  hot shaft 220 C, case 20 C\n",
        ),
      ),
    ).toEqual([]);
    const hot = "  hot shaft 220 C, case 20 C\n";
    expect(told(job("read 20.000", "read 20.000", hot))).toEqual([]);
    expect(
      told(job("limits 20.000 to 20.010", "limits 19.990 to 20.000", hot)),
    ).toEqual([]);
    expect(told(job("read 20.000", "read 20.001", hot))).not.toEqual([]);
  });
});

const press = (
  hole: string,
  bush: string,
  {
    head = "",
    want = "",
    material = "bronze-c932",
    case: host = "iron-grey",
  } = {},
): string => `job winch
  units mm
${head}part case
  material ${host}
hole front in case
  boss 50
  ${hole}
bush front in hole front
  material ${material}
  id 20
  ${bush}
press front of bush front in hole front
${want}`;
const either = (text: string): readonly string[] =>
  ["press-light", "press-heavy"].flatMap((code) => toldIn(text, code));

describe("an interference", () => {
  const related = (od: string, hole: string): readonly string[] => [
    `  see 8:6-11: bush front: od ${od}`,
    `  see 5:6-11: hole front: ${hole}`,
  ];

  test("is held against 0.5 to 1.5 ‰ of the diameter of a metal bush, and the bush to make keeps within that", () => {
    const make = [
      "  fix: Have the bush made: `od 25.013 to 25.037 mm`",
      '    11:3-22 "od 25.013 to 25.037 mm"',
    ];
    // of 25: 0.0125 and 0.0375
    expect(either(press("read 25.000", "od 25.000 to 25.002"))).toEqual([
      "12:7-12 error press-light of press front: The interference is foretold at 0.000 to 0.002 mm, and 0.013 mm is the usual least for bronze (0.5 ‰ of the outside diameter): it lacks 0.013 mm. Take a larger bush. An od of 25.013 to 25.038 mm gives it.",
      ...related("25.000 to 25.002 mm, predicted", "25.000 mm, measured"),
      ...make,
    ]);
    expect(either(press("read 25.000", "od 25.050 to 25.060"))).toEqual([
      "12:7-12 error press-heavy of press front: The interference is foretold at 0.050 to 0.060 mm, and 0.038 mm is the usual most for bronze (1.5 ‰ of the outside diameter): 0.022 mm too much. Turn the bush down, or take a smaller one. An od of 25.013 to 25.038 mm gives it.",
      ...related("25.050 to 25.060 mm, predicted", "25.000 mm, measured"),
      ...make,
    ]);
    expect(either(press("read 25.000", "od 25.015 to 25.035"))).toEqual([]);
  });

  test("is held against the job's own shares of the diameter", () => {
    // 1 % of 25.05, and 0.1 % of it
    expect(
      either(
        press("read 25.000", "read od 25.050", {
          head: "  warn press-light at 1 %\n  warn press-heavy at 0.1 %\n",
        }),
      ).filter((line) => !line.startsWith("  ")),
    ).toEqual([
      "14:7-12 error press-light of press front: The interference is 0.050 mm, and 0.251 mm is the least that this job takes: it lacks 0.201 mm. Take a larger bush.",
      "14:7-12 error press-heavy of press front: The interference is 0.050 mm, and 0.025 mm is the most that this job takes: 0.025 mm too much. Turn the bush down, or take a smaller one.",
    ]);
  });

  test("of a material that no share is usual for is only told to be none at all", () => {
    const own = {
      material: "own",
      head: "material own\n  expansion 100 um/m-K\n",
    };
    expect(
      messages(press("read 25.000", "od 24.990 to 24.999", own), "press-light"),
    ).toEqual([
      "The bush is foretold at 0.001 to 0.010 mm smaller than its hole, and a bush that is smaller than its hole is not held: it lacks 0.010 mm. Take a larger bush.",
    ]);
    for (const od of ["25.000", "26.000"])
      expect(either(press("read 25.000", `read od ${od}`, own))).toEqual([]);
  });

  test("of nothing is an interference of nothing, and what is wanted tells the bush to make", () => {
    expect(
      either(
        press("read 25.000", "read od 25.000", {
          want: "  want 0.010 to 0.020\n",
        }),
      ),
    ).toEqual([
      "12:7-12 error press-light of press front: The interference is 0.000 mm, and 0.010 to 0.020 mm is wanted: it lacks 0.010 mm. Take a larger bush. An od of 25.010 to 25.020 mm gives it.",
      ...related("25.000 mm, measured", "25.000 mm, measured"),
    ]);
    expect(
      either(
        press("read 25.000", "od 25.000 to 25.001", {
          want: "  want 0.01 to 0.01\n",
        }),
      ).slice(3),
    ).toEqual([
      "  fix: Have the bush made: `od 25.010 to 25.010 mm`",
      '    11:3-22 "od 25.010 to 25.010 mm"',
    ]);
  });

  test("that no one bush can give, since the hole is oval by more, has none to make", () => {
    // 25.010 + 0.010 at the least, 25.000 + 0.015 at the most
    expect(
      either(
        press("read 25.000 25.010", "od 25.000 to 25.001", {
          want: "  want 0.010 to 0.015\n",
        }),
      ),
    ).toEqual([
      "12:7-12 error press-light of press front: The interference is foretold at -0.010 to 0.001 mm, and 0.010 to 0.015 mm is wanted: it lacks 0.020 mm. Take a larger bush.",
      ...related(
        "25.000 to 25.001 mm, predicted",
        "25.000 to 25.010 mm, measured",
      ),
    ]);
  });

  test("is told nothing of while what it wants can't be read", () => {
    expect(
      either(
        press("read 25.000", "read od 24.900", {
          want: "  want 0.010 too 0.020\n",
        }),
      ),
    ).toEqual([]);
  });
});

const ring = (name: string, strength: number): string =>
  `material ${name}\n  expansion 20 um/m-K\n  modulus 100 GPa\n  poisson 0.3\n  yield ${String(strength)} MPa\n`;

describe("the stresses of a press", () => {
  const of = (bush: number, host: number, od = "25.030", more = ""): string =>
    press("read 25.000", `length 20\n  read od ${od}`, {
      material: "inner",
      case: "outer",
      head: ring("inner", bush) + ring("outer", host),
    }) + more;
  const yields = (...args: Parameters<typeof of>): readonly string[] =>
    messages(of(...args), "press-yields");

  // 0.030 presses with 19.29 MPa: 2 · 19.29 · 625/225 = 107 at the bush's bore, 19.29 · 2.333 = 45.0 at the hole by Mises' rule
  test("are held against the yield of each by 1.2, and less than once gives way", () => {
    expect(yields(130, 55)).toEqual([]);
    expect(yields(120, 55)).toEqual([
      "At the most interference the bush at its bore carries up to 107 MPa, and inner yields at 120 MPa: a margin of 1.12, where 1.2 is asked. There is little to spare: take less interference, a thicker wall or a stronger material.",
    ]);
    expect(yields(130, 40)).toEqual([
      "At the most interference the case at its hole carries up to 45.0 MPa, and outer yields at 40.0 MPa: a margin of 0.89, where 1.2 is asked. It gives way and holds less than it should: take less interference, a thicker wall or a stronger material.",
    ]);
  });

  test("are told of both where both are over, the worse first", () => {
    const [inner, outer] = [
      "the bush at its bore carries up to 107 MPa, and inner yields at 120 MPa: a margin of 1.12",
      "the case at its hole carries up to 45.0 MPa, and outer yields at 40.0 MPa: a margin of 0.89",
    ];
    expect(yields(120, 40)[0]).toContain(
      `${outer}; ${inner}, where 1.2 is asked. It gives way`,
    );
    expect(yields(90, 50)[0]).toMatch(
      /^At the most interference the bush .*; the case .* It gives way/u,
    );
  });

  test("past the yield of either leave the closure to be measured, until the bore is read as it is now", () => {
    const CODE = "closure-not-valid";
    // the bush at its bore bears 50 · 225/1250 = 9 MPa, of 0.014; the case 60 / 2.333 = 25.7 MPa, of 0.040
    expect(messages(of(50, 500), CODE)).toEqual([
      "The interference may be 0.030 mm, and over 0.014 mm the bush at its bore yields: how far the bore closes can't be worked out from there. Measure its bore after pressing and write it `as pressed`.",
    ]);
    const bore = (read: string): string => `bore front in bush front\n${read}`;
    const over = (read: string): readonly string[] =>
      messages(of(500, 60, "25.060", bore(read)), CODE);
    const told = [
      "The interference may be 0.060 mm, and over 0.040 mm the case yields: how far the bore closes can't be worked out from there. Measure bore front after pressing and write it `as pressed`.",
    ];
    expect(over("")).toEqual(told);
    expect(over("  read 20.000 as bought\n")).toEqual(told);
    expect(over("  read 19.950 as pressed\n")).toEqual([]);
    expect(over("  read 19.950x as pressed\n")).toEqual([]);
    expect(messages(of(500, 60, "25.039"), CODE)).toEqual([]);
  });
});

describe("the heat to drop a bush in", () => {
  const CODE = "heat-over";
  const own = (at: string): Parameters<typeof press>[2] => ({
    head: `  warn heat-over at ${at} C\nmaterial own\n  expansion 20 um/m-K\n`,
    material: "own",
    case: "own",
  });

  test("is what grows the hole by the interference, and the way out shares it with some cold", () => {
    // 20 + 0.050 / (25 · 20·10⁻⁶)
    expect(
      toldIn(press("read 25.000", "read od 25.050", own("119")), CODE),
    ).toEqual([
      "15:7-12 error heat-over of press front: To drop the bush in by heat alone, part case would have to be at 120 °C, and 119 °C is the most for own without its maker's word: past that it may lose its temper or warp. Don't heat it that far: heat the case to no more than 119 °C and freeze the bush below 19 °C, or press it in.",
      "  see 6:6-10: part case",
    ]);
    expect(
      messages(press("read 25.000", "read od 25.050", own("121")), CODE),
    ).toEqual([]);
  });

  test("of limits alone is told where even the smallest bush in the largest hole needs too much", () => {
    // 25.060 in 25.010 as above; the middle of both would need 20 + 0.080 / (25 · 20·10⁻⁶) = 180
    const limits = ["limits 24.990 to 25.010", "od 25.060 to 25.100"] as const;
    expect(messages(press(...limits, own("139")), CODE)).toEqual([]);
    expect(messages(press(...limits, own("119")), CODE)).toHaveLength(1);
  });

  test("is told in words where no press fit is made as hot, and with the force where that is known", () => {
    expect(messages(press("read 25.000", "read od 25.500"), CODE)).toEqual([
      "To drop the bush in by heat alone, part case would have to be hotter than any press fit is made, and 150 °C is the most for iron-grey without its maker's word: past that it may lose its temper or warp. Don't heat it that far: press it in.",
    ]);
    expect(
      messages(press("read 25.000", "length 20\n  read od 25.060"), CODE)[0],
    ).toMatch(/, or press it in with up to \d+(?:\.\d+)? N\.$/u);
  });

  test("is no matter of a case of which no heat is too much, nor of a press without one", () => {
    const bare = (text: string): string =>
      text.replace(/ {2}warn heat-over.*\n/u, "");
    expect(
      messages(bare(press("read 25.000", "read od 25.050", own("119"))), CODE),
    ).toEqual([]);
    expect(
      messages(
        press("read 25.000", "read od 25.050", own("119")).replace(
          "  material own\nhole",
          "hole",
        ),
        CODE,
      ),
    ).toEqual([]);
  });
});

describe("a bush in its warm case", () => {
  const CODE = "bush-slips-hot";
  const rings =
    ring("br", 400).replace("20 um", "16 um") +
    ring("al", 400).replace("20 um", "24 um");
  const job = (
    {
      hole = "read 25.000",
      bush = "read od 25.020",
      bore = "  read 20.000 as pressed\n",
      fit = "  load 4000 N\n",
      head = "",
    } = {},
    ...hot: readonly number[]
  ): string => `${press(hole, `length 20\n  ${bush}`, {
    head: head + rings,
    material: "br",
    case: "al",
    want: "  friction 0.1\n",
  })}part shaft
  material br
bore front in bush front
${bore}journal front on shaft
  read 19.800
fit front of journal front in bore front
${fit}${hot.map((at) => `  hot shaft ${String(at)} C, bush ${String(at)} C, case ${String(at)} C\n`).join("")}`;

  // the case outgrows the bush by 25 · 8·10⁻⁶ a degree: of 0.020 are left 0.010 at 70 °C, 0.004 at 100 °C, 0.002 at 110 °C, none at 120 °C
  test("is told once, where it holds least against the drag of the journal", () => {
    const [finding] = foundIn(job({}, 70, 110, 100), CODE);
    // 0.1 · 1.286 MPa · π · 25² · 20 / 2 = 2.5 N·m; 0.1 · 4000 · 19.8 / 2 = 3.96
    expect(finding?.message).toMatch(
      /^Hot, 0\.002 mm of interference is left, which holds 2\.5\d N-m: 0\.6 times the 3\.96 N-m with which the journal may drag it \(friction 0\.10, as at a start without oil\), where 2\.0 is asked\. Take more interference, or hold the bush with a peg or a screw\.$/u,
    );
    expect(finding?.related.map(({ message }) => message)).toEqual([
      "hot line 2 of fit front",
    ]);
    expect(finding?.fixes.map(({ title }) => title)).toEqual([
      'Write `held by "peg"` under bush front, where a peg holds it',
    ]);
    expect(foundIn(job({}, 70, 110, 100), CODE)).toHaveLength(1);
    expect(foundIn(job({}, 70), CODE)).toEqual([]);
  });

  test("is told of no load where the case lets it go, and not where it still holds", () => {
    const unloaded = { fit: "" };
    expect(messages(job(unloaded, 110, 145), CODE)).toEqual([
      "The case grows away from its bush when hot and lets it go: nothing holds it against turning. Take more interference, or hold the bush with a peg or a screw.",
    ]);
    expect(foundIn(job(unloaded, 110), CODE)).toEqual([]);
  });

  test("that is known by its limits is judged by the most that it may hold, one that is read by the least", () => {
    const limits = {
      hole: "limits 25.000 to 25.010",
      bush: "od 25.020 to 25.040",
      bore: "",
    };
    // of 0.010 to 0.040
    const levels = (hot: number): readonly string[] =>
      foundIn(job(limits, hot), CODE).map(({ level }) => level);
    expect(levels(60)).toEqual([]);
    expect(levels(110)).toEqual(["warning"]);
    expect(levels(250)).toEqual(["error"]);
    expect(messages(job(limits, 60, 110), CODE)).toEqual([
      "The case may grow away from its bush when hot: 0.000 to 0.022 mm of interference is foretold to be left, and at its least nothing holds the bush against turning. Read bush front and hole front, take more interference, or hold the bush with a peg or a screw.",
    ]);
    // of 0.022 at most, 27.9 N·m
    expect(
      foundIn(job({ ...limits, fit: "  load 40000 N\n" }, 110), CODE)[0]
        ?.message,
    ).toMatch(/ N-m: at most 0\.7 times the 39\.6 N-m /u);
    const oval = { bush: "read od 25.020 25.030" };
    // of 0.020 to 0.030
    expect(foundIn(job(oval, 110), CODE)).toHaveLength(1);
  });

  test("that the case lets go is told without its length, its friction or a load", () => {
    const bare = (text: string): string =>
      text.replace("  length 20\n", "").replace("  friction 0.1\n", "");
    const LETS_GO =
      "The case grows away from its bush when hot and lets it go: nothing holds it against turning. Take more interference, or hold the bush with a peg or a screw.";
    expect(messages(bare(job({}, 145)), CODE)).toEqual([LETS_GO]);
    expect(messages(bare(job({}, 110)), CODE)).toEqual([]);
    // of 0.020 to 0.030, less 0.024
    const oval = { bush: "read od 25.020 25.030", fit: "" };
    const AT_LEAST =
      "Hot, 0.000 to 0.006 mm of interference is left: at its least the case lets the bush go, and nothing holds it against turning. Take more interference, or hold the bush with a peg or a screw.";
    expect(messages(bare(job(oval, 140)), CODE)).toEqual([AT_LEAST]);
    expect(messages(job(oval, 140), CODE)).toEqual([AT_LEAST]);
  });

  test("takes the job's own factor", () => {
    // 0.004 left at 100 °C holds 5.0 N·m: 1.3 times
    expect(foundIn(job({}, 100), CODE)).toHaveLength(1);
    expect(
      foundIn(job({ head: "  warn bush-slips-hot at 1.2\n" }, 100), CODE),
    ).toEqual([]);
  });
});
