// What is shipped under a designation of the trade. The designations themselves: SAE J461 and J463, AISI and SAE numbers, UNS numbers,
// EN 1561, ISO 3448, as printed beside the shipped figures.
import { describe, expect, test } from "vitest";
import { materials } from "../../server/core/materials/material.ts";
import { oils } from "../../server/core/materials/oils.ts";
import { shippedAs } from "../../server/rules/text/designation.ts";
import { messages } from "./found.ts";

const both = ["material", "oil"];

test.each([
  ["4140", "steel-4140"],
  ["AISI 4140", "steel-4140"],
  ["12L14", "steel-12l14"],
  ["316", "stainless-316"],
  ["17-4", "stainless-17-4ph"],
  ["17", "stainless-17-4ph"],
  ["c932", "bronze-c932"],
  ["C93200", "bronze-c932"],
  ["660", "bronze-c932"],
  ["SAE 660", "bronze-c932"],
  ["bronze-660", "bronze-c932"],
  ["sae_841", "sae-841"],
  ["EN-GJL-200", "iron-grey"],
  ["VG68", "iso-vg-68"],
  ["ISO VG 68", "iso-vg-68"],
  ["68", "iso-vg-68"],
  // and not the iron that is called "class 30 (SAE G3000)"
  ["SAE30", "sae-30"],
  ["10W", "sae-10w"],
  ["10", "iso-vg-10, sae-10, sae-10w"],
])("%s stands for %s", (written, shipped) => {
  expect(shippedAs(written, both).join(", ")).toBe(shipped);
});

const oilTold = (oil: string): readonly string[] => {
  const text = `job w
  units mm
part p
  material steel-4140
journal j on p
bore b in p
fit f of journal j in bore b
  oil ${oil} at 60 C
`;
  return [...messages(text, "line-damaged"), ...messages(text, "name-unknown")];
};

test("an oil that is not shipped is told how the shop's own is written, and of two grades none is offered that is one", () => {
  const LINES =
    "write it as the shop's own, with `oil sae-10w-40` from column 1 and the line `viscosity VALUE cSt at 40 C, VALUE cSt at 100 C` from its sheet set in below";
  expect(oilTold("10w-40")).toEqual([
    `\`10w-40\` is no name, since a name begins with a letter, and no oil of that designation is shipped: ${LINES}, and name it here as \`sae-10w-40\`.`,
  ]);
  expect(oilTold("SAE 10W-40")).toEqual([
    `\`SAE 10W-40\` is no name, since a name is one word, and no oil of that designation is shipped: ${LINES}, and name it here as \`sae-10w-40\`.`,
  ]);
  expect(oilTold("sae-10w-40")).toEqual([
    `There is no oil \`sae-10w-40\` here or in the files that are used: ${LINES}, or name one that is shipped, as "thou explain oil" lists them.`,
  ]);
  expect(oilTold("10W40")[0]).toContain("`oil sae-10w40`");
  expect(oilTold("9")[0]).toContain("`oil oil-9`");
  expect(oilTold("sae-31")[0]).toContain("did you mean `sae-30`");
});

test("a misspelt word behind a number is told though another fault follows it", () => {
  const text = `job w
  units mm
part p
journal j on p
  read 20.01 20.02 wiht mic-1 om 2026-11-05
`;
  expect(messages(text, "line-damaged")).toEqual([
    "`wiht` does not fit here: did you mean `with`?",
  ]);
});

test.each(["", "h7", "C45", "12", "15W-40", "SAE 15W-40", "25", "bronze"])(
  "%j stands for nothing that is shipped",
  (written) => {
    expect(shippedAs(written, both)).toEqual([]);
  },
);

test("only what the place takes is meant", () => {
  expect(shippedAs("68", ["material"])).toEqual([]);
  expect(shippedAs("4140", ["oil"])).toEqual([]);
  expect(shippedAs("4140", ["reamer"])).toEqual([]);
});

describe("every shipped name that has a number of two figures stands for itself first", () => {
  test.each([...materials, ...oils].map(({ name }) => name))("%s", (name) => {
    const shipped = shippedAs(name, both);
    if (/\d\d/u.test(name)) expect(shipped).toContain(name);
    else expect(shipped).toEqual([]);
  });
});
