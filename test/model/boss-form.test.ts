// How far a press may count on its boss: a plain ring where the hole is as deep as the bush is long, stiffer where it goes on, none at the
// free end of a bush that stands out. Which it is stands in the working of the pressure.
import { expect, test } from "vitest";
import { checkText, resultOf } from "./check-text.ts";

const press = (depth: string, length: string): string => `job winch
  units inch
part case
  material iron-grey
hole front in case
  boss 1.75
  ${depth}
  read 1.0000
bush front in hole front
  material bronze-c932
  read od 1.0010
  id 0.8715
  ${length}
press front of bush front in hole front
  friction 0.1
`;
const pressure = (depth: string, length: string) => {
  const found = resultOf(
    checkText(press(depth, length)),
    "press front",
    "contact-pressure",
  );
  if (found?.low == null || found.high == null || found.nominal === null)
    throw new Error("no pressure");
  return {
    low: found.low,
    nominal: found.nominal,
    high: found.high,
    said: found.working
      .map((each) => `${each.formula} ${each.with}`)
      .join("\n"),
  };
};
const plain = pressure("depth 1.250 through", "length 1.250");

test("a hole as deep as the bush is long is a plain ring", () => {
  expect(plain.low).toBe(plain.high);
  expect(plain.said).toContain("hole front is taken as one");
});

test.each([
  ["no depth", "finish 32 uin Ra", "length 1.250"],
  ["no length", "depth 1.250 through", "finish 32 uin Ra"],
])("so is one with %s written", (_, depth, length) => {
  expect(pressure(depth, length).high).toBeCloseTo(plain.high, -4);
  expect(pressure(depth, length).said).toContain("is taken as one");
});

test("a deeper hole and a blind one lie between that and a rigid boss", () => {
  const deeper = pressure("depth 1.251 through", "length 1.250");
  const blind = pressure("depth 1.250 blind", "length 1.250");
  expect(deeper.said).toContain(
    "hole front is deeper than bush front is long: between a plain ring and a rigid boss",
  );
  expect(blind.said).toContain(
    "hole front is blind: between a plain ring and a rigid boss",
  );
  for (const { low, nominal, high } of [deeper, blind]) {
    expect(low).toBe(plain.low);
    expect(high).toBeGreaterThan(low * 1.01);
    expect(nominal).toBeCloseTo((low + high) / 2, 3);
  }
});

test("a bush that stands out is told first, of a blind hole as well", () => {
  for (const bottom of ["through", "blind"])
    expect(pressure(`depth 1.249 ${bottom}`, "length 1.250").said).toContain(
      "bush front stands out of hole front",
    );
});

test("of a boss that is split along its axis nothing is asked, and of one of which that can't be read nothing is said", () => {
  const said = (split: string): string | undefined =>
    resultOf(
      checkText(
        press("depth 1.250 through", "length 1.250").replace(
          "  material iron-grey\n",
          split,
        ),
      ),
      "press front",
      "contact-pressure",
    )?.text;
  expect(said("")).toBe("needs the material of part case");
  expect(said("  split along\n")).toBe(
    "not valid here, because the boss is split along its axis and is no closed ring",
  );
  expect(said("  split alnog\n")).toBe(
    "waits for a line that can't be read in part case",
  );
});
