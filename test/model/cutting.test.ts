// What a line comes to as it is cut: stock, pilots' offset, the ledge of a blind bore. Figures are worked out here in whole
// hundred-thousandths of an inch, with nothing of server/core.
import { describe, expect, test } from "vitest";
import type { FileCheck, Result } from "../../server/model/result.ts";
import { reamingAdviceFor } from "../../server/model/evaluate/reaming-advice.ts";
import { SILENT } from "../../server/model/known.ts";
import { findingsOfEntry } from "../../server/rules/entry-findings.ts";
import {
  check,
  codes,
  CRIB,
  ends,
  find,
  JOB,
  open,
  PATH,
} from "./two-bores.ts";

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
      "line layshaft",
    ],
    [
      "read 0.8754 0.8755 as",
      "read 0.8754 0,8755 as",
      "stock",
      "bore rear",
      "stock-thin",
      "bore rear",
    ],
    [
      "ream with r-8755",
      "ream with r-8755 7",
      "stock",
      "bore rear",
      "stock-thin",
      "line layshaft",
    ],
    [
      "depth 1.350 blind",
      "depth 1.350 blnd",
      "ledge",
      "bore front",
      "ledge-fouls",
      "hole front",
    ],
  ])(
    "%j as %j: %s of %s waits, and %s says nothing",
    (piece, by, kind, of, code, entry) => {
      expect(job).toContain(piece);
      expect(codes(check(job, CRIB))).toContain(code);
      const found = check(job.replace(piece, by), CRIB);
      expect(find(found, kind, of)).toMatchObject({
        status: "unknown",
        needs: [],
        text: `waits for a line that can't be read in ${entry}`,
      });
      expect(codes(found)).not.toContain(code);
    },
  );

  // with a stock of its own, that the rear bore is short of
  const crib = CRIB.replace("  flutes", "  stock 0.005 to 0.010\n  flutes");

  test.each(["chamfer", "point"])(
    "a reamer's damaged %s silences the ledge and its finding",
    (word) => {
      const found = check(JOB, crib.replace(`${word} 0.0`, `${word} 0.0.`));
      expect(codes(check(JOB, crib))).toContain("ledge-fouls");
      expect(find(found, "ledge", "bore front")).toMatchObject({
        status: "unknown",
        needs: [],
      });
      expect(codes(found)).not.toContain("ledge-fouls");
    },
  );

  test.each([
    ["drive hand", "drive hnd"],
    ["stock 0.005", "stock 0.0.05"],
  ])(
    "a reamer's %s as %s leaves the stock, and nothing is said of its passes, nor is it thin or heavy",
    (piece, by) => {
      const [whole, found] = [crib, crib.replace(piece, by)].map((each) =>
        check(job, each),
      );
      if (whole === undefined || found === undefined) throw new Error("none");
      expect(codes(whole)).toContain("stock-thin");
      expect(codes(found)).not.toContain("stock-thin");
      const [said, left] = [whole, found].map((each) =>
        find(each, "stock", "bore rear"),
      );
      expect(said?.text).toContain("pass");
      expect(left).toMatchObject({
        low: said?.low,
        high: said?.high,
        text: said?.text.split(",")[0],
        needs: [],
        working: said?.working.slice(0, -1),
      });
    },
  );

  test.each([
    ["drive hand", "drive hnd"],
    ["material hss", "material hs"],
    ["flutes 6 left", "flutes 6 lft"],
  ])(
    "of a reamer with %s as %s no advice is given or waited for",
    (piece, by) => {
      const advice = (text: string) => {
        const project = open(job, text);
        project.check(PATH);
        const { shop } = project.open(PATH) ?? {};
        return shop === undefined
          ? []
          : reamingAdviceFor(shop, "line layshaft");
      };
      expect(advice(crib).map(({ known }) => known)).toEqual([true, true]);
      expect(advice(crib.replace(piece, by))).toEqual([SILENT, SILENT]);
    },
  );

  test("a damaged joint, groove or vent says nothing", () => {
    const job = JOB.replace("part case\n", "part case\n  joint gasket 0.004\n");
    expect(codes(check(job, CRIB))).toContain("joint-not-as-service");
    const damaged = job.replace("ream with", "joint gaskt 0.004\n  ream with");
    expect(codes(check(damaged, CRIB))).not.toContain("joint-not-as-service");
  });
});

describe("a bore off its centre", () => {
  // 87180 at the largest is cut to between 87560 and 87580: with 200 as the least, 0.0011 in off needs 420
  const off = (oversize: string): FileCheck["findings"] =>
    check(
      JOB.replace("3.5 to 5.0", "3.5 to 5.0 centre 0.00066, 0.00088"),
      CRIB.replace("+0.0001 to +0.0003", oversize),
    ).findings.filter(({ code }) => code === "wont-clean-up");

  test("is an error where the most that the reamer may cut falls short", () => {
    expect(off("+0.0001 to +0.0003").map(({ level }) => level)).toEqual([
      "error",
    ]);
    expect(off("+0.0001 to +0.0003")[0]?.message).toContain(
      "needs 0.0042 in of stock over its largest place, and has 0.0038 in.",
    );
  });
  test("a warning where only the least does, and nothing where neither", () => {
    expect(off("+0.0001 to +0.0005").map(({ level }) => level)).toEqual([
      "warning",
    ]);
    expect(off("+0.0005 to +0.0007")).toEqual([]);
  });
  test("and more than the stock can be when it lies further off", () => {
    const far = check(
      JOB.replace("3.5 to 5.0", "3.5 to 5.0 centre 0.001, 0 to 0.003, 0.004"),
      CRIB,
    ).findings.find(({ code }) => code === "wont-clean-up");
    // the worse end counts: √(3² + 4²) = 5 thou, twice that and 2 thou
    expect(far?.message).toContain("needs 0.0120 in");
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
