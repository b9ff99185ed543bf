// What a line comes to as it is cut: stock, pilots, the ledge of a blind bore, advice on speed. Figures are worked out here in whole
// hundred-thousandths of an inch, with nothing of server/core.
import { describe, expect, test } from "vitest";
import { readLines } from "../../grammar/lines.ts";
import { reamingAdviceFor } from "../../server/model/evaluate/reaming-advice.ts";
import type { FileCheck, Result } from "../../server/model/result.ts";
import { createProject, type Project } from "../../server/rules/check.ts";
import { findingsOfEntry } from "../../server/rules/entry-findings.ts";

const PATH = "/job.thou";

function open(job: string, crib: string): Project {
  const project = createProject({ root: "/" });
  project.setFile(PATH, readLines(job));
  project.setFile("/crib.thou", readLines(crib));
  return project;
}

function check(job: string, crib: string): FileCheck {
  return open(job, crib).check(PATH);
}

function find(
  { results }: FileCheck,
  kind: string,
  of: string,
): Result | undefined {
  return results.find((result) => result.kind === kind && result.of === of);
}

/** In hundred-thousandths of an inch, rounded at a thousandth of one. */
function ends(result: Result | undefined): readonly (number | null)[] {
  if (result === undefined) throw new Error("no such result");
  return [result.low, result.nominal, result.high].map((metres) =>
    metres === null ? null : Math.round((metres / 0.0254) * 1e8) / 1000,
  );
}

function codes({ findings }: FileCheck): readonly string[] {
  return findings.map((finding) => finding.code);
}

const CRIB = `shop harbour
  units inch

reamer r-8755
  size 0.8755
  oversize +0.0001 to +0.0003
  drive hand
  material hss
  chamfer 0.060
  point 0.020
  flutes 6 left

pilot p-871
  od 0.8710 to 0.8712
  length 1.0
pilot p-875
  od 0.8755
  length 4.5
`;

const JOB = `job winch-3
  units inch
  use "crib.thou"
part layshaft
part case
  material bronze-c932

journal front on layshaft
  reaches 1.300
  limits 0.8740 to 0.8745
hole front in case
  depth 1.350 blind
bore front in case
  read 0.8714 0.8716 as roughed
bore rear in case
  read 0.8716 0.8718 as roughed
fit front of journal front in bore front
  want 0.0008 to 0.0020
fit rear of journal front in bore rear
  want 0.0008 to 0.0020

line layshaft
  bore rear from 3.5 to 5.0
  bore front from 0 to 1.5
  ream with r-8755
  pilot p-871 in bore front for bore rear
  pilot p-875 in bore rear for bore front
`;

