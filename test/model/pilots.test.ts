// Pilots of a line: the bore that each runs in, what its slack and lobes let the cut wander, and those that do not go in. Figures are
// worked out here in whole hundred-thousandths of an inch, with nothing of server/core.
import { describe, expect, test } from "vitest";
import type { FileCheck, Result } from "../../server/model/result.ts";
import { check, codes, CRIB, ends, find, JOB } from "./two-bores.ts";

test("a pilot in a bore that the line does not have needs its place", () => {
  const job = JOB.replace("  bore front from 0 to 1.5\n", "");
  expect(find(check(job, CRIB), "pilot-offset", "bore rear")?.needs).toEqual([
    {
      ref: "bore front",
      fact: "read",
      text: "a reading of bore front",
    },
    {
      ref: "line layshaft",
      fact: "bore",
      text: "where bore front lies on line layshaft",
    },
  ]);
});

describe("pilots that do not go", () => {
  const tight = (front: string, pilot: string): FileCheck["findings"] =>
    check(
      JOB.replace("0.8714 0.8716 as", `${front} as`),
      CRIB.replace("od 0.8710 to 0.8712", pilot),
    ).findings.filter(({ code }) => code === "pilot-tight");

  test("read against read is an error where the largest meets the smallest", () => {
    expect(
      tight("0.8709 0.8712", "read 0.8710").map(({ level }) => level),
    ).toEqual(["error"]);
  });
  test("foretold is an error where no size goes, a warning where some do", () => {
    expect(
      tight("0.8708 0.8709", "od 0.8710 to 0.8712").map(({ level }) => level),
    ).toEqual(["error"]);
    expect(
      tight("0.8711 0.8711", "od 0.8710 to 0.8712").map(({ level }) => level),
    ).toEqual(["warning"]);
  });
  test("of the very same size is no fault", () => {
    expect(tight("0.8710 0.8710", "read 0.8710")).toEqual([]);
  });
});

describe("a pilot in a bore with lobes that two points don't see", () => {
  // three points show twice the radial roundness of three lobes: 0.0006 is 30 of it
  const lobed = (swing: string, job = JOB): FileCheck =>
    check(
      job.replace(
        "read 0.8714 0.8716 as roughed\n",
        `read 0.8714 0.8716 as roughed\n${swing}`,
      ),
      CRIB,
    );
  const SWING = "  swing 0.0006 on three points, 3 lobes as roughed\n";
  const offset = (of: FileCheck) => find(of, "pilot-offset", "bore rear");
  const plain = offset(check(JOB, CRIB));

  // slack 20, 40, 60: with 30 of lobes none, 10, 30 are left between the low spots, whose triangle is 2·(what is left)/2 off at its corners
  // and √3 times as much along its sides, which is less than the 60 that two points leave; held over 1.0 in, 3.5 in to the far end
  test("can be off by as much as the lobes leave", () => {
    const round = (value: number): number => Math.round(value * 1000) / 1000;
    expect(ends(offset(lobed(SWING)))).toEqual(
      [0, 10, 30].map((left) => round(left + Math.sqrt(3) * left * 3.5)),
    );
  });

  test("and its working says so, with the numbers", () => {
    const said = offset(lobed(SWING))?.working.map(
      ({ formula, with: numbers }) => `${formula}: ${numbers}`,
    );
    expect(said?.slice(-3)).toEqual([
      "the mate of bore front meets its smallest diameter less its radial roundness: two points don't see an odd number of lobes: 3 lobes on three points: 0.0006 in / 2.00 = 0.00030 in",
      "slack = bore front, still uncut, − pilot p-871, at its least also − what lobes take: 0.8714 to 0.8716 in − 0.8710 to 0.8712 in, at its least − 0.00030 = -0.0001 to 0.0006 in",
      "offset = off the bore's axis + lean/engaged length · overhang: between 3 lobes off by up to 0.0003 in, leaning by up to 0.0005 in, engaged over 1.0000, 3.5000 to the far end of bore rear: up to 0.0021 in, radial",
    ]);
  });

  test("may not go in where they leave too little", () => {
    const tight = lobed(SWING).findings.find(
      ({ code }) => code === "pilot-tight",
    );
    expect(tight?.message).toContain(
      "the bore 0.8714 to 0.8716 in, of which its 3 lobes take 0.00030 in, up to 0.0001 in too small",
    );
    expect(tight?.related.map(({ message }) => message)).toContain(
      "bore front, still uncut: 0.8714 to 0.8716 in; its 3 lobes take 0.00030 in",
    );
    expect(codes(check(JOB, CRIB))).not.toContain("pilot-tight");
  });

  test.each([
    ["of another stage", SWING.replace(" as roughed", "")],
    ["that it is blind to", SWING.replace("3 lobes", "5 lobes")],
    ["of none at all", SWING.replace("0.0006", "0.0000")],
  ])("a swing %s takes nothing", (_, swing) => {
    expect(ends(offset(lobed(swing)))).toEqual(ends(plain));
  });

  test("one that can't be read leaves the offset unsaid", () => {
    expect(offset(lobed(SWING.replace("3 lobes", "3")))?.status).toBe(
      "unknown",
    );
  });

  test("the lobes of the hole that is cut, where the bore before is that", () => {
    const hole = (swing: string): FileCheck =>
      check(
        JOB.replace(
          "  depth 1.350 blind\n",
          `  depth 1.350 blind\n  read 0.8714 0.8716\n${swing}`,
        ).replace("  read 0.8714 0.8716 as roughed\n", ""),
        CRIB,
      );
    expect(ends(offset(hole("")))).toEqual(ends(plain));
    const with3 = offset(hole(SWING.replace(" as roughed", "")));
    expect(ends(with3)).toEqual(ends(offset(lobed(SWING))));
    expect(with3?.working.map(({ formula }) => formula).join()).toContain(
      "the mate of hole front meets",
    );
  });

  test("a bore as it is read, already cut; one that is just cut has none of what it had", () => {
    const second = (facts: string): Result | undefined =>
      find(
        check(
          JOB.replace("bore rear in case\n", `bore rear in case\n${facts}`),
          CRIB,
        ),
        "pilot-offset",
        "bore front",
      );
    // 87570 over 87550: 20; swing 20 on three points is 10 of roundness; over 1.5 in, 3.5 in to the far end
    const round = (value: number): number => Math.round(value * 1000) / 1000;
    const left = 20 - 10;
    expect(
      ends(second("  read 0.8757\n  swing 0.0002 on three points, 3 lobes\n")),
    ).toEqual(Array(3).fill(round(left + (Math.sqrt(3) * left * 3.5) / 1.5)));
    expect(ends(second("  swing 0.0002 on three points, 3 lobes\n"))).toEqual(
      ends(second("")),
    );
  });
});
