import { expect, test } from "vitest";
import { reamingAdvice } from "../../../server/core/line/reaming-advice.ts";
import { known, refusal } from "./answers.ts";

const inch = 0.0254;

test("turns are 12·speed/(π·diameter), in feet a minute and inches", () => {
  const advice = known(
    reamingAdvice(0.5 * inch, "cast-iron", "machine", "hss", 6),
  );
  expect(60 * advice.turns.low).toBeCloseTo((12 * 20) / (Math.PI * 0.5), 6);
  expect(60 * advice.turns.high).toBeCloseTo((12 * 65) / (Math.PI * 0.5), 6);
  expect((advice.speed.high * 60) / 0.3048).toBeCloseTo(65, 9);
});

test("feed is 0.002 to 0.003 in for each flute; without flutes none is advised", () => {
  const advice = known(
    reamingAdvice(0.5 * inch, "steel", "machine", "carbide", 6),
  );
  expect((advice.feed?.low ?? NaN) / inch).toBeCloseTo(0.012, 9);
  expect((advice.feed?.high ?? NaN) / inch).toBeCloseTo(0.018, 9);
  expect(
    known(reamingAdvice(0.5 * inch, "steel", "machine", "carbide")).feed,
  ).toBeUndefined();
});

test("says what it rests on", () => {
  expect(known(reamingAdvice(0.02, "steel", "machine", "hss")).from).toBe(
    "read",
  );
  expect(known(reamingAdvice(0.02, "bronze", "machine", "hss")).from).toBe(
    "practice",
  );
});

test("by hand 10 to 30 turns a minute, whatever the material", () => {
  const advice = known(reamingAdvice(0.022, "bronze", "hand", "hss", 6));
  expect(60 * advice.turns.low).toBeCloseTo(10, 9);
  expect(advice.speed.high).toBeCloseTo(0.5 * Math.PI * 0.022, 12);
  expect(advice.feed).toBeUndefined();
});

test("every class has a range for both tool materials, carbide the faster", () => {
  for (const material of [
    "steel",
    "stainless",
    "cast-iron",
    "bronze",
    "brass",
    "aluminium",
    "plastic",
  ] as const) {
    const hss = known(reamingAdvice(0.02, material, "machine", "hss")).speed;
    const carbide = known(
      reamingAdvice(0.02, material, "machine", "carbide"),
    ).speed;
    expect(
      0 < hss.low &&
        hss.low < hss.high &&
        hss.high <= carbide.high &&
        hss.low < carbide.low,
    ).toBe(true);
  }
});

test("refuses what is no reamer", () => {
  expect(refusal(reamingAdvice(0, "steel", "hand", "hss"))).toContain("100 mm");
  expect(refusal(reamingAdvice(0.2, "steel", "hand", "hss"))).toContain(
    "100 mm",
  );
  expect(refusal(reamingAdvice(0.02, "steel", "hand", "hss", 2.5))).toContain(
    "flutes",
  );
});
