// Gauges against what they read, and wear against its limit: by arithmetic written out here.
import { describe, expect, test } from "vitest";
import { checkText, resultOf } from "./check-text.ts";

function job(
  gauge: string,
  units = "inch",
  limits = "0.8740 to 0.8745",
  read = "0.8742",
  want = "0.0008 to 0.0016",
): string {
  return `
job winch-9
  units ${units}
part layshaft
part case
gauge mic-1
  kind micrometer
${gauge}
journal front on layshaft
  limits ${limits}
  read ${read} with mic-1 at 68 F
bore front in case
fit front of journal front in bore front
  want ${want}
`;
}

const GAUGE = "gauge mic-1";

describe("ratio", () => {
  test("of each tolerance that a reading serves: its limits, and the clearance that its fit wants", () => {
    const found = checkText(
      job("  resolution 0.00001\n  uncertainty 0.00004\n"),
    );
    // 0.0005 / 0.00008 and 0.0008 / 0.00008
    expect(
      Number(resultOf(found, GAUGE, "ratio", { of: "journal front" })?.nominal),
    ).toBeCloseTo(6.25, 9);
    expect(
      Number(resultOf(found, GAUGE, "ratio", { of: "fit front" })?.nominal),
    ).toBeCloseTo(10, 9);
    expect(
      resultOf(found, GAUGE, "ratio", { of: "journal front" })?.text,
    ).toMatch(/, good$/);
  });

  test.each([
    ["0.0000625", "good"], // 4.0
    ["0.00007", "poor"],
    ["0.000125", "poor"], // 2.0
    ["0.00013", "no verdict"],
  ])("U of %s in is %s for half a thou", (U, word) => {
    expect(
      resultOf(checkText(job(`  uncertainty ${U}\n`)), GAUGE, "ratio", {
        of: "journal front",
      })?.text,
    ).toMatch(new RegExp(`, ${word}$`));
  });

  test("from the largest error where no certificate is written: an even distribution, twice its standard deviation", () => {
    const ratio = resultOf(checkText(job("  mpe 0.0001\n")), GAUGE, "ratio", {
      of: "journal front",
    });
    expect(Number(ratio?.nominal)).toBeCloseTo(
      0.0005 / (2 * 2 * (0.0001 / Math.sqrt(3))),
      9,
    );
  });

  test("of a certificate and a largest error the larger counts, in what its readings come to as in its ratio", () => {
    const guarded = (facts: string) =>
      checkText(
        job(facts).replace("units inch", "units inch\n  verdict guarded"),
      ).results;
    // U/2 = 0.00002, mpe/√3 = 0.0000115 and 0.0000231
    expect(guarded("  uncertainty 0.00004\n  mpe 0.00002\n")).toEqual(
      guarded("  uncertainty 0.00004\n"),
    );
    expect(guarded("  uncertainty 0.00004\n  mpe 0.00004\n")).toEqual(
      guarded("  mpe 0.00004\n"),
    );
    expect(guarded("  uncertainty 0.00004\n")).not.toEqual(
      guarded("  mpe 0.00004\n"),
    );
  });

  test("inch and metric twins are one", () => {
    const inch = resultOf(
      checkText(job("  uncertainty 0.00004\n")),
      GAUGE,
      "ratio",
      { of: "journal front" },
    );
    const mm = resultOf(
      checkText(
        job(
          "  uncertainty 0.001016\n",
          "mm",
          "22.1996 to 22.2123",
          "22.205",
          "0.02032 to 0.04064",
        ),
      ),
      GAUGE,
      "ratio",
      { of: "journal front" },
    );
    expect(Number(inch?.nominal)).toBeCloseTo(Number(mm?.nominal), 9);
  });

  test("of no tolerance that leaves nothing", () => {
    const found = checkText(
      job("  uncertainty 0.00004\n", "inch", "0.8742 to 0.8742"),
    );
    expect(
      found.results.filter(({ kind }) => kind === "ratio").map(({ of }) => of),
    ).toEqual(["fit front"]);
  });

  test("needs the gauge's uncertainty, and is silent of what it does not read", () => {
    const found = checkText(job("  resolution 0.00001\n"));
    expect(
      resultOf(found, GAUGE, "ratio", { of: "journal front" })?.needs.map(
        (each) => `${each.ref} ${each.fact}`,
      ),
    ).toEqual(["gauge mic-1 uncertainty"]);
    const unread = checkText(
      job("  uncertainty 0.00004\n").replace(" with mic-1", ""),
    );
    expect(resultOf(unread, GAUGE, "ratio")).toBeUndefined();
  });
});

