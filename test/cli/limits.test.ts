// `thou limits`: words in, the contract's answers out. That the limits themselves are the standards' is tested in test/core/fits.
import { describe, expect, test } from "vitest";
import { inchFitLimits } from "../../server/core/fits/b4-1.ts";
import { isoLimits } from "../../server/core/fits/iso-286.ts";
import { folderWith, thou } from "./in-process.ts";

interface Answer {
  readonly asked: string;
  readonly size?: number;
  readonly code?: string;
  readonly kind?: string;
  readonly lower?: number;
  readonly upper?: number;
  readonly unit?: string;
  readonly error?: string;
}

async function asJson(
  words: readonly string[],
  stdin?: string | readonly (string | Uint8Array)[],
): Promise<{ code: number; answers: readonly Answer[] }> {
  const cwd = await folderWith({});
  const { out, code, err } = await thou(
    ["limits", "--format", "json", ...words],
    { cwd, ...(stdin === undefined ? {} : { stdin }) },
  );
  expect(err).toBe("");
  return { code, answers: JSON.parse(out) as Answer[] };
}

function valid<T>(answer: { valid: true; value: T } | { valid: false }): T {
  if (!answer.valid) throw new Error("refused");
  return answer.value;
}

describe("as JSON", () => {
  test("has the contract's keys in its order", async () => {
    const { answers } = await asJson(["25 H7", "25 Q7"]);
    expect(answers.map((answer) => Object.keys(answer))).toEqual([
      ["asked", "size", "code", "kind", "lower", "upper", "unit"],
      ["asked", "error"],
    ]);
  });

  test("answers in the order asked, a fit with its hole and then its shaft", async () => {
    const { code, answers } = await asJson([
      "0.875 RC4",
      "25 mm H7/f7",
      "20 g6",
    ]);
    const rc4 = valid(inchFitLimits(0.022225, "RC", 4));
    const h7 = valid(isoLimits(0.025, "H", 7));
    const f7 = valid(isoLimits(0.025, "f", 7));
    const g6 = valid(isoLimits(0.02, "g", 6));
    const answer = (
      asked: string,
      size: number,
      of: string,
      kind: string,
      { lower, upper }: { lower: number; upper: number },
    ) => ({
      asked,
      size,
      code: of,
      kind,
      lower,
      upper,
      unit: "m",
    });
    expect(code).toBe(0);
    expect(answers).toEqual([
      answer("0.875 RC4", 0.022225, "RC4", "hole", rc4.hole),
      answer("0.875 RC4", 0.022225, "RC4", "shaft", rc4.shaft),
      answer("25 mm H7/f7", 0.025, "H7", "hole", h7),
      answer("25 mm H7/f7", 0.025, "f7", "shaft", f7),
      answer("20 g6", 0.02, "g6", "shaft", g6),
    ]);
  });

  // 25.4 mm to the inch (1959): the same size, however it is written, has the same limits
  test.each([
    [
      "25.4 H7",
      [
        "25.4 mm H7",
        "1 in H7",
        '1" H7',
        "2.54 cm H7",
        "25.4mm H7",
        "  25.4\tH7 ",
        "1000 thou H7",
        "25400 um H7",
        "0.0254 m H7",
        "25.40 H 7",
      ],
    ],
    [
      "0.875 RC4",
      ["7/8 RC4", "7/8 in RC4", ".875 RC4", "22.225 mm RC4", "0.875in RC4"],
    ],
    ["1.1875 RC4", ["1 3/16 RC4", "1-3/16 in RC4"]],
    ["25 H7/f7", ["25 H7 / f7", "25H7/f7"]],
    ["25 m6", ["25 mm m6", "25m6"]],
  ])("%s is the same as %j", async (asked, others) => {
    const { answers } = await asJson([asked]);
    const bare = answers.map((answer) => ({ ...answer, asked: "" }));
    expect(bare.every((answer) => answer.error === undefined)).toBe(true);
    for (const other of others) {
      const same = await asJson([other]);
      if (other === "25.40 H 7")
        expect(same.answers[0]?.error).toContain("did you mean H7");
      else
        expect(
          same.answers.map((answer) => ({ ...answer, asked: "" })),
          other,
        ).toEqual(bare);
    }
  });

  test.each([
    ["", "it takes a size and a class"],
    ["H7", "it takes a size and a class"],
    ["25", "it takes a size and a class"],
    ["25 mm", "no class"],
    ["25,4 H7", "25,4 is no number; did you mean 25.4?"],
    ["25.4.1 H7", "25.4.1 is no number"],
    ["7/0 H7", "7/0 is no number"],
    ["25 furlong H7", "furlong is no unit of length"],
    ["25 mm H7 f7", "a fit is one word, its hole first, as in 25 mm H7/f7"],
    ["25 h7 f7", "a fit is one word"],
    ["7/8 H7", "and a fraction is not: write 7/8 in H7"],
    ["1 1/4 H7", "write 1 1/4 in H7"],
    ["25 N H7", "N is no unit of length"],
    ["25 h7/H7", "did you mean H7/h7"],
    ["25 rc4", "did you mean RC4"],
    ["25 H99", "no 99"],
    ["4000 H7", "3150"],
    ["-5 H7", "greater than 0"],
    ["0 H7", "greater than 0"],
    [
      "25 RC4",
      "a size without a unit is in inches for it: for millimetres write 25 mm RC4",
    ],
  ])("refuses %j: %s", async (asked, because) => {
    const { code, answers } = await asJson(["--", asked]);
    expect(code).toBe(1);
    expect(answers).toEqual([
      { asked, error: expect.stringContaining(because) as string },
    ]);
  });

  test("one error among many makes the code 1 and takes nothing from the others", async () => {
    const { code, answers } = await asJson(["25 H7", "nonsense", "20 g6"]);
    expect(code).toBe(1);
    expect(answers.map((answer) => answer.error === undefined)).toEqual([
      true,
      false,
      true,
    ]);
  });
});

