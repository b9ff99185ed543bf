// The levels that a user sets: what can be taken is, what can't gets a sentence, and nothing that could be written throws.
import { Ajv } from "ajv";
import fc from "fast-check";
import { expect, test } from "vitest";
import manifest from "../../package.json" with { type: "json" };
import { levelled, readLevels } from "../../server/ide/levels.ts";
import type { Finding } from "../../server/model/result.ts";
import { CODES } from "../../server/rules/codes.ts";

const finding: Finding = {
  code: "out-of-round",
  level: "hint",
  place: { file: "/a.thou", line: 3, start: 2, end: 6 },
  message: "It is oval.",
  entry: "journal front",
  related: [],
  fixes: [],
  accepted: null,
};

test("a level that is set takes the place of the shipped one, and off takes the finding away", () => {
  const { levels, problems } = readLevels({
    "out-of-round": "error",
    taper: "off",
  });
  expect(problems).toEqual([]);
  expect(levelled(finding, levels)?.level).toBe("error");
  expect(levelled({ ...finding, code: "taper" }, levels)).toBeUndefined();
  expect(levelled({ ...finding, code: "worn" }, levels)?.level).toBe("hint");
  expect(levelled({ ...finding, code: "toString" }, levels)?.level).toBe(
    "hint",
  );
});

test("what a concession accepts stays information, and says so, unless its code is off", () => {
  const accepted = { ...finding, accepted: "oval-front" };
  const louder = levelled(accepted, { "out-of-round": "error" });
  expect(louder?.level).toBe("information");
  expect(louder?.message).toContain("oval-front");
  expect(levelled(accepted, { "out-of-round": "off" })).toBeUndefined();
});

test.each([
  [{ "out-of-ruond": "off" }, /no finding "out-of-ruond" .*out-of-round/],
  [{ taper: "warn" }, /"warn" is no level .*warning.*taper keeps its own/],
  [{ taper: 3 }, /"3" is no level/],
  [{ taper: null }, /"null" is no level/],
  ["off", /not a list of codes/],
  [["taper"], /not a list of codes/],
])("%j gets a sentence and changes nothing", (written, sentence) => {
  const { levels, problems } = readLevels(written);
  expect(levels).toEqual({});
  expect(problems).toEqual([expect.stringMatching(sentence)]);
});

test("what is good beside something bad is still taken", () => {
  const { levels, problems } = readLevels({ taper: "off", nothing: "off" });
  expect(levels).toEqual({ taper: "off" });
  expect(problems).toHaveLength(1);
});

test("nothing set is no problem, and nothing that can be written throws", () => {
  expect(readLevels(undefined)).toEqual({ levels: {}, problems: [] });
  expect(readLevels(null)).toEqual({ levels: {}, problems: [] });
  fc.assert(
    fc.property(fc.jsonValue(), (written) => {
      const { problems } = readLevels(written);
      for (const problem of problems) expect(problem).toMatch(/\.$/);
    }),
  );
});

test("the manifest's schema takes what the server takes, and no more", () => {
  const schema =
    manifest.contributes.configuration.properties["thou.findings.levels"];
  expect(Object.keys(schema.properties)).toEqual([...CODES].sort());
  const { scope, markdownDescription, ...plain } = schema;
  expect([scope, typeof markdownDescription]).toEqual(["window", "string"]);
  const isValid = new Ajv().compile(plain);
  const word = fc.constantFrom("off", "hint", "warning", "Error", "none", 3);
  const code = fc.constantFrom("taper", "worn", "tapir", "");
  fc.assert(
    fc.property(fc.dictionary(code, word), (written) => {
      expect(isValid(written)).toBe(readLevels(written).problems.length === 0);
    }),
  );
});
