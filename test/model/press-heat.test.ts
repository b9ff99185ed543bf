// Whose expansion a bush is dropped in by: the working says of each material whether its figure is the job's own or the shipped one.
import { expect, test } from "vitest";
import { checkText } from "./check-text.ts";

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
