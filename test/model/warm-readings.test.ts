// Readings away from 20 °C, of a part and a gauge that are equally warm or not: by ISO 1's linear expansion, written out here.
import { describe, expect, test } from "vitest";
import { checkText, resultOf } from "./check-text.ts";

const PART = 12e-6;
/** Of a steel gauge block, ISO 3650:1998, 6.2.2 (from memory). */
const STEEL = 11.5e-6;

function checked(read: string, temperature = "") {
  return checkText(`job winch-9
  units mm
${temperature}material own
  expansion 12 um/m-K
gauge mic-1
  kind micrometer
  resolution 0.001
  uncertainty 0.002
part layshaft
  material own
journal front on layshaft
  limits 24.9 to 25.1
  ${read}
`);
}

/** In m. */
const size = (...of: Parameters<typeof checked>): number =>
  Number(resultOf(checked(...of), "journal front", "size")?.nominal);

/** As tenths of a nanometre. */
const at20 = (part: number, gauge: number): number =>
  Math.round(
    ((0.025 * (1 + STEEL * (gauge - 20))) / (1 + PART * (part - 20))) * 1e10,
  ) / 1e10;

describe("at 20 °C", () => {
  test.each([
    ["read 25.000", 20, 20],
    ["read 25.000 at 40 C", 40, 40],
    ["read 25.000 at 40 C, gauge 20 C", 40, 20],
    ["read 25.000 at 40 C, gauge 30 C", 40, 30],
    ["read 25.000 at 20 C, gauge 40 C", 20, 40],
    ["read 25.000 at 68 F, gauge 104 F", 20, 40],
    ["read 25.000 at -5 C", -5, -5],
  ])("%s: a part at %d °C, a gauge at %d °C", (read, part, gauge) => {
    expect(size(read)).toBeCloseTo(at20(part, gauge), 10);
  });

  test("the job's temperature counts for both", () => {
    expect(size("read 25.000", "  temperature 35 C\n")).toBeCloseTo(
      at20(35, 35),
      10,
    );
  });

  test("a line's own stands before the job's, its gauge's too", () => {
    expect(
      size("read 25.000 at 40 C, gauge 30 C", "  temperature 35 C\n"),
    ).toBeCloseTo(at20(40, 30), 10);
  });
});

describe("how sure it is", () => {
  /** U, m. */
  const sure = (read: string): number =>
    Number(resultOf(checked(read), "journal front", "uncertainty")?.nominal);

  test("a gauge's own temperature adds what its last digit leaves open", () => {
    const alike = sure("read 25.000 with mic-1 at 40 C");
    const written = sure("read 25.000 with mic-1 at 40 C, gauge 40 C");
    const coarse = (STEEL * 0.025) / 2 / Math.sqrt(3);
    // U is 1.96 standard uncertainties where nothing is repeated
    expect((written / 1.96) ** 2 - (alike / 1.96) ** 2).toBeCloseTo(
      coarse ** 2,
      15,
    );
    expect(sure("read 25.000 with mic-1 at 40 C, gauge 40.00 C")).toBeLessThan(
      written,
    );
  });

  test("so does one at 20 °C that is written", () => {
    expect(sure("read 25.000 with mic-1 at 20 C, gauge 20 C")).toBeGreaterThan(
      sure("read 25.000 with mic-1 at 20 C"),
    );
  });
});

describe("what is wrong", () => {
  const messages = (read: string) =>
    checked(read).findings.map(({ message }) => message);

  test("a gauge's temperature without a unit, or without the part's", () => {
    expect(messages("read 25.000 at 40 C, gauge 20").join("\n")).toContain(
      "`20`",
    );
    expect(messages("read 25.000 gauge 20 C").join("\n")).toContain(
      "A word is missing before `20`",
    );
  });
});

test("the working says both temperatures and both expansions", () => {
  const working = (read: string) =>
    resultOf(checked(read), "journal front", "size")?.working.map(
      (each) => each.with,
    );
  expect(working("read 25.000 at 40 C, gauge 20 C")).toContain(
    "T 40 °C, part 12.0 um/m-K; Tg 20 °C, scale 11.5 um/m-K (steel)",
  );
  expect(working("read 25.000 at 40 C")).toContain(
    "T 40 °C, part 12.0 um/m-K; Tg 40 °C, as the part, scale 11.5 um/m-K (steel)",
  );
});
