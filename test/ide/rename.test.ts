// Renaming: what is changed, what is refused, and that a job means the same under another name.
import { describe, expect, test } from "vitest";
import { readLines } from "../../grammar/lines.ts";
import { prepareRenameAt, renameAt } from "../../server/ide/rename.ts";
import {
  createFiles,
  resultsIn,
  type OpenFile,
} from "../../server/model/project.ts";
import { findingsIn } from "../../server/rules/check.ts";
import { atCaret, CRIB, edited, JOB, openedEach, slice } from "./caret.ts";

const BESIDE = { "crib.thou": CRIB };

function at(words: string) {
  const found = atCaret(JOB.replace(words.replace("|", ""), words), BESIDE);
  expect(found.text).toBe(JOB);
  return found;
}

/** The files as a rename leaves them; the refusal where it is refused. */
function renamed(
  words: string,
  name: string,
): Readonly<Record<string, string>> | string {
  const { open, position } = at(words);
  return after(
    open,
    { ...BESIDE, "job.thou": JOB },
    renameAt(open, position, name),
  );
}

function after(
  _open: OpenFile,
  texts: Readonly<Record<string, string>>,
  result: ReturnType<typeof renameAt>,
): Readonly<Record<string, string>> | string {
  if (result === undefined) return "nothing to rename";
  if ("refused" in result) return result.refused;
  return Object.fromEntries(
    Object.entries(texts).map(([path, text]) => [
      path,
      edited(
        text,
        result.edits.filter((each) => each.path === path),
      ),
    ]),
  );
}

describe("what is renamed", () => {
  test("a journal in its line and in its fit, other things of the name left alone", () => {
    const files = renamed("journal fr|ont on layshaft", "drive-end");
    expect(files).toEqual({
      "crib.thou": CRIB,
      "job.thou": JOB.replace(
        "journal front on",
        "journal drive-end on",
      ).replace("of journal front in", "of journal drive-end in"),
    });
  });

  test("a gauge of the crib, from a reading of the job", () => {
    expect(renamed("with mic|-1 at 72", "mic-2")).toEqual({
      "crib.thou": CRIB.replaceAll("mic-1", "mic-2"),
      "job.thou": JOB.replaceAll("mic-1", "mic-2"),
    });
  });

  test("a step in the route, in the crib and in the job", () => {
    expect(renamed("step re|am\n", "finish-ream")).toEqual({
      "crib.thou": CRIB.replaceAll(/step ream$/gm, "step finish-ream"),
      "job.thou": JOB.replace(/step ream$/gm, "step finish-ream"),
    });
  });

  test("a place in its own entry", () => {
    expect(renamed("read ne|ar", "drive")).toEqual({
      ...BESIDE,
      "job.thou": JOB.replace("read near", "read drive"),
    });
  });

  test("only the name is touched, not the kind before it", () => {
    const { open, position } = at("of jour|nal front in bore");
    const start = prepareRenameAt(open, position);
    if (start === undefined || "refused" in start) throw new Error("it can");
    expect(start.placeholder).toBe("front");
    expect(slice(JOB, start.range)).toBe("front");
  });

  test("in other jobs that use the crib, when they are given", () => {
    const job =
      'job second\n  units inch\n  use "crib.thou"\njournal a on b\n  read 1.0 with mic-1\n';
    const texts = { ...BESIDE, "job.thou": JOB, "second.thou": job };
    const files = openedEach(texts);
    const crib = files["crib.thou"];
    if (crib === undefined) throw new Error("the crib is there");
    const position = {
      line: CRIB.split("\n").indexOf("gauge mic-1"),
      character: 7,
    };
    const result = renameAt(crib, position, "mic-9", Object.values(files));
    expect(after(crib, texts, result)).toEqual(
      Object.fromEntries(
        Object.entries(texts).map(([path, text]) => [
          path,
          text.replaceAll("mic-1", "mic-9"),
        ]),
      ),
    );
  });

  test("a short reference that would be ambiguous gets its kind", () => {
    const text =
      "part case\nhole a in case\nbush b in a\nbore x in b\nbore y in case\n";
    const { open, position } = atCaret(text.replace("bush b", "bush |b"));
    expect(
      after(open, { "job.thou": text }, renameAt(open, position, "case")),
    ).toEqual({
      "job.thou":
        "part case\nhole a in case\nbush case in a\nbore x in bush case\nbore y in part case\n",
    });
  });

  test("of two entries with one name the second is renamed by itself", () => {
    const text = "part a\npart |a\njournal j on a\n";
    const { open, position, text: plain } = atCaret(text);
    expect(
      after(open, { "job.thou": plain }, renameAt(open, position, "b")),
    ).toEqual({
      "job.thou": "part a\npart b\njournal j on a\n",
    });
  });
});