describe("standard input", () => {
  test("is read a line at a time, in its place among the others, in whatever pieces it comes", async () => {
    const text = "\u{FEFF}25 H7\r\n\r\n  20 g6\n25 \u{3BC}m H7\r30 H8";
    const pieces = [...Buffer.from(text)].map((byte) => new Uint8Array([byte]));
    for (const stdin of [text, pieces]) {
      const { answers } = await asJson(
        ["10 H7", "-", "12 H7"],
        typeof stdin === "string" ? stdin : stdin,
      );
      expect(answers.map(({ asked }) => asked)).toEqual([
        "10 H7",
        "25 H7",
        "20 g6",
        "25 \u{3BC}m H7",
        "30 H8",
        "12 H7",
      ]);
    }
  });

  test("may be long: every line has its answer, in order", async () => {
    const lines = Array.from(
      { length: 5000 },
      (_, index) => `${(index % 400) + 1} H7`,
    );
    const { answers } = await asJson(["-"], `${lines.join("\n")}\n`);
    expect(answers.map(({ asked }) => asked)).toEqual(lines);
  });

  test("may be empty", async () => {
    expect(await asJson(["-"], "")).toEqual({ code: 0, answers: [] });
    expect(await asJson(["-"], "\n\n")).toEqual({ code: 0, answers: [] });
  });

  test("is read once, and is UTF-8", async () => {
    const cwd = await folderWith({});
    expect(await thou(["limits", "-", "-"], { cwd })).toEqual({
      code: 2,
      out: "",
      err: "thou: Standard input (-) can be read only once.\n",
    });
    expect(
      await thou(["limits", "-"], { cwd, stdin: new Uint8Array([0x32, 0xff]) }),
    ).toMatchObject({
      code: 2,
      err: "thou: Standard input cannot be read: it is not UTF-8; save it as UTF-8.\n",
    });
  });

  test("that breaks off in the middle of a character has the answers until there, as whole JSON", async () => {
    const cwd = await folderWith({});
    const { code, out, err } = await thou(["limits", "-", "--format", "json"], {
      cwd,
      stdin: new Uint8Array([...new TextEncoder().encode("25 H7\n"), 0xe2]),
    });
    expect(code).toBe(2);
    expect(JSON.parse(out)).toMatchObject([{ asked: "25 H7" }]);
    expect(err).toContain("it is not UTF-8");
  });
});