describe("a line of two bores", () => {
  const found = check(JOB, CRIB);

  // the reamer cuts 87550 + 10 to 87550 + 30
  test("stock is the cut less the bore before it", () => {
    expect(ends(find(found, "stock", "bore rear"))).toEqual([
      87560 - 87180,
      87570 - 87170,
      87580 - 87160,
    ]);
    expect(ends(find(found, "stock", "bore front"))).toEqual([
      87560 - 87160,
      87570 - 87150,
      87580 - 87140,
    ]);
  });

  test("stock says in how many passes it comes off", () => {
    expect(find(found, "stock", "bore rear")?.text).toBe(
      "0.0038 to 0.0042 in, one pass",
    );
    // 87580 - 86500 is over the 500 of one pass by hand at this size
    const more = check(JOB.replace("0.8716 0.8718", "0.8700 0.8702"), CRIB);
    expect(find(more, "stock", "bore rear")?.text).toBe(
      "0.0054 to 0.0058 in, rough and finish",
    );
  });

  // slack 87140 - 87120 = 20 to 87160 - 87100 = 60, held over 1.0 in (the pilot's length), 5.0 - 1.5 = 3.5 in to the far end
  test("the first pilot runs in the front bore as it is before its cut", () => {
    expect(ends(find(found, "pilot-offset", "bore rear"))).toEqual([
      20 / 2 + 20 * 3.5,
      40 / 2 + 40 * 3.5,
      60 / 2 + 60 * 3.5,
    ]);
  });

  // slack 87560 - 87550 = 10 to 30, held over 1.5 in (the bore's length), 3.5 - 0 = 3.5 in to the far end
  test("the second runs in the rear bore as this line has just cut it", () => {
    expect(ends(find(found, "pilot-offset", "bore front"))).toEqual(
      [10, 20, 30].map(
        (slack) => Math.round((slack / 2 + (slack / 1.5) * 3.5) * 1000) / 1000,
      ),
    );
  });

  test("a rear bore that is read as finished is the one that the second runs in", () => {
    const read = check(
      JOB.replace("bore rear in case\n", "bore rear in case\n  read 0.87560\n"),
      CRIB,
    );
    const offset = find(read, "pilot-offset", "bore front");
    expect(ends(offset)).toEqual(
      [10, 10, 10].map(
        (slack) => Math.round((slack / 2 + (slack / 1.5) * 3.5) * 1000) / 1000,
      ),
    );
  });

  // 1.350 - 0.060 - 0.020 = 1.270 deep with the point on the bottom, 1.260 with 0.010 kept: 0.080 to 0.090 left of 1.350
  test("the ledge of the blind bore, with the reamer on the bottom and held off it", () => {
    expect(ends(find(found, "ledge", "bore front"))).toEqual([
      8000, 9000, 9000,
    ]);
    expect(find(found, "ledge", "bore front")?.text).toContain(
      "0.8714 in across",
    );
    expect(find(found, "ledge", "bore rear")).toBeUndefined();
  });

  test("findings carry the value that a concession is held against", () => {
    const project = open(JOB, CRIB);
    const file = project.open(PATH);
    if (file === undefined) throw new Error("no file");
    const values = file.file.entries.flatMap((_, index) =>
      findingsOfEntry(file, index).map(
        ({ code, value }) =>
          [code, Math.round((Number(value) / 0.0254) * 1e8) / 1000] as const,
      ),
    );
    // the journal goes 1.300 in, the cut 1.260; the first pilot lets the cut off by 240, the second by 85, over a quarter of 120
    expect(values).toContainEqual(["ledge-fouls", 4000]);
    expect(values).toContainEqual(["pilot-slack", 240]);
    expect(values).toContainEqual(["pilot-slack", 85]);
  });

  test("what is found points to the other halves", () => {
    const fouls = found.findings.find(({ code }) => code === "ledge-fouls");
    expect(fouls?.related.map(({ message }) => message)).toEqual([
      "reaches 1.3000 in",
      "the depth of hole front",
      "chamfer and point of reamer r-8755",
    ]);
    expect(fouls?.message).toContain("0.0400 in past");
  });
});

test("in millimetres the figures are the same to a tenth of a nanometre", () => {
  const metric = (text: string): string =>
    text
      .replace("units inch", "units mm")
      .replace(/(?<![\w-])\d*\.\d+/g, (inches) =>
        (Number(inches) * 25.4).toFixed(5),
      );
  const [one, other] = [check(JOB, CRIB), check(metric(JOB), metric(CRIB))];
  const kinds = ["stock", "pilot-offset", "ledge"];
  const of = (found: FileCheck): readonly Result[] =>
    found.results.filter((result) => kinds.includes(result.kind));
  expect(of(one).length).toBe(5);
  expect(of(other).length).toBe(5);
  of(one).forEach((result, index) => {
    const twin = of(other)[index];
    for (const end of ["low", "nominal", "high"] as const)
      expect(Math.abs(Number(result[end]) - Number(twin?.[end]))).toBeLessThan(
        1e-10,
      );
  });
  expect(codes(other)).toEqual(codes(one));
});

