// The JSON of `check`, key by key against the contract of docs/language.md.
import { expect, test } from "vitest";
import { finding, result } from "./fake-project.ts";
import { folderWith, thou } from "./in-process.ts";
import { CRIB, WINCH, WINCH_WORLD } from "./winch.ts";

interface Report {
  readonly schema: number;
  readonly files: readonly {
    readonly file: string;
    readonly findings: readonly Record<string, unknown>[];
    readonly results: readonly Record<string, unknown>[];
  }[];
  readonly summary: Record<string, number>;
}

async function report(
  files: Readonly<Record<string, string>>,
  project = WINCH_WORLD,
): Promise<{ text: string; json: Report }> {
  const cwd = await folderWith(files);
  const { out } = await thou(["check", "--format", "json"], { cwd, project });
  return { text: out, json: JSON.parse(out) as Report };
}

test("has every key, in the contract's order", async () => {
  const { json } = await report({
    "shop/winch.thou": WINCH,
    "shop/crib.thou": CRIB,
  });
  expect(Object.keys(json)).toEqual(["schema", "files", "summary"]);
  expect(json.schema).toBe(1);
  expect(json.files.map(({ file }) => file)).toEqual([
    "shop/crib.thou",
    "shop/winch.thou",
  ]);
  expect(Object.keys(json.summary)).toEqual([
    "files",
    "errors",
    "warnings",
    "information",
    "hints",
    "accepted",
  ]);
  for (const file of json.files) {
    expect(Object.keys(file)).toEqual(["file", "findings", "results"]);
    for (const each of file.findings)
      expect(Object.keys(each)).toEqual(
        [
          "code",
          "level",
          "line",
          "column",
          "endLine",
          "endColumn",
          "message",
          "entry",
          "accepted",
        ], //
      );
    for (const each of file.results)
      expect(Object.keys(each)).toEqual(
        [
          "entry",
          "kind",
          "of",
          "case",
          "low",
          "nominal",
          "high",
          "unit",
          "status",
          "verdict",
          "text",
          "working",
          "needs",
        ], //
      );
  }
});

test("counts an accepted finding as accepted alone, and shows it as information", async () => {
  const { json } = await report({ "winch.thou": WINCH, "crib.thou": CRIB });
  expect(json.summary).toEqual({
    files: 2,
    errors: 2,
    warnings: 1,
    information: 0,
    hints: 1,
    accepted: 1,
  });
  const film = json.files[1]?.findings.find(({ code }) => code === "film-thin");
  expect(film).toMatchObject({ level: "information", accepted: true });
  expect(
    json.files[1]?.findings.filter(({ accepted }) => accepted === false),
  ).toHaveLength(3);
});

test("counts lines and columns from 1 in UTF-16 units, a tab as one, the mark as none", async () => {
  // the wrench is two units, the e with its accent written apart two
  const line = '\ttitle "\u{1F527} e\u{301}" now';
  const { json } = await report(
    { "a.thou": `\u{FEFF}job a\r\n${line}\r\n` },
    {
      checks: {
        "a.thou": (file, lines) => ({
          findings: [
            finding(
              { file, line: 0, start: 0, end: 3 },
              { code: "name-twice", level: "error", message: "m" },
            ),
            finding(
              { file, line: 1, start: line.indexOf("now"), end: line.length },
              { code: "word-unknown", level: "error", message: "m" },
            ),
          ],
          results:
            lines.lines[0]?.text === "job a"
              ? [
                  result({
                    entry: "job a",
                    kind: "size",
                    low: -0,
                    nominal: 0,
                    high: 1e-10,
                  }),
                ]
              : [],
        }),
      },
    },
  );
  expect(json.files[0]?.findings).toMatchObject([
    { line: 1, column: 1, endLine: 1, endColumn: 4, entry: null },
    { line: 2, column: 16, endLine: 2, endColumn: 19 },
  ]);
  expect(json.files[0]?.results).toHaveLength(1);
});

test("gives numbers as they are, and no number where there is none", async () => {
  const { text, json } = await report({ "winch.thou": WINCH });
  const results = json.files[0]?.results ?? [];
  expect(results.map(({ low }) => low)).toEqual([
    0.02218944,
    0.00001,
    3.3e-5,
    0,
    null,
    2e-5,
  ]);
  expect(results.every(({ low }) => !Object.is(low, -0))).toBe(true);
  expect(text).not.toMatch(/-0(?![.\d])/);
  expect(results[3]).toMatchObject({ case: 1, of: null });
  expect(results[5]).toMatchObject({ case: null, of: "bore front" });
  expect(results[4]?.needs).toEqual([
    {
      ref: "fit front",
      fact: "oil",
      text: "the oil of fit front and its temperature",
    },
    { ref: "bore front", fact: "read", text: "a reading of bore front" },
  ]);
});

test("gives findings in the order in which they stand", async () => {
  const { json } = await report({ "winch.thou": WINCH });
  const lines = json.files[0]?.findings.map(({ line }) => line) ?? [];
  expect(lines).toEqual([...lines].sort((a, b) => Number(a) - Number(b)));
});
