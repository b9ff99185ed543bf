// What is said of the gauges that read, beyond what the pages' samples show: every kind of entry that takes readings, and both sides of each
// condition. Lengths are worked out by hand, in inches.
import { describe, expect, test } from "vitest";
import { foundIn, messages, toldIn } from "./found.ts";

const HEAD = `job winch
  units inch
`;

test.each([
  ["journal", "journal front on shaft\n  read 0.8740 with cmp\n"],
  ["hole", "hole front in case\n  read 0.8740 with cmp\n"],
  [
    "bush",
    "hole front in case\nbush front in hole front\n  read od 1.0010 with cmp\n",
  ],
  ["bore", "bore front in case\n  read 0.8740 with cmp\n"],
  [
    "stack",
    "stack output\n  plus spacer 1.0 to 1.1\n  read spacer 1.0500 with cmp\n",
  ],
  ["reamer", "reamer r-1\n  read 0.8755 with cmp\n"],
  ["pilot", "pilot p-1\n  read 0.8700 with cmp\n"],
])(
  "the gauge of a reading is looked at wherever it was read: %s",
  (kind, text) => {
    const job = `${HEAD}  opened 2026-11-05
gauge cmp
  kind bore-gauge
  resolution 0.001
  due 2026-11-04
part shaft
part case
${text}`;
    for (const code of [
      "gauge-unset",
      "gauge-overdue",
      "reading-finer-than-gauge",
    ])
      expect(
        foundIn(job, code).map(({ entry }) => entry?.split(" ")[0]),
        code,
      ).toEqual([kind]);
  },
);

test.each([
  "journal front on shaft",
  "hole front in case",
  "bore front in case",
])(
  "form and coarseness are looked at wherever a size is read: %s",
  (opening) => {
    const job = `${HEAD}gauge mic-1
  resolution 0.0005
part shaft
part case
${opening}
  limits 0.8740 to 0.8748
  read near 0.8740 0.8748 with mic-1
  read far 0.8741 0.8741 with mic-1
`;
    for (const code of ["gauge-coarse", "out-of-round", "taper"])
      expect(foundIn(job, code), code).not.toEqual([]);
  },
);

describe("a comparator that nothing says the setting of", () => {
  const CODE = "gauge-unset";
  const job = (reads: string, set = ""): string => `${HEAD}gauge cmp
  kind bore-gauge
  resolution 0.00005
${set}gauge other
  kind bore-gauge
gauge cal-1
  kind caliper
gauge nil
  resolution 0.001
gauge mic-1
  kind micrometer
gauge cal-2
  kind caliper
gauge mic-2
  kind micrometer
part case
hole front in case
${reads}`;

  test("is told once an entry, and may have been set in what shows a size by itself, micrometers first", () => {
    expect(
      toldIn(job("  read 1.0000 with cmp\n  read 1.0001 with cmp\n"), CODE),
    ).toEqual([
      "20:20-23 warning gauge-unset of hole front: gauge cmp is a comparator (bore-gauge): it shows how far a size is from what it was set on, and that is not written. Write `set on ring` with the ring's size, or `set with` and the gauge it was set in.",
      "  see 3:7-10: gauge cmp has no `set`",
      "  fix: Write `set with mic-1` under gauge cmp",
      '    5:21-21 "\\n  set with mic-1"',
      "  fix: Write `set with mic-2` under gauge cmp",
      '    5:21-21 "\\n  set with mic-2"',
      "  fix: Write `set with cal-1` under gauge cmp",
      '    5:21-21 "\\n  set with cal-1"',
    ]);
  });

  test("is none that was set, that reads by itself or that is not known", () => {
    expect(
      messages(job("  read 1.0000 with cmp\n", "  set on ring 1.0000\n"), CODE),
    ).toEqual([]);
    expect(
      messages(job("  read 1.0000 with cmp\n", "  set on rng 1.0000\n"), CODE),
    ).toEqual([]);
    for (const other of ["", " with mic-1", " with nil", " with none"])
      expect(messages(job(`  read 1.0000${other}\n`), CODE)).toEqual([]);
    expect(
      foundIn(
        job(
          "  read 1.0000 with mic-1\n  read 1.0000 with other\n  read 1.0000 with cmp\n",
        ),
        CODE,
      ),
    ).toHaveLength(2);
  });
});