describe("in a pressed bush", () => {
  const job = `job winch-3
  units inch
  use "crib.thou"
part case
  material aluminium-356-t6
hole front in case
  limits 1.0000 to 1.0005
  boss 1.750
bush front in hole front
  material bronze-c932
  construction solid
  od 1.0011 to 1.0012
  id 0.8715 to 0.8720
  length 1.250
bore front in bush front
  limits 0.8755 to 0.8760
press front of bush front in hole front
line layshaft
  bore front from 0 to 1.25
  ream with r-8755
`;
  test("stock starts from what the press leaves", () => {
    const found = check(job, CRIB);
    const stock = find(found, "stock", "bore front");
    const pressed = found.results.find(
      ({ kind }) => kind === "bore-after-press",
    );
    expect(Number(stock?.low)).toBeCloseTo(
      0.8756 * 0.0254 - Number(pressed?.high),
      10,
    );
    expect(Number(stock?.high)).toBeCloseTo(
      0.8758 * 0.0254 - Number(pressed?.low),
      10,
    );
    // it has closed, so that there is more to cut than before the press
    expect(Number(stock?.high)).toBeGreaterThan((0.8758 - 0.8715) * 0.0254);
  });

  test("its length is needed for the ledge of a blind hole", () => {
    const blind = job
      .replace("  boss 1.750\n", "  boss 1.750\n  depth 1.350 blind\n")
      .replace(
        "bore front in bush front\n",
        "bore front in bush front\n  read 0.8710 as pressed\n",
      );
    // to 1.260 deep, as above, which is past the bush
    expect(ends(find(check(blind, CRIB), "ledge", "bore front"))).toEqual([
      0, 0, 0,
    ]);
    const without = blind.replace("  length 1.250\n", "");
    expect(find(check(without, CRIB), "ledge", "bore front")?.needs).toEqual([
      {
        ref: "bush front",
        fact: "length",
        text: "the length of bush front",
      },
    ]);
  });

  test("and from a reading as pressed, once there is one", () => {
    const found = check(
      job.replace(
        "bore front in bush front\n",
        "bore front in bush front\n  read 0.8710 0.8711 as pressed\n",
      ),
      CRIB,
    );
    expect(ends(find(found, "stock", "bore front"))).toEqual([
      87560 - 87110,
      87570 - 87105,
      87580 - 87100,
    ]);
  });
});

describe("facts that are missing", () => {
  const needsOf = (
    job: string,
    crib: string,
    kind: string,
    of: string,
  ): readonly string[] | undefined => {
    const result = find(check(job, crib), kind, of);
    return result?.needs.map(({ ref, fact }) => `${ref}: ${fact}`);
  };

  test.each([
    [
      "  read 0.8716 0.8718 as roughed\n",
      "",
      "stock",
      "bore rear",
      "bore rear: read",
    ],
    ["  ream with r-8755\n", "", "stock", "bore rear", "line layshaft: ream"],
    [
      "  ream with r-8755\n",
      "",
      "pilot-offset",
      "bore front",
      "line layshaft: ream",
    ],
    [
      "  read 0.8714 0.8716 as roughed\n",
      "",
      "pilot-offset",
      "bore rear",
      "bore front: read",
    ],
  ])("without %j, %j: %s of %s needs %s", (piece, by, kind, of, need) => {
    expect(JOB).toContain(piece);
    expect(needsOf(JOB.replace(piece, by), CRIB, kind, of)).toContain(need);
  });

  test.each([
    ["  drive hand\n", "stock", "bore rear", "reamer r-8755: drive"],
    ["  chamfer 0.060\n", "ledge", "bore front", "reamer r-8755: chamfer"],
    ["  point 0.020\n", "ledge", "bore front", "reamer r-8755: point"],
    ["  od 0.8710 to 0.8712\n", "pilot-offset", "bore rear", "pilot p-871: od"],
  ])("without %j in the crib: %s of %s needs %s", (piece, kind, of, need) => {
    expect(CRIB).toContain(piece);
    expect(needsOf(JOB, CRIB.replace(piece, ""), kind, of)).toContain(need);
  });

  test("a pilot without its od says what else would do", () => {
    const crib = CRIB.replace("  od 0.8710 to 0.8712\n", "");
    expect(find(check(JOB, crib), "pilot-offset", "bore rear")?.text).toContain(
      "the od of pilot p-871, or a reading of it",
    );
  });

  test("how a reamer is driven changes what is said of stock, not the stock", () => {
    const crib = CRIB.replace("  drive hand\n", "");
    const thin = JOB.replace("0.8716 0.8718", "0.8754 0.8755");
    expect(ends(find(check(thin, crib), "stock", "bore rear"))).toEqual([
      87560 - 87550,
      87570 - 87545,
      87580 - 87540,
    ]);
    expect(codes(check(thin, CRIB))).toContain("stock-thin");
    expect(codes(check(thin, crib))).not.toContain("stock-thin");
  });
});

