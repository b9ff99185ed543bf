// Definitions, uses and highlights, by cursor fixtures over a job and its crib.
import { describe, expect, test } from "vitest";
import {
  definitionAt,
  highlightsAt,
  linksIn,
  referencesAt,
} from "../../server/ide/navigation.ts";
import type { Location } from "../../server/ide/position.ts";
import { atCaret, CRIB, JOB, openedEach, slice } from "./caret.ts";

const TEXTS = { "crib.thou": CRIB, "job.thou": JOB };

/** The job with the caret after the first words that are found. */
function at(words: string) {
  const found = atCaret(JOB.replace(words.replace("|", ""), words), {
    "crib.thou": CRIB,
  });
  expect(found.text).toBe(JOB);
  return found;
}

/** "job.thou:13 front" */
function shown({ path, range }: Location): string {
  const text = path === "job.thou" ? JOB : CRIB;
  return `${path}:${String(range.start.line + 1)} ${slice(text, range)}`;
}

function lineOf(text: string, line: string): number {
  const found = text.split("\n").indexOf(line);
  if (found === -1) throw new Error(`no line ${line}`);
  return found + 1;
}

function definitions(words: string): readonly string[] {
  const { open, position } = at(words);
  return definitionAt(open, position).map(shown);
}

describe("definition", () => {
  test("a reference leads to the name of its entry, the kind before it as well", () => {
    const line = lineOf(JOB, "journal front on layshaft");
    for (const words of [
      "of |journal front in",
      "of jour|nal front in",
      "of journal front| in",
    ])
      expect(definitions(words)).toEqual([`job.thou:${String(line)} front`]);
  });

  test("into the crib", () => {
    expect(definitions("ream with r-87|55")).toEqual([
      `crib.thou:${String(lineOf(CRIB, "reamer r-8755"))} r-8755`,
    ]);
  });

  test("the whole entry and the place that was pointed at come with it", () => {
    const { open, position } = at("ream with r-8|755");
    const [found] = definitionAt(open, position);
    expect(found && slice(CRIB, found.whole)).toMatch(
      /^reamer r-8755\n[^]*drive hand$/,
    );
    expect(found && slice(JOB, found.origin)).toBe("r-8755");
    const on = at("of jour|nal front in");
    const [whole] = definitionAt(on.open, on.position);
    expect(whole && slice(JOB, whole.origin)).toBe("journal front");
  });

  test("a step of the route is in the crib and in the job", () => {
    expect(definitions("step re|am\n  cuts")).toEqual([
      `job.thou:${String(lineOf(JOB, "step ream"))} ream`,
      `crib.thou:${String(lineOf(CRIB, "step ream"))} ream`,
    ]);
  });

  test("a used file leads to its beginning", () => {
    const { open, position } = at('use "cr|ib.thou"');
    const [found, ...others] = definitionAt(open, position);
    expect(others).toEqual([]);
    expect(found?.path).toBe("crib.thou");
    expect(found?.range.start).toEqual({ line: 0, character: 0 });
  });

  test("what is shipped has none, nor have numbers, facts and comments", () => {
    expect(definitions("material steel-|4140")).toEqual([]);
    expect(definitions("limits 0.87|40")).toEqual([]);
    expect(definitions("ver|dict guarded")).toEqual([]);
    const { open, position } = atCaret("part a # part |a\n");
    expect(definitionAt(open, position)).toEqual([]);
  });

  test("an ambiguous name leads to all that it may mean", () => {
    const { open, position } = atCaret(
      "bush a in x\npart a\nbore b in |a\nhole x in part a\n",
    );
    expect(definitionAt(open, position)).toHaveLength(2);
  });

  test("a member of a stack leads to where it was first written", () => {
    const text =
      "stack end\n  plus case 6.0 to 6.1\n  minus spacer 0.25\n  read |spacer 0.2501\n";
    const { open, position, text: plain } = atCaret(text);
    const [found] = definitionAt(open, position);
    expect(found?.range.start.line).toBe(2);
    expect(found && slice(plain, found.range)).toBe("spacer");
  });
});