describe("what is refused, with a sentence", () => {
  test.each([
    [
      "journal fr|ont on",
      "rear",
      /There is a journal rear already, in job\.thou/,
    ],
    [
      "with mic|-1 at 72",
      "bore-1",
      /There is a gauge bore-1 already, in crib\.thou/,
    ],
    ["step press|-in", "mark", /There is a step mark already, in crib\.thou/],
    ["journal fr|ont on", "in", /opens a clause/],
    ["journal fr|ont on", "2nd", /begins with a letter/],
    ["journal fr|ont on", "drive end", /letters, digits and hyphens/],
    ["journal fr|ont on", "", /letters, digits and hyphens/],
    [
      "material steel-|4140",
      "steel",
      /steel-4140 is shipped .* a material of your own/,
    ],
    ["read ne|ar", "far", /has a place far already/],
  ])("%s to %s", (words, name, why) => {
    expect(renamed(words, name)).toMatch(why);
  });

  test("a crib's material does not take a shipped one's name", () => {
    const text =
      "material mine\n  expansion 18 um/m-K\npart a\n  material m|ine\n";
    const { open, position } = atCaret(text);
    expect(renameAt(open, position, "steel-4140")).toEqual({
      refused: expect.stringContaining("shipped") as string,
    });
  });

  test("before a name is asked for", () => {
    const { open, position } = at("material steel-|4140");
    expect(prepareRenameAt(open, position)).toEqual({
      refused: expect.stringContaining("shipped") as string,
    });
    const missing = atCaret("journal a on no|thing\n");
    expect(prepareRenameAt(missing.open, missing.position)).toEqual({
      refused: expect.stringContaining("nothing") as string,
    });
  });

  test("numbers, facts, texts and blanks have no name", () => {
    for (const words of [
      "limits 0.8|740",
      "ver|dict",
      'use "cr|ib',
      "runs 240| rpm",
    ]) {
      const { open, position } = at(words);
      expect(prepareRenameAt(open, position)).toBeUndefined();
      expect(renameAt(open, position, "other")).toBeUndefined();
    }
  });
});

describe("a job under another name", () => {
  // a name that nothing has, so that texts can be compared by putting the old one back
  const NEW = "zz-new";

  function check(texts: Readonly<Record<string, string>>) {
    const files = createFiles({ root: "" });
    for (const [path, text] of Object.entries(texts))
      files.setFile(path, readLines(text));
    const open = files.open("job.thou");
    if (open === undefined) throw new Error("the job is there");
    return { open, results: resultsIn(open), findings: findingsIn(open) };
  }

  const texts = { ...BESIDE, "job.thou": JOB };
  const before = check(texts);
  const entries = before.open.file.entries.flatMap((entry, index) =>
    entry.name === undefined
      ? []
      : [{ ref: entry.ref, name: entry.name, index, span: entry.nameSpan }],
  );

  test.each(entries.map((each) => [each.ref, each] as const))(
    "%s: every figure stays, and the name goes back",
    (_, { name, index, span }) => {
      const start = before.open.file.lines.starts[index] ?? 0;
      const position = { line: start + span.line, character: span.start };
      const files = after(
        before.open,
        texts,
        renameAt(before.open, position, NEW),
      );
      if (typeof files === "string") throw new Error(files);
      const now = check(files);
      const figures = ({ results }: typeof now) =>
        results.map(({ kind, low, nominal, high, status, verdict }) => ({
          kind,
          low,
          nominal,
          high,
          status,
          verdict,
        }));
      expect(figures(now)).toEqual(figures(before));
      expect(now.findings.map((each) => each.code)).toEqual(
        before.findings.map((each) => each.code),
      );
      expect(
        after(now.open, files, renameAt(now.open, position, name)),
      ).toEqual(texts);
    },
  );
});
