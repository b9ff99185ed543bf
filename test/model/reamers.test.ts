// What a reamer cuts: of a class, read, set, warm; and advice on how fast to turn it. Figures are worked out here, with nothing of
// server/core.
import { describe, expect, test } from "vitest";
import { reamingAdviceFor } from "../../server/model/evaluate/reaming-advice.ts";
import type { FileCheck, Result } from "../../server/model/result.ts";
import { check, CRIB, ends, find, JOB, open, PATH } from "./two-bores.ts";

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