describe("a bore in a metal that no table says how to ream", () => {
  // 87560 - 87550 = 10 is under the least for a machine; 87580 - 87540 = 40 is little
  const job = JOB.replace("0.8716 0.8718", "0.8754 0.8755").replace(
    "material bronze-c932",
    "material babbitt-tin",
  );
  const found = (lines: string): readonly string[] =>
    check(job, CRIB.replace("  drive hand\n", lines))
      .findings.filter(({ code }) => code.startsWith("stock-"))
      .map(({ code, entry }) => `${entry ?? ""} ${code}`);

  test("has no stock judged by machine, by hand it has", () => {
    expect(found("  drive machine\n")).toEqual([]);
    expect(found("  drive hand\n")).toContain("line layshaft stock-thin");
  });

  test("has it judged by what its reamer writes, which needs no table", () => {
    expect(found("  drive machine\n  stock 0.0002 to 0.0003\n")).toEqual([
      "line layshaft stock-thin",
      "line layshaft stock-heavy",
      "line layshaft stock-heavy",
    ]);
  });
});

describe("lines that can't be read", () => {
  // with its rear bore nearly at size already, so that there is something to say of each
  const job = JOB.replace("0.8716 0.8718", "0.8754 0.8755");

  test.each([
    [
      "bore rear from 3.5 to 5.0",
      "bore rear from 3.5 to five",
      "pilot-offset",
      "bore rear",
      "pilot-slack",
    ],
    [
      "read 0.8754 0.8755 as",
      "read 0.8754 0,8755 as",
      "stock",
      "bore rear",
      "stock-thin",
    ],
    [
      "ream with r-8755",
      "ream with r-8755 7",
      "stock",
      "bore rear",
      "stock-thin",
    ],
    [
      "depth 1.350 blind",
      "depth 1.350 blnd",
      "ledge",
      "bore front",
      "ledge-fouls",
    ],
  ])(
    "%j as %j: %s of %s waits, and %s says nothing",
    (piece, by, kind, of, code) => {
      expect(job).toContain(piece);
      expect(codes(check(job, CRIB))).toContain(code);
      const found = check(job.replace(piece, by), CRIB);
      expect(find(found, kind, of)).toMatchObject({
        status: "unknown",
        needs: [],
        text: "waits for a line that can't be read",
      });
      expect(codes(found)).not.toContain(code);
    },
  );

  test("a reamer's damaged chamfer silences the ledge and its finding", () => {
    const found = check(JOB, CRIB.replace("chamfer 0.060", "chamfer 0.0.60"));
    expect(find(found, "ledge", "bore front")).toMatchObject({
      status: "unknown",
      needs: [],
    });
    expect(codes(found)).not.toContain("ledge-fouls");
  });

  test("a damaged joint, groove or vent says nothing", () => {
    const job = JOB.replace("part case\n", "part case\n  joint gasket 0.004\n");
    expect(codes(check(job, CRIB))).toContain("joint-not-as-service");
    const damaged = job.replace("ream with", "joint gaskt 0.004\n  ream with");
    expect(codes(check(damaged, CRIB))).not.toContain("joint-not-as-service");
  });
});

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

