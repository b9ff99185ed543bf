// What counts as a change of a record, and which way it went.
import { describe, expect, test } from "vitest";
import type { Change, RecordChanges } from "../../server/compare/changes.ts";
import { compare, JOB } from "./job.ts";

function edited(
  ...edits: readonly (readonly [string, string])[]
): RecordChanges {
  let text = JOB;
  for (const [from, to] of edits) {
    if (!text.includes(from)) throw new Error(`no ${from}`);
    text = text.replace(from, to);
  }
  return compare(JOB, text);
}

/** "fit front clearance: before → after (worse)" */
function said({ entry, what, of, before, after, tendency }: Change): string {
  const state = (standing: Change["before"]): string =>
    standing === null
      ? "nothing"
      : `${standing.text}${standing.verdict === "none" ? "" : ` ${standing.verdict}`}`;
  return `${entry} ${what}${of === null ? "" : ` ${of}`}: ${state(before)} → ${state(after)}${tendency === "neither" ? "" : ` (${tendency})`}`;
}

const changesOf = (found: RecordChanges): readonly string[] =>
  found.changes.map(said);

describe("no change", () => {
  test("the same text", () => {
    expect(compare(JOB, JOB)).toEqual({
      changes: [],
      come: [],
      gone: [],
      isEmptied: false,
      worse: 0,
    });
  });

  test("comments, blank lines, another order of entries", () => {
    const found = edited(
      ["part layshaft\n", ""],
      ["part case\n", "# the old case\npart case\n\n\npart layshaft\n"],
    );
    expect(found.changes).toEqual([]);
    expect(found.worse).toBe(0);
  });

  test("the other unit, where it is exact: 0.0008 in is 0.02032 mm", () => {
    expect(
      edited(["want 0.0008 to 0.0016", "want 0.02032 to 0.04064 mm"]).changes,
    ).toEqual([]);
  });
});

describe("changes by entry and result", () => {
  test("a reading: the size, the clearance that hangs on it, and how far they moved", () => {
    const found = edited(["0.8742 0.8741", "0.8739 0.8738"]);
    expect(changesOf(found)).toEqual(
      expect.arrayContaining([
        "journal front size: 0.8741 to 0.8742 in in → 0.8738 to 0.8739 in in",
        // the bore of 0.8751 to 0.8753 over it: 0.0009 to 0.0012 was, 0.0012 to 0.0015 is
        "fit front clearance: 0.0009 to 0.0012 in in → 0.0012 to 0.0015 in in",
      ]),
    );
    expect(found.changes.find(({ what }) => what === "clearance")?.moved).toBe(
      "+0.0003 in",
    );
    expect(found.worse).toBe(0);
  });

  test("a move that is less than the last digit shown is no figure", () => {
    // the mean of 0.8743, 0.8740 and 0.8742 is a sixtieth of a thou over that of 0.8742 and 0.8741
    const found = edited(["0.8742 0.8741", "0.8743 0.8740 0.8742"]);
    const size = found.changes.find(
      ({ entry, what }) => entry === "journal front" && what === "size",
    );
    expect(size?.after?.text).toBe("0.8740 to 0.8743 in");
    expect(size?.moved).toBe("");
  });

  test("a verdict that got worse, with the finding that says so", () => {
    const found = edited(["0.8742 0.8741", "0.8737 0.8736"]);
    expect(changesOf(found)).toContain(
      "journal front size: 0.8741 to 0.8742 in in → 0.8736 to 0.8737 in out (worse)",
    );
    expect(found.come.map(({ code, tendency }) => [code, tendency])).toEqual(
      expect.arrayContaining([["reading-off-limits", "worse"]]),
    );
    expect(found.worse).toBeGreaterThan(1);
    // and the other way round it got better
    const back = compare(JOB.replace("0.8742 0.8741", "0.8737 0.8736"), JOB);
    expect(back.worse).toBe(0);
    expect(back.gone.map(({ tendency }) => tendency)).toContain("better");
  });

  test("another reamer", () => {
    const found = edited(["ream with r-875", "ream with r-876"]);
    expect(changesOf(found)).toContain(
      "line bores reamer: reamer r-875 → reamer r-876",
    );
    // 0.8761 to 0.8763 over 0.8741 to 0.8742: 0.0019 to 0.0022, and 0.0016 is the most wanted
    expect(changesOf(found)).toContain(
      "fit front clearance: 0.0009 to 0.0012 in in → 0.0019 to 0.0022 in out (worse)",
    );
  });

  test("a step done, taken back, failed", () => {
    expect(
      changesOf(
        edited([
          "cuts line bores\n",
          "cuts line bores\n  done by AK on 2026-11-05\n",
        ]),
      ),
    ).toEqual(["step ream step: open → done 2026-11-05 (better)"]);
    const taken = edited(["  done by AK on 2026-11-02\n", ""]);
    expect(changesOf(taken)).toEqual([
      "step strip step: done 2026-11-02 → open (worse)",
    ]);
  });

  test("a concession that came, and what it accepts", () => {
    const loose = JOB.replace("want 0.0008 to 0.0016", "want 0.0006 to 0.0008");
    const found = compare(
      loose,
      `${loose}
concession loose
  allows fit-loose on fit front
  up to 0.0015
  why "seldom runs" by AK on 2026-11-06
`,
    );
    expect(changesOf(found)).toEqual(
      expect.arrayContaining([
        "concession loose entry: nothing → there",
        "concession loose concession: nothing → allows fit-loose on fit front up to 0.0015, signed by AK on 2026-11-06",
      ]),
    );
    expect(found.gone.map(({ code }) => code)).toContain("fit-loose");
    expect(found.come.find(({ code }) => code === "fit-loose")).toMatchObject({
      accepted: "loose",
      tendency: "neither",
    });
    expect(found.worse).toBe(0);
  });

  test("an entry that went is said once, not result by result", () => {
    const found = edited([
      "fit front of journal front in bore front\n  want 0.0008 to 0.0016\n",
      "",
    ]);
    expect(
      changesOf(found).filter((each) => each.startsWith("fit front")),
    ).toEqual(["fit front entry: there → nothing"]);
  });

  test("what was in and can't be said any longer is worse", () => {
    const found = edited([
      "  read near 0.8742 0.8741\n",
      "  read near 0.87x2\n",
    ]);
    expect(
      found.changes.find(
        ({ entry, what }) => entry === "fit front" && what === "clearance",
      ),
    ).toMatchObject({ tendency: "worse", after: { status: "unknown" } });
  });
});