describe("a reading with more digits than its gauge shows", () => {
  const CODE = "reading-finer-than-gauge";
  const GAUGES = `gauge mic-1
  kind micrometer
  resolution 0.001
gauge cal-1
  kind caliper
  resolution 0.0001
gauge cal-2
  kind caliper
  resolution 0.0001
gauge mic-2
  kind micrometer
  resolution 0.0001
gauge mic-3
  kind micrometer
  resolution 0.01
gauge mic-4
  kind micrometer
gauge cal-3
  resolution 0.00005
gauge mic-mm
  resolution 0.01 mm
part shaft
journal front on shaft
`;
  const job = (read: string, units = "inch"): string =>
    `job winch\n  units ${units}\n${GAUGES}  read ${read}\n`;

  test("stands at the first such value, and may be of a gauge that shows as many, those of its kind first", () => {
    expect(toldIn(job("0.874 0.8741 with mic-1"), CODE)).toEqual([
      "26:14-20 warning reading-finer-than-gauge of journal front: This has more digits than gauge mic-1 shows: it steps by 0.0010 in. Write what the gauge said, or name the gauge that said it.",
      "  see 3:7-12: resolution 0.0010 in",
      "  fix: It was read with gauge mic-2",
      '    26:26-31 "mic-2"',
      "  fix: It was read with gauge cal-1",
      '    26:26-31 "cal-1"',
      "  fix: It was read with gauge cal-2",
      '    26:26-31 "cal-2"',
    ]);
    expect(toldIn(job("0.874 with mic-1"), CODE)).toEqual([]);
    // one that shows halves of a digit shows that digit
    expect(toldIn(job("0.87415 with cal-3"), CODE)).toEqual([]);
    expect(toldIn(job("0.8741 with mic-4"), CODE)).toEqual([]);
    expect(toldIn(job("0.8741 with none"), CODE)).toEqual([]);
  });

  test("shows the step in the unit that the gauge reads in", () => {
    // 0.01 mm is 0.0003937 in: four decimals are its digit, and five one more
    expect(messages(job("0.8741 with mic-mm"), CODE)).toEqual([]);
    expect(messages(job("0.87412 with mic-mm"), CODE)).toEqual([
      "This has more digits than gauge mic-mm shows: it steps by 0.010 mm. Write what the gauge said, or name the gauge that said it.",
    ]);
    const mm = GAUGES.replaceAll(
      /resolution (0\.\d+)\n/gu,
      "resolution $1 in\n",
    );
    const inMm = (read: string): readonly string[] =>
      messages(`job winch\n  units mm\n${mm}  read ${read}\n`, CODE);
    // 0.0001 in is 0.00254 mm
    expect(inMm("20.001 with cal-1")).toEqual([]);
    expect(inMm("20.0001 with cal-1")[0]).toContain("it steps by 0.0001 in.");
    expect(inMm("20.001 with mic-mm")[0]).toContain("it steps by 0.010 mm.");
  });
});

