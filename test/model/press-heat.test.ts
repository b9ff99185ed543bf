// The heat that drops a bush in: whose expansion it is by, as the working says of each material, and which bushes no case is heated for.
import { expect, test } from "vitest";
import type { Result } from "../../server/model/result.ts";
import { checkText, resultOf } from "./check-text.ts";

const job = (materials: string): string => `job winch
  units inch
part case
  material iron-grey
hole front in case
  boss 1.75
  read 1.0000
bush front in hole front
  material bronze-c932
  read od 1.0010
  id 0.8715
press front of bush front in hole front
${materials}`;

function expansions(materials: string): string | undefined {
  const { results } = checkText(job(materials));
  return results
    .find(({ kind }) => kind === "heat-to")
    ?.working.find(({ formula }) => formula.startsWith("expansion of bush"))
    ?.with.replaceAll(/[\d.]+ uin\/in-F /gu, "");
}

test.each([
  ["", "bronze-c932 (shipped), iron-grey (shipped)"],
  [
    "material bronze-c932\n  expansion 18 um/m-K\n",
    "bronze-c932 (as written), iron-grey (shipped)",
  ],
  [
    "material iron-grey\n  expansion 11 um/m-K\n",
    "bronze-c932 (shipped), iron-grey (as written)",
  ],
])("with %j: %s", (materials, said) => {
  expect(expansions(materials)).toBe(said);
});

test("a shop's own material that gives as a plastic does is one, and carbon is none", () => {
  const heat = (facts: string): string | undefined =>
    resultOf(
      checkText(`job rudder
  units mm
part tube
  material steel-1018
hole lower in tube
  boss 160
  read 130.05 at 20 C
bush lower in hole lower
  material own
  read od 130.35 at 20 C
  id 101.2
press lower of bush lower in hole lower
material own
  expansion 5 um/m-K
${facts}`),
      "press lower",
      "heat-to",
    )?.text;
  expect(heat("  modulus 0.8 GPa\n")).toContain("press it in cold");
  // 20 + (130.35/130.05 − 1)/11.7e-6
  expect(heat("  modulus 12 GPa\n")).toBe("217 °C");
  expect(heat("")).toBe("217 °C");
});

test("no case is heated for a bush of plastic or with a lining; a bronze one of the same size has its temperature", () => {
  const heat = (material: string): Result | undefined =>
    resultOf(
      checkText(`
job winch-9
  units mm
part case
  material aluminium-356-t6
hole front in case
  boss 45
  read 26.000 at 20 C
bush front in hole front
  material ${material}
  read od 26.100 at 20 C
  read id 20.02 at 20 C
  length 25
press front of bush front in hole front
`),
      "press front",
      "heat-to",
    );
  for (const material of ["acetal", "ptfe-lined"]) {
    expect(heat(material)).toMatchObject({ status: "unknown", nominal: null });
    expect(heat(material)?.text).toContain("press it in cold");
  }
  // 20 + (26.1/26 − 1)/21.5e-6
  expect(heat("bronze-c932")?.nominal).toBeCloseTo(198.89, 2);
});