const codes = (text: string): readonly string[] =>
  checkText(text)
    .findings.map(({ level, code }) => `${level} ${code}`)
    .filter((each) => /gauge|worn|limits/.test(each));

test("coarse by either rule, and not when it passes both", () => {
  expect(codes(job("  resolution 0.00005\n  uncertainty 0.00006\n"))).toEqual(
    [],
  );
  expect(codes(job("  resolution 0.00005\n  uncertainty 0.00007\n"))).toEqual([
    "warning gauge-coarse",
  ]);
  expect(codes(job("  resolution 0.0001\n  uncertainty 0.00002\n"))).toEqual([
    "warning gauge-coarse",
  ]);
  // the narrowest tolerance counts: of the fit, 0.0003
  expect(
    codes(
      job(
        "  uncertainty 0.00004\n",
        "inch",
        "0.8740 to 0.8745",
        "0.8742",
        "0.0008 to 0.0011",
      ),
    ),
  ).toEqual(["warning gauge-coarse"]);
  expect(
    codes(
      job("  uncertainty 0.00007\n").replace(
        "units inch",
        "units inch\n  warn gauge-coarse at 300 %",
      ),
    ),
  ).toEqual([]);
  expect(codes(job("  uncertainty 0.00007 inhc\n"))).toEqual([]);
});

test("a comparator needs its setting, a micrometer does not", () => {
  const bore = (gauge: string): string =>
    job(gauge.replace("kind", "note")).replace(
      "kind micrometer",
      "kind bore-gauge",
    );
  expect(codes(bore("  uncertainty 0.00004\n"))).toEqual([
    "warning gauge-unset",
  ]);
  expect(codes(bore("  uncertainty 0.00004\n  set on ring 0.8750\n"))).toEqual(
    [],
  );
  expect(
    codes(bore("  uncertainty 0.00004\n  set on ring 0.8750 inhc\n")),
  ).toEqual([]);
  expect(codes(job("  uncertainty 0.00004\n"))).toEqual([]);
});

describe("worn is not wrong", () => {
  const worn = (read: string, more = ""): readonly string[] =>
    codes(
      job(
        "  uncertainty 0.00004\n",
        "inch",
        "0.8740 to 0.8745\n  service-limit 0.8735",
        read,
      ).replace(" with mic-1 at 68 F", more),
    );

  test("off its limits within the service limit it is information", () => {
    expect(worn("0.8738")).toEqual(["information reading-off-limits"]);
    expect(worn("0.8735")).toEqual(["information reading-off-limits"]);
  });

  test("past the service limit it is worn", () => {
    expect(worn("0.87349")).toEqual(["error worn"]);
  });

  test("too large is no wear of a journal", () => {
    expect(worn("0.8747")).toEqual(["error reading-off-limits"]);
  });

  test("what it was after it ran comes first", () => {
    const text = job(
      "  uncertainty 0.00004\n",
      "inch",
      "0.8740 to 0.8745\n  service-limit 0.8735\n  read 0.8734 at 68 F as run",
    );
    expect(codes(text)).toEqual(["error worn"]);
  });
});

describe("what a part is now", () => {
  const size = (reads: string): string | undefined =>
    checkText(`job winch-3
  units inch
part layshaft
journal front on layshaft
${reads}`).results.find(({ kind }) => kind === "size")?.text;
  test("read as it ran, it is that, whichever line stands first", () => {
    expect(size("  read 0.8742\n  read 0.8738 as run\n")).toBe("0.8738 in");
    expect(size("  read 0.8738 as run\n  read 0.8742\n")).toBe("0.8738 in");
  });
  test("finished anew at a later date, it is that", () => {
    expect(
      size(
        "  read 0.8738 as run by AK on 2025-03-01\n  read 0.8730 by AK on 2025-04-01\n",
      ),
    ).toBe("0.8730 in");
    expect(
      size(
        "  read 0.8742 by AK on 2020-04-01\n  read 0.8738 as run by AK on 2025-03-01\n",
      ),
    ).toBe("0.8738 in");
  });
  test("finished on the same day, or as it ran on a day that is not written, it is as it ran", () => {
    const made = "  read 0.8730 by AK on 2025-04-01\n";
    expect(size(`${made}  read 0.8738 as run by AK on 2025-04-01\n`)).toBe(
      "0.8738 in",
    );
    expect(size(`${made}  read 0.8738 as run\n`)).toBe("0.8738 in");
  });
});