describe("as text", () => {
  test("stands in columns, in the unit that was asked in, with all the digits that there are", async () => {
    const cwd = await folderWith({});
    const { out, code } = await thou(
      ["limits", "25 H7", "25 js7", "0.875 RC4", "7/8 in H7", "x\u{1B}[31m"],
      { cwd },
    );
    expect(code).toBe(1);
    expect(out.split("\n")).toEqual([
      // 25 H7 is 25 +0.021/0 and 25 js7 half of 0.021 either way: ISO 286-2:2010, Tables 6 and 22, from memory
      "25 H7      H7    hole   25.000 to 25.021 mm",
      "25 js7     js7   shaft  24.9895 to 25.0105 mm",
      expect.stringMatching(
        /^0\.875 RC4 {2}RC4 {3}hole {3}0\.8750 to 0\.\d{4,6} in$/,
      ),
      expect.stringMatching(
        /^0\.875 RC4 {2}RC4 {3}shaft {2}0\.\d{4,6} to 0\.\d{4,6} in$/,
      ),
      // 0.021 mm is 0.000827 in
      "7/8 in H7  H7    hole   0.875000 to 0.875827 in",
      'x\\x1b[31m  it takes a size and a class, together in quotes, as in "25 H7" or "0.875 in RC4"',
      "",
    ]);
  });
});

describe("a measured pair", () => {
  // ISO 286-2: 25 H7 is +21/0, f7 -20/-41 and g6 -7/-20, so H7/f7 clears 20 to 62 and H7/g6 7 to 41 micrometres
  test("gives its clearance and the fits that hold it, nearest first", async () => {
    const { code, answers } = await asJson(["25.013/24.981 mm"]);
    expect(code).toBe(0);
    const [pair] = answers as unknown as readonly {
      readonly least: number;
      readonly most: number;
      readonly size: number;
      readonly kind: string;
      readonly nearest: readonly { readonly code: string }[];
    }[];
    expect(pair).toMatchObject({
      asked: "25.013/24.981 mm",
      size: 0.025,
      kind: "pair",
      unit: "m",
    });
    expect(pair?.least).toBeCloseTo(32e-6, 12);
    expect(pair?.most).toBeCloseTo(32e-6, 12);
    const near = (word: string) =>
      pair?.nearest.find((each) => each.code === word);
    expect(near("H7/f7")).toEqual({
      code: "H7/f7",
      least: 20e-6,
      most: 62e-6,
      outside: 0,
    });
    expect(near("H7/g6")).toEqual({
      code: "H7/g6",
      least: 7e-6,
      most: 41e-6,
      outside: 0,
    });
  });

  test("takes ranges and inches, and says how far it lies outside", async () => {
    const cwd = await folderWith({});
    const { out, code } = await thou(
      ["limits", "0.8752 to 0.8754 / 0.8743 in", "25.5/24.9 mm"],
      { cwd },
    );
    expect(code).toBe(0);
    // B4.1 at 0.875 in: RC2 clears 0.3 to 1.2 thousandths; LT2, which may interfere, is not named
    expect(out).toContain("clearance 0.0009 to 0.0011 in; at 0.8750 in");
    expect(out).toMatch(/RC2 +0\.0003 to 0\.0012 in, which holds it/);
    expect(out).not.toContain("LT2");
    // 25 H11 is +130/0, c11 -110/-240: 110 to 370 micrometres, and 600 lie 230 beyond
    expect(out).toMatch(/H11\/c11 0\.110 to 0\.370 mm, 0\.230 mm short of it/);
  });

  test.each([
    ["25.0/24.9", "takes its unit"],
    ["25,01/24.98 mm", "did you mean 25.01?"],
    ["25.0/24.9 kg", "kg is no unit of length"],
    ["4000.1/4000.0 mm", "no fit of ISO 286 reaches this size"],
    ["25.0/12.5 mm", "differ by more than a tenth"],
    ["25.1 to 25.0 / 24.9 mm", "from the smaller to the larger"],
    ["0.0/0.1 mm", "above zero"],
  ])("%s is refused with the way out", async (asked, because) => {
    const { code, answers } = await asJson([asked]);
    expect(code).toBe(1);
    expect(answers[0]?.error).toContain(because);
  });
});