describe("a record that came or went whole", () => {
  test("everything of it is new, or gone", () => {
    const come = compare(null, JOB);
    expect(come.changes.filter(({ what }) => what === "entry").length).toBe(
      JOB.split("\n").filter((line) => /^[a-z]/u.test(line)).length,
    );
    expect(come.changes.every(({ before }) => before === null)).toBe(true);
    const gone = compare(JOB, null);
    expect(gone.changes.every(({ what }) => what === "entry")).toBe(true);
    expect(compare(null, null).changes).toEqual([]);
  });
});

test("one end of a size alone is a change, and two findings alike on both sides are none", () => {
  const unread = JOB.replace("  read near 0.8742 0.8741\n", "");
  const { changes } = compare(unread, unread.replace("0.8745", "0.8746"));
  expect(changes.map(({ entry, what }) => `${entry} ${what}`)).toContain(
    "journal front size",
  );
  const twice = JOB.replace(
    "  units inch\n",
    '  units inch\n  use "a.thou"\n  use "b.thou"\n',
  );
  expect(compare(JOB, twice).come.map(({ code }) => code)).toEqual([
    "file-missing",
    "file-missing",
  ]);
  expect(compare(twice, twice)).toMatchObject({ come: [], gone: [] });
});

describe("what sizes are held against", () => {
  test("a wider want is told beside the verdict that it makes", () => {
    const found = edited(["want 0.0008 to 0.0016", "want 0.0011 to 0.0016"]);
    expect(changesOf(found)).toContain(
      "fit front want: 0.0008 to 0.0016 in → 0.0011 to 0.0016 in",
    );
  });

  test("limits and a service limit, and none in the other unit", () => {
    expect(
      changesOf(
        edited([
          "limits 0.8738 to 0.8745\n",
          "limits 0.8735 to 0.8745\n  service-limit 0.8730\n",
        ]),
      ),
    ).toEqual([
      "journal front limits: 0.8738 to 0.8745 in → 0.8735 to 0.8745 in",
      "journal front service-limit: nothing → 0.8730 in",
    ]);
    expect(
      changesOf(
        edited(["limits 0.8738 to 0.8745", "limits 22.19452 to 22.2123 mm"]),
      ),
    ).toEqual([]);
  });
});