describe("references", () => {
  function references(words: string, declaration = true): readonly string[] {
    const { open, position } = at(words);
    return referencesAt(open, position, { declaration }).map(shown);
  }

  test("of a bore: its fit, its line, its pilot", () => {
    const lines = [
      "bore front in bush front",
      "fit front of journal front in bore front",
      "  bore front from 0 to 1.25",
      "  pilot p-870 in bore front for bore rear",
    ].map((line) => `job.thou:${String(lineOf(JOB, line))} front`);
    expect(references("bore fr|ont in bush front")).toEqual(lines);
    expect(references("bore fr|ont in bush front", false)).toEqual(
      lines.slice(1),
    );
  });

  test("of a crib's gauge, from the job, in both files", () => {
    const uses = (path: string, text: string): readonly string[] =>
      text
        .split("\n")
        .flatMap((line, index) =>
          line.includes("with mic-1")
            ? [`${path}:${String(index + 1)} mic-1`]
            : [],
        );
    expect(references("with mic|-1 at 72 F")).toEqual([
      `crib.thou:${String(lineOf(CRIB, "gauge mic-1"))} mic-1`,
      ...uses("job.thou", JOB),
      ...uses("crib.thou", CRIB),
    ]);
  });

  test("of a step: the route's line, and both its entries", () => {
    expect(references("step dry|-fit")).toEqual([
      `job.thou:${String(lineOf(JOB, "step dry-fit"))} dry-fit`,
      `crib.thou:${String(lineOf(CRIB, "  step dry-fit"))} dry-fit`,
    ]);
  });

  test("of a crib's reamer opened by itself: other jobs that use the crib are asked, jobs that don't are not", () => {
    const stranger =
      "job other\n  units inch\nreamer r-8755\n  size 1\nline a\n  ream with r-8755\n";
    const files = openedEach({ ...TEXTS, "other.thou": stranger });
    const crib = files["crib.thou"];
    const job = files["job.thou"];
    const other = files["other.thou"];
    if (!crib || !job || !other) throw new Error("all are there");
    const position = {
      line: lineOf(CRIB, "reamer r-8755") - 1,
      character: 8,
    };
    expect(
      referencesAt(crib, position, { declaration: false }).map(shown),
    ).toEqual([]);
    expect(
      referencesAt(crib, position, {
        declaration: false,
        others: [job, crib, other],
      }).map(shown),
    ).toEqual([`job.thou:${String(lineOf(JOB, "  ream with r-8755"))} r-8755`]);
  });

  test("an entry of another kind with the same name is no use of it", () => {
    expect(references("press fr|ont of")).toEqual([
      `job.thou:${String(lineOf(JOB, "press front of bush front in hole front"))} front`,
      `job.thou:${String(lineOf(JOB, "  presses press front"))} front`,
    ]);
  });

  test("a shipped material: where it is named", () => {
    expect(
      references("bush front in hole front\n  material bronze|-c932"),
    ).toHaveLength(4);
  });
});

describe("highlights", () => {
  test("in this file only, the opening line as written", () => {
    const { open, position } = at("cuts line lay|shaft");
    expect(
      highlightsAt(open, position).map(({ range, kind }) => [
        range.start.line + 1,
        slice(JOB, range),
        kind,
      ]),
    ).toEqual([
      [lineOf(JOB, "line layshaft"), "layshaft", "write"],
      [lineOf(JOB, "  cuts line layshaft"), "layshaft", "read"],
    ]);
  });

  test("a place that was read, in its own entry", () => {
    const text =
      "journal a on b\n  read ne|ar 1.0\n  repeat near 1.0\n  read far 1.0\njournal c on b\n  read near 1.0\n";
    const { open, position } = atCaret(text);
    expect(
      highlightsAt(open, position).map(({ range }) => range.start.line),
    ).toEqual([1, 2]);
  });
});

test("used files are links", () => {
  const { open } = at('use "cr|ib.thou"');
  expect(
    linksIn(open).map(({ range, path }) => [slice(JOB, range), path]),
  ).toEqual([['"crib.thou"', "crib.thou"]]);
});
