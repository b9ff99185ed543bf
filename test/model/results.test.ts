// Which methods do not hold is found without making results, and results of one kind without the others: both are held against all results.
import fc from "fast-check";
import { expect, test } from "vitest";
import { editLines, readLines } from "../../grammar/lines.ts";
import { numberResult } from "../../server/model/make-result.ts";
import {
  fewResultsOf,
  notValidOf,
  resultsOf,
  resultsOfKind,
} from "../../server/model/results.ts";
import { createProject, type Project } from "../../server/rules/check.ts";
import { allPages } from "../rules/pages.ts";
import { samples } from "../samples.ts";

/** Compares every entry of a file and of all that it uses; how many methods did not hold. */
function compared(project: Project, path: string): number {
  const open = project.open(path);
  if (open === undefined) throw new Error(`no ${path}`);
  let count = 0;
  for (const ref of open.shop.places.keys()) {
    const all = resultsOf(open.shop, ref);
    for (const kind of new Set(all.map((each) => each.kind)))
      expect(resultsOfKind(open.shop, ref, kind)).toEqual(
        all.filter((each) => each.kind === kind),
      );
    expect(resultsOfKind(open.shop, ref, "none")).toEqual([]);
    const said = all.flatMap(({ kind, text }) => {
      const because = /^not valid here, because (.*)$/su.exec(text)?.[1];
      return because === undefined ? [] : [`${kind}: ${because}`];
    });
    const found = notValidOf(open.shop, ref).map(
      ({ kind, because }) => `${kind}: ${because}`,
    );
    expect([ref, ...found]).toEqual([ref, ...new Set(said)]);
    count += found.length;
  }
  return count;
}

test("a number below nothing by no more than its sign is nothing", () => {
  const { low, nominal, high } = numberResult(
    { entry: "fit a", kind: "clearance" },
    "m",
    { low: -0, nominal: -0, high: 1 },
    { status: "measured", text: "" },
  );
  expect([low, nominal, high].map((each) => Object.is(each, -0))).toEqual([
    false,
    false,
    false,
  ]);
  expect([low, nominal, high]).toEqual([0, 0, 1]);
});

test("of a gauge that reads much the narrowest tolerances are said, and how many there are beside them", () => {
  const widths = [9, 3, 5, 7, 1, 2, 8, 4, 6, 11, 10, 12, 13];
  const job = (count: number): string =>
    `job a\n  units mm\npart x\ngauge mic-1\n  uncertainty 0.001\n${widths
      .slice(0, count)
      .map(
        (width) =>
          `journal j${String(width)} on x\n  limits 25.000 to 25.${String(width).padStart(3, "0")}\n  read 25.001 with mic-1\n`,
      )
      .join("")}`;
  const few = (count: number, ref: string) => {
    const project = createProject({ root: "" });
    project.setFile("a.thou", readLines(job(count)));
    const open = project.open("a.thou");
    if (open === undefined) throw new Error("no job");
    const { results, more } = fewResultsOf(open.shop, ref);
    return [results.map(({ of }) => of), more];
  };
  const narrowest = [...widths].sort((one, other) => one - other);
  expect(few(13, "gauge mic-1")).toEqual([
    narrowest.slice(0, 12).map((width) => `journal j${String(width)}`),
    1,
  ]);
  expect(few(12, "gauge mic-1")).toEqual([
    widths.slice(0, 12).map((width) => `journal j${String(width)}`),
    0,
  ]);
  expect(few(13, "journal j9")[1]).toBe(0);
});

test("in every sample, and in those of the pages of findings", () => {
  const project = createProject({ root: "/" });
  for (const { path, text } of samples)
    project.setFile(`/${path}`, readLines(text));
  for (const { path } of samples) compared(project, `/${path}`);

  let count = 0;
  for (const { files } of allPages().flatMap((page) => page.samples)) {
    const alone = createProject({ root: "/" });
    for (const { name, text } of files)
      alone.setFile(`/${name}`, readLines(text));
    count += compared(alone, `/${files[0]?.name ?? ""}`);
  }
  expect(count).toBeGreaterThan(5);
});

test("in the winch with numbers that lie out of range", () => {
  const path = "/shop/winch.thou";
  const project = createProject({ root: "/" });
  for (const sample of samples)
    project.setFile(`/${sample.path}`, readLines(sample.text));
  const lines = project.open(path)?.file.lines ?? readLines("");
  const numbers = lines.lines.flatMap(({ text }, line) =>
    [...text.matchAll(/(?<![\w.-])\d+(?:\.\d+)?(?![\w./-])/gu)].map(
      ({ index, 0: { length } }) => ({ line, start: index, length }),
    ),
  );
  let count = 0;
  fc.assert(
    fc.property(
      fc.array(
        fc.record({
          which: fc.nat(numbers.length - 1),
          text: fc.constantFrom("0", "0.00001", "0.9", "50", "9000", "1e9"),
        }),
        { minLength: 1, maxLength: 4 },
      ),
      (edits) => {
        let now = lines;
        for (const { which, text } of edits) {
          const { line = 0, start = 0, length = 0 } = numbers[which] ?? {};
          now = editLines(now, {
            start: { line, character: start },
            end: { line, character: start + length },
            text,
          });
        }
        project.setFile(path, now);
        count += compared(project, path);
      },
    ),
    { numRuns: 200 },
  );
  expect(count).toBeGreaterThan(5);
});
