// Every page of a finding is a test of it: what its bad samples mark is found there and nowhere else, its good ones are clean, its fixes
// mend, and its level is the rule's.
import { describe, expect, test } from "vitest";
import type { Finding, Fix } from "../../server/model/result.ts";
import { CODES } from "../../server/rules/codes.ts";
import { figuresOf } from "../../server/rules/figures.ts";
import { FILE_RULES } from "../../server/rules/file-rules.ts";
import { RULES, TEXT_RULES } from "../../server/rules/index.ts";
import { pages as bundled } from "../../server/rules/pages.ts";
import {
  TEXT_RULES as OWN_TEXT,
  NAME_RULES,
} from "../../server/rules/text/index.ts";
import { allPages, projectOf, type Sample, type SampleFile } from "./pages.ts";

const pages = allPages();
const registry = [...TEXT_RULES, ...RULES, ...FILE_RULES];
const codes = [...new Set(registry.map((rule) => rule.code))].sort();
const textCodes = new Set(
  [...OWN_TEXT, ...NAME_RULES, ...FILE_RULES].map((rule) => rule.code),
);

/** The findings of every file of a sample, each checked as its own. */
function check(
  files: readonly Pick<SampleFile, "name" | "text">[],
): readonly Finding[] {
  const project = projectOf(files);
  return files.flatMap(({ name }) => project.check(name).findings);
}

function show({ place, code }: Finding): string {
  return `${place.file}:${place.line + 1}:${place.start}-${place.end} ${code}`;
}

function marksOf({ files }: Sample): readonly string[] {
  return files.flatMap(({ name, marks }) =>
    marks.map(
      ({ code, line, start, end }) =>
        `${name}:${line + 1}:${start}-${end} ${code}`,
    ),
  );
}

function withFix(
  files: readonly SampleFile[],
  { edits, creates = [] }: Fix,
): readonly Pick<SampleFile, "name" | "text">[] {
  const made = creates.map(({ file, text }) => ({ name: file, text }));
  const changed = files.map(({ name, text }) => {
    const lines = text.split("\n");
    const own = edits
      .filter(({ place }) => place.file === name)
      .sort(
        (a, b) => b.place.line - a.place.line || b.place.start - a.place.start,
      );
    for (const { place, text: written } of own) {
      const line = lines[place.line] ?? "";
      lines[place.line] =
        line.slice(0, place.start) + written + line.slice(place.end);
    }
    return { name, text: lines.join("\n") };
  });
  return [...changed, ...made];
}

test("every code has a page, and every page a code", () => {
  expect(pages.map((page) => page.code)).toEqual(codes);
});

test("the list of codes has every code", () => {
  expect(codes.filter((code) => !CODES.includes(code))).toEqual([]);
  expect(new Set(CODES).size).toBe(CODES.length);
});

test("the pages that ship are the pages", () => {
  expect(Object.keys(bundled)).toEqual(pages.map((page) => page.code));
});

test("the pages that say how a job sets their threshold are those that have one, and each way they name is taken", () => {
  const ways = pages.flatMap(({ code }) =>
    [...(bundled[code] ?? "").matchAll(/`(warn ([a-z-]+) at [^`]+)`/g)]
      .filter((match) => match[2] === code)
      .map((match) => [code, match[1] ?? ""] as const),
  );
  expect([...new Set(ways.map(([code]) => code))].sort()).toEqual(
    CODES.filter((code) => 0 < figuresOf(code).warn.length).sort(),
  );
  for (const [, line] of ways)
    expect(
      check([
        { name: "job.thou", text: `job a\n  units inch\n  ${line}\n` },
      ]).map(({ message }) => `${line}: ${message}`),
    ).toEqual([]);
});

test.each(pages.map((page) => [page.code, page] as const))(
  "%s: the page begins with its code, has its level, and both sorts of sample",
  (code, page) => {
    expect(page.title).toBe(code);
    const levels = registry
      .filter((rule) => rule.code === code)
      .map((rule) => rule.level);
    expect(new Set([page.level])).toEqual(new Set(levels));
    const bad = page.samples.filter((sample) => sample.kind === "bad");
    expect(bad.length).toBeGreaterThan(0);
    for (const sample of bad)
      expect(
        sample.files.flatMap(({ marks }) => marks).map((mark) => mark.code),
      ).toContain(code);
    expect(page.samples.some((sample) => sample.kind === "good")).toBe(true);
  },
);

const samples = pages.flatMap(({ code, samples: all }) =>
  all.map((sample) => [code, sample.line, sample] as const),
);

describe("bad samples", () => {
  test.each(samples.filter(([, , sample]) => sample.kind === "bad"))(
    "%s, line %i: what is marked is found, and nothing else of its code",
    (code, _, sample) => {
      const found = check(sample.files);
      const marks = marksOf(sample);
      const marked = new Set(marks.map((mark) => mark.split(" ")[1] ?? ""));
      // a fault of the text that nobody marked is a slip of the page
      const counted = found.filter(
        (finding) =>
          finding.code === code ||
          marked.has(finding.code) ||
          (textCodes.has(finding.code) && finding.level === "error"),
      );
      expect(counted.map(show).sort()).toEqual([...marks].sort());
    },
  );

  test.each(samples.filter(([, , sample]) => sample.kind === "bad"))(
    "%s, line %i: each fix takes its finding away, and a safe one brings no other",
    (code, _, sample) => {
      const before = check(sample.files);
      for (const finding of before.filter((each) => each.code === code)) {
        for (const fix of finding.fixes) {
          const after = check(withFix(sample.files, fix));
          const count = (all: readonly Finding[]): number =>
            all.filter((each) => each.code === code).length;
          expect(count(after), fix.title).toBeLessThan(count(before));
          if (!fix.safe) continue;
          const errors = (all: readonly Finding[]): number =>
            all.filter((each) => each.level === "error").length;
          expect(errors(after), fix.title).toBeLessThanOrEqual(errors(before));
        }
      }
    },
  );
});

test.each(samples.filter(([, , sample]) => sample.kind === "good"))(
  "good samples: %s, line %i, has no finding of its code and no error",
  (code, _, sample) => {
    expect(marksOf(sample)).toEqual([]);
    const found = check(sample.files).filter(
      (finding) => finding.code === code || finding.level === "error",
    );
    expect(found.map((each) => `${show(each)}: ${each.message}`)).toEqual([]);
  },
);

test("a message is whole sentences, with no gap where a word was to stand", () => {
  for (const [, , sample] of samples) {
    for (const { code, message } of check(sample.files)) {
      if (textCodes.has(code)) expect(message).toMatch(/^[\p{Lu}`\d].*[.?]$/su);
      expect(message).not.toMatch(/ {2}|\.\.$|\?\.|``|undefined|NaN|\[object/);
    }
  }
});
