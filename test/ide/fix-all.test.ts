// All safe fixes at once, over every damaged sample: a second time there is nothing left to do, and nothing is worse than before.
import { describe, expect, test } from "vitest";
import { readLines } from "../../grammar/lines.ts";
import { fixAll } from "../../server/ide/code-actions.ts";
import type { Finding } from "../../server/model/result.ts";
import { createProject } from "../../server/rules/check.ts";
import { samples } from "../samples.ts";

const broken = samples.filter(({ path }) => path.startsWith("broken/"));

function findings(path: string, text: string): readonly Finding[] {
  const project = createProject({ root: "" });
  for (const each of broken)
    project.setFile(
      each.path,
      readLines(each.path === path ? text : each.text),
    );
  for (const missing of project.missingUses(path))
    project.setFile(missing, null);
  return project.check(path).findings;
}

/** As the editor makes the edits: all of the one text. */
function mended(path: string, text: string): string {
  const starts = readLines(text).lines.reduce<number[]>(
    (all, line) => [
      ...all,
      (all.at(-1) ?? 0) + line.text.length + line.eol.length,
    ],
    [0],
  );
  let result = text;
  const edits = fixAll(findings(path, text), path).map((edit) => {
    const start = starts[edit.place.line] ?? 0;
    return {
      from: start + edit.place.start,
      to: start + edit.place.end,
      text: edit.text,
    };
  });
  for (const { from, to, text: by } of edits.toSorted(
    (a, b) => b.from - a.from,
  ))
    result = result.slice(0, from) + by + result.slice(to);
  return result;
}

const count = (all: readonly Finding[], level: Finding["level"]): number =>
  all.filter((each) => each.level === level).length;

describe.each(broken.map(({ path, text }) => [path, text] as const))(
  "%s",
  (path, text) => {
    const once = mended(path, text);

    test("twice is as once", () => {
      expect(mended(path, once)).toBe(once);
    });

    test("no finding is worse", () => {
      const [before, after] = [findings(path, text), findings(path, once)];
      expect(count(after, "error")).toBeLessThanOrEqual(count(before, "error"));
      const sure = fixAll(before, path).length;
      if (0 < sure)
        expect(count(after, "error") + count(after, "warning")).toBeLessThan(
          count(before, "error") + count(before, "warning"),
        );
    });
  },
);

test("some of the samples have what needs no look", () => {
  expect(
    broken.filter(({ path, text }) => mended(path, text) !== text).length,
  ).toBeGreaterThan(3);
});
