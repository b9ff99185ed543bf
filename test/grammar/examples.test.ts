// The example lines in thou.ohm: `//=` is read by the rule above it, `//!` is refused. A rule without an example is one that nobody has
// shown to work.
import { readFileSync } from "node:fs";
import path from "node:path";
import { expect, test } from "vitest";
import { parseAfresh } from "../../grammar/by-ohm.ts";

interface Example {
  readonly rule: string;
  readonly reads: boolean;
  readonly body: string;
}

const source = readFileSync(
  path.join(import.meta.dirname, "../../grammar/thou.ohm"),
  "utf8",
);

function readExamples(): {
  readonly rules: readonly string[];
  readonly examples: readonly Example[];
} {
  const rules: string[] = [];
  const examples: Example[] = [];
  for (const line of source.split("\n")) {
    const rule = /^ {2}([A-Z]\w*(?:Entry|Fact)) =/.exec(line)?.[1];
    if (rule !== undefined) rules.push(rule);
    const example = /^\s*\/\/([=!]) (.*)$/.exec(line);
    if (example !== null)
      examples.push({
        rule: rules.at(-1) ?? "",
        reads: example[1] === "=",
        body: example[2] ?? "",
      });
  }
  return { rules, examples };
}

const { rules, examples } = readExamples();

test.each(examples.filter((each) => each.reads))(
  "$rule reads: $body",
  ({ rule, body }) => {
    expect(parseAfresh(body, rule).damagedAt).toBeUndefined();
  },
);

test.each(examples.filter((each) => !each.reads))(
  "$rule refuses: $body",
  ({ rule, body }) => {
    expect(parseAfresh(body, rule).damagedAt).toBeTypeOf("number");
  },
);

test("every entry and every fact has an example", () => {
  const shown = new Set(
    examples.filter((each) => each.reads).map((each) => each.rule),
  );
  expect(rules.filter((rule) => !shown.has(rule))).toEqual([]);
});

test("no example stands above the first rule", () => {
  expect(examples.filter((each) => each.rule === "")).toEqual([]);
});
