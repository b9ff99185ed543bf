// What each shipped material and oil is called, is, and has its figures from, word for word, in a golden file (`npm test -- -u` writes it anew; read
// the difference before it is committed). The figures are materials.test.ts's.
import { expect, test } from "vitest";
import { materials } from "../../../server/core/materials/material.ts";
import { oils } from "../../../server/core/materials/oils.ts";

/** All texts in a value, each with the names that lead to it. */
function* textsIn(value: unknown, way = ""): Generator<string> {
  if (typeof value === "string") yield `${way}: ${value}`;
  else if (typeof value === "object" && value !== null)
    for (const [name, inner] of Object.entries(value))
      yield* textsIn(inner, way === "" ? name : `${way} ${name}`);
}

test("the words of what is shipped", async () => {
  const lines = [...materials, ...oils].flatMap((each) => [
    each.name,
    ...[...textsIn(each)].map((text) => `  ${text}`),
  ]);
  await expect(`${lines.join("\n")}\n`).toMatchFileSnapshot(
    "../../fixtures/shipped.txt",
  );
});
