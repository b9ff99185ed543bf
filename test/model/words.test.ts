// The tables of words of the model, in a golden file (`npm test -- -u` writes it anew; read the difference before it is committed): what each kind
// of result is and is called, how sure it is, the verdicts, by which result an entry is known, and what there is to know of a material. That the
// kinds are those that there are, and each in its unit, units-of-results.test.ts holds.
import { expect, test } from "vitest";
import { MATERIAL_PROPERTIES } from "../../server/model/material-properties.ts";
import {
  HEADLINES,
  RESULT_KINDS,
  RESULT_NAMES,
  resultName,
  statusWord,
  VERDICT_WORDS,
} from "../../server/model/result-kinds.ts";

test("each word of each table", async () => {
  const lines = Object.entries({
    ...{ RESULT_KINDS, RESULT_NAMES },
    ...{ VERDICT_WORDS, HEADLINES },
    MATERIAL_PROPERTIES: Object.fromEntries(
      MATERIAL_PROPERTIES.map(([key, name, { inch, mm }]) => [
        key,
        `${name} (${inch}; ${mm})`,
      ]),
    ),
  }).flatMap(([table, words]) => [
    table,
    ...Object.entries(words).map(([key, word]) => `  ${key}: ${word}`),
  ]);
  await expect(`${lines.join("\n")}\n`).toMatchFileSnapshot(
    "../fixtures/words.txt",
  );
});

test("every kind has a name, and one of a later version is called as it is written", () => {
  expect(Object.keys(RESULT_NAMES)).toEqual(Object.keys(RESULT_KINDS));
  expect(resultName("pilot-offset")).toBe(RESULT_NAMES["pilot-offset"]);
  expect(resultName("not-yet-known")).toBe("not yet known");
});

test("how sure a result is stands beside each but that a step is next or waits, which is no figure", () => {
  for (const kind of Object.keys(RESULT_KINDS))
    for (const status of ["measured", "predicted"] as const)
      expect(statusWord({ kind, status })).toBe(kind === "ready" ? "" : status);
  expect(statusWord({ kind: "ready", status: "unknown" })).toBe("unknown");
});

test("every kind of result has a name of its own", () => {
  expect(Object.keys(RESULT_NAMES)).toEqual(Object.keys(RESULT_KINDS));
  const names = Object.keys(RESULT_KINDS).map(resultName);
  expect(new Set(names).size).toBe(names.length);
});