describe("a bore off its centre", () => {
  // 87170 on the mean is cut to between 87560 and 87580 or 87540: with 20 out of round and 200 as the least, 0.0010 in off needs 420
  const off = (oversize: string): FileCheck["findings"] =>
    check(
      JOB.replace("3.5 to 5.0", "3.5 to 5.0 centre 0.0006, 0.0008"),
      CRIB.replace("+0.0001 to +0.0003", oversize),
    ).findings.filter(({ code }) => code === "wont-clean-up");

  test("is an error where the most that the reamer may cut falls short", () => {
    expect(off("+0.0001 to +0.0003").map(({ level }) => level)).toEqual([
      "error",
    ]);
    expect(off("+0.0001 to +0.0003")[0]?.message).toContain(
      "needs 0.0042 in of stock, and has 0.0039 in.",
    );
  });
  test("a warning where only the least does, and nothing where neither", () => {
    expect(off("+0.0001 to +0.0005").map(({ level }) => level)).toEqual([
      "warning",
    ]);
    expect(off("+0.0004 to +0.0006")).toEqual([]);
  });
  test("and more than the stock can be when it lies further off", () => {
    const far = check(
      JOB.replace("3.5 to 5.0", "3.5 to 5.0 centre 0.001, 0 to 0.003, 0.004"),
      CRIB,
    ).findings.find(({ code }) => code === "wont-clean-up");
    // the worse end counts: √(3² + 4²) = 5 thou, twice that and 0.2 and 2 thou
    expect(far?.message).toContain("needs 0.0122 in");
  });
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

describe("a reamer of a class", () => {
  const metric = (size: string) =>
    check(
      `job winch-3
  units mm
  use "crib.thou"
part case
  material bronze-c932
bore front in case
line layshaft
  bore front from 0 to 30
  ream with r-25
`,
      `shop harbour
  units mm
reamer r-25
  size ${size}
  oversize +0 to +0.001
`,
    );

  const boreOf = ({ results }: FileCheck): Result | undefined =>
    results.find(
      ({ entry, kind }) => entry === "bore front" && kind === "size",
    );

  // DIN 1420 as a reamer maker prints it: a reamer for 25 H7 is 9 to 17 micrometres over; this one cuts up to one more
  test("cuts what its own limits give, which are narrower than the hole's", () => {
    const cut = boreOf(metric("25 mm H7"));
    expect(cut?.low).toBeCloseTo(0.025009, 9);
    expect(cut?.high).toBeCloseTo(0.025018, 9);
  });

  test("too fine a class is no reamer's, and says so", () => {
    const cut = boreOf(metric("25 mm H1"));
    expect(cut?.status).toBe("unknown");
    expect(cut?.text).toContain("too fine");
  });

  test("limits in numbers are taken as they stand", () => {
    const cut = boreOf(metric("25.000 to 25.021"));
    expect(cut?.low).toBeCloseTo(0.025, 9);
    expect(cut?.high).toBeCloseTo(0.025022, 9);
  });
});

describe("a cut that is not made at 20 °C", () => {
  const job = (at: string): string => `job a
  units mm
part case
  material our-alloy
material our-alloy
  expansion 20 um/m-K
reamer r-25
  size 25.010
  oversize +0 to +0.002
reamer r-old
  size 25.010
  oversize +0 to +0.002
  material hss
bore front in case
line front
  bore front from 0 to 30
  ream with r-25
${at === "" ? "" : `  temperature ${at}\n`}`;
  const boreOf = (text: string): Result | undefined =>
    check(text, "shop s\n").results.find(
      ({ entry, kind }) => entry === "bore front" && kind === "size",
    );
  const micrometres = (text: string): readonly (number | null)[] =>
    [boreOf(text)?.low, boreOf(text)?.high].map((metres) =>
      metres === undefined || metres === null
        ? null
        : Math.round(metres * 1e8) / 100,
    );

  // a part at 30 °C shrinks by 20e-6 x 10 = 1/5000 when it cools: 25.010/1.0002 = 25.0050, 25.012/1.0002 = 25.0070
  test("is smaller where the part was warm, larger where it was cold, by its material's expansion", () => {
    expect(micrometres(job(""))).toEqual([25_010, 25_012]);
    expect(micrometres(job("part 20 C"))).toEqual([25_010, 25_012]);
    expect(micrometres(job("part 30 C"))).toEqual([25_005, 25_007]);
    // 25.010/0.9998 = 25.0150, 25.012/0.9998 = 25.0170
    expect(micrometres(job("part 10 C"))).toEqual([25_015, 25_017]);
  });

  test("asks for the material of a warm tool, not of one at 20 °C", () => {
    expect(micrometres(job("part 30 C, tool 20 C"))).toEqual([25_005, 25_007]);
    const warm = boreOf(job("part 30 C, tool 30 C"));
    expect(warm?.status).toBe("unknown");
    expect(warm?.needs.map(({ ref, fact }) => [ref, fact])).toContainEqual([
      "reamer r-25",
      "material",
    ]);
    const told = job("part 20 C, tool 30 C").replace("with r-25", "with r-old");
    // high-speed steel grows by 10 to 13 parts in a million a degree (common practice, no source): 2.5 to 3.3 micrometres here
    const [low] = micrometres(told);
    expect(low).toBeGreaterThan(25_012.4);
    expect(low).toBeLessThan(25_013.3);
  });

  test("is not known where the part's expansion is not", () => {
    const unknown = boreOf(
      job("part 30 C").replace("expansion 20 um/m-K", "modulus 70 GPa"),
    );
    expect(unknown?.status).toBe("unknown");
    expect(unknown?.needs.map(({ ref, fact }) => [ref, fact])).toContainEqual([
      "material our-alloy",
      "expansion",
    ]);
  });
});

describe("an adjustable reamer", () => {
  const crib = CRIB.replace("  size 0.8755\n", "  expands 0.860 to 0.900\n");
  const found = check(JOB, crib);
  // bores from 0.8745 + 0.0008 to 0.8740 + 0.0020: 0.8753 to 0.8760, whose middle is 0.87565; it cuts 0.0002 over its setting
  test("says its setting, which puts the cut in the middle", () => {
    const cut = find(found, "cut-size", "reamer r-8755");
    expect(cut?.text).toContain("set to 0.8755 in");
    expect(ends(cut)[1]).toBeCloseTo((87530 + 87600) / 2, 2);
  });
  test("has its stock worked out at that setting", () => {
    expect(ends(find(found, "stock", "bore rear"))[1]).toBeCloseTo(
      (87530 + 87600) / 2 - 87170,
      2,
    );
  });
});

test("a reamer that is read is taken as read, not as its size says", () => {
  const found = check(
    JOB,
    CRIB.replace("  size 0.8755\n", "  size 0.8755\n  read 0.8753 0.8753\n"),
  );
  expect(ends(find(found, "stock", "bore rear"))[1]).toBeCloseTo(
    87530 + 20 - 87170,
    2,
  );
});

describe("advice on speed", () => {
  const adviceOf = (
    crib: string,
    job = JOB,
  ): ReturnType<typeof reamingAdviceFor> => {
    const file = open(job, crib).open(PATH);
    if (file === undefined) throw new Error("no file");
    return reamingAdviceFor(file.shop, "line layshaft");
  };

  test("by hand: ten to thirty turns a minute, and the speed that they make", () => {
    const [first] = adviceOf(CRIB);
    if (first?.known !== true) throw new Error("no advice");
    const { bore, advice, isAdvice, source } = first.value;
    expect([bore, isAdvice]).toEqual(["bore rear", true]);
    expect(source).toContain("advice");
    expect(advice.turns.low * 60).toBeCloseTo(10, 9);
    expect(advice.turns.high * 60).toBeCloseTo(30, 9);
    expect(advice.feed).toBeUndefined();
    // π · 0.8757 in · 10 a minute
    expect(advice.speed.low).toBeCloseTo(
      (Math.PI * 0.8757 * 0.0254 * 10) / 60,
      9,
    );
  });

  test("by machine: turns follow from the speed, feed from the flutes", () => {
    const [first] = adviceOf(CRIB.replace("drive hand", "drive machine"));
    if (first?.known !== true) throw new Error("no advice");
    const { advice, material } = first.value;
    expect(material).toBe("bronze");
    for (const end of ["low", "high"] as const)
      expect(
        (advice.turns[end] * Math.PI * 0.8757 * 0.0254) / advice.speed[end],
      ).toBeCloseTo(1, 9);
    // six flutes at 0.002 to 0.003 in each
    expect(Number(advice.feed?.low) / 0.0254).toBeCloseTo(0.012, 9);
    expect(Number(advice.feed?.high) / 0.0254).toBeCloseTo(0.018, 9);
  });

  test("names what it lacks, and has none for a bush that is not reamed", () => {
    // by hand the tool's material does not matter
    const byHand = CRIB.replace("  material hss\n", "");
    expect(adviceOf(byHand)[0]).toMatchObject({ known: true });
    const byMachine = byHand.replace("drive hand", "drive machine");
    expect(adviceOf(byMachine)[0]).toMatchObject({
      known: false,
      needs: [{ ref: "reamer r-8755", fact: "material" }],
    });
    expect(
      adviceOf(CRIB, JOB.replace("bronze-c932", "bronze-sintered"))[0],
    ).toMatchObject({ known: false });
    expect(
      adviceOf(CRIB, JOB.replace("ream with r-8755", "cut to 0.8755 to 0.876")),
    ).toEqual([]);
  });
});

test("a line over eight bores and two hundred reamers is worked out, each bore and pilot", () => {
  const bores = Array.from({ length: 8 }, (_, index) => `b${String(index)}`);
  const job = `job long-line
  units inch
  use "crib.thou"
part layshaft
part case
  material iron-grey
${bores
  .map(
    (name) => `journal ${name} on layshaft
  limits 0.8740 to 0.8745
bore ${name} in case
  read 0.8715 0.8716 as roughed
fit ${name} of journal ${name} in bore ${name}
  want 0.0008 to 0.0020
`,
  )
  .join("")}line long
${bores.map((name, index) => `  bore ${name} from ${String(index * 3)} to ${String(index * 3 + 1)}\n`).join("")}  ream with r-100
${bores
  .slice(1)
  .map(
    (name, index) =>
      `  pilot p-875 in bore b${String(index)} for bore ${name}\n`,
  )
  .join("")}`;
  const crib = `${CRIB}${Array.from({ length: 200 }, (_, index) => `reamer r-${String(index)}\n  size ${(0.8656 + index * 0.0001).toFixed(4)}\n  drive hand\n`).join("")}`;
  const found = check(job, crib);
  const stocks = found.results.filter(({ kind }) => kind === "stock");
  expect(stocks.map(({ of }) => of)).toEqual(
    bores.map((name) => `bore ${name}`),
  );
  // r-100 is 0.8656 + 0.0100 = 0.8756
  for (const stock of stocks)
    expect(ends(stock)).toEqual([87560 - 87160, 87560 - 87155, 87560 - 87150]);
  // slack 87560 - 87550 = 10 over 1 in, 4 - 1 = 3 in to the far end
  const pilots = found.results.filter(({ kind }) => kind === "pilot-offset");
  expect(pilots.length).toBe(7);
  for (const pilot of pilots)
    expect(ends(pilot)[2]).toBeCloseTo(10 / 2 + 10 * 3, 2);
  expect(
    found.results.some(
      ({ kind, of }) => kind === "cut-size" && of === "reamer r-100",
    ),
  ).toBe(true);
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