describe("a calibration that ran out", () => {
  const CODE = "gauge-overdue";
  const job = (opened: string, ...reads: readonly string[]): string =>
    `${HEAD}${opened}gauge mic-1
  due 2026-11-04
gauge mic-2
  resolution 0.0001
part shaft
journal front on shaft
${reads.map((read) => `  read ${read}\n`).join("")}`;

  test("is told once a day after the one that it is due on, at the first reading of that day", () => {
    expect(
      toldIn(
        job(
          "",
          "0.8740 with mic-1 by AK on 2026-11-04",
          "0.8741 with mic-1 by AK on 2026-11-05",
          "0.8742 with mic-1 by AK on 2026-11-06",
          "0.8743 with mic-1 by AK on 2026-11-05",
        ),
        CODE,
      ),
    ).toEqual([
      "10:20-25 warning gauge-overdue of journal front: The calibration of gauge mic-1 ran out on 2026-11-04, and it was used on 2026-11-05: have it calibrated, or read again with another.",
      "  see 3:7-12: due 2026-11-04",
      "11:20-25 warning gauge-overdue of journal front: The calibration of gauge mic-1 ran out on 2026-11-04, and it was used on 2026-11-06: have it calibrated, or read again with another.",
      "  see 3:7-12: due 2026-11-04",
    ]);
  });

  test("is nothing of a day that is not known, of a gauge without one, nor of one that is not named", () => {
    expect(messages(job("", "0.8740 with mic-1"), CODE)).toEqual([]);
    expect(
      messages(job("  opened 2026-11-04\n", "0.8740 with mic-1"), CODE),
    ).toEqual([]);
    expect(
      messages(job("  opened 2026-11-05\n", "0.8740 with mic-1"), CODE),
    ).toEqual([
      "The calibration of gauge mic-1 ran out on 2026-11-04, and the job was opened on 2026-11-05: have it calibrated, or read again with another.",
    ]);
    expect(
      messages(
        job(
          "  opened 2026-11-05\n",
          "0.8740",
          "0.8740 with mic-2",
          "0.8740 with none",
        ),
        CODE,
      ),
    ).toEqual([]);
  });
});

describe("a gauge that is too coarse", () => {
  const CODE = "gauge-coarse";
  const job = (facts: string, head = ""): string => `${HEAD}${head}gauge mic-1
  resolution 0.00005
  uncertainty 0.0002
gauge mic-2
  resolution 0.0005
gauge mic-3
  resolution 0.0001
  uncertainty 0.0001
gauge mic-4
  uncertainty 0.00001
part shaft
part case
${facts}`;
  const fitted = job(`journal front on shaft
  limits 0.8740 to 0.8750
  read 0.8745
  read 0.8745 with mic-2
  read 0.8745 with mic-1
  read 0.8745 with mic-4
  read 0.8746 with mic-2
bore front in case
fit front of journal front in bore front
  want 0.0010 to 0.0015
`);

  test("is held against the narrowest of its limits and what its fits want, once where it is first named", () => {
    // 0.0005 / (2 · 0.0002); a step of 0.0005 over a tenth of 0.0005
    expect(toldIn(fitted, CODE)).toEqual([
      "18:20-25 warning gauge-coarse of journal front: gauge mic-2 steps by 0.0005 in, over a tenth of the 0.0005 in between the least and the most clearance that fit front wants. Read it with a finer one.",
      "  see 6:7-12: gauge mic-2",
      "19:20-25 warning gauge-coarse of journal front: The 0.0005 in between the least and the most clearance that fit front wants is 1.3 times 2U of gauge mic-1, and from 4.0 a gauge is good: this one gives no verdict. Read it with a surer one.",
      "  see 3:7-12: gauge mic-1",
    ]);
  });

  test("says of a hole's tolerance what it says, and no more than is so", () => {
    const hole = (
      limits: string,
      gauge: string,
      head = "",
    ): readonly string[] =>
      messages(
        job(
          `hole front in case\n  limits ${limits}\n  read 1.0005 with ${gauge}\n`,
          head,
        ),
        CODE,
      );
    expect(hole("1.0000 to 1.0010", "mic-2")).toEqual([
      "gauge mic-2 steps by 0.0005 in, over a tenth of the 0.0010 in tolerance of hole front. Read it with a finer one.",
    ]);
    // 0.0006 / (2 · 0.0001)
    expect(hole("1.0000 to 1.0006", "mic-3")).toEqual([
      "The 0.0006 in tolerance of hole front is 3.0 times 2U of gauge mic-3, and from 4.0 a gauge is good. Read it with a surer one.",
    ]);
    expect(hole("1.0000 to 1.0010", "mic-3")).toEqual([]);
    expect(
      hole("1.0000 to 1.0006", "mic-3", "  warn gauge-coarse at 3\n")[0],
    ).toContain("steps by");
    expect(hole("1.0000 to 1.0006", "mic-4")).toEqual([]);
  });
});
