// The rows of `thou ask` as text, JSON and CSV: units, what a terminal must not be given, what a spreadsheet must not take for a formula.
import picocolors from "picocolors";
import { describe, expect, test } from "vitest";
import { answerCsv, answerJson, answerText } from "../../server/cli/answers.ts";
import { folderWith, thou } from "./in-process.ts";

const plain = picocolors.createColors(false);
const ANSWER = {
  columns: ["record", "bores", "mean_m", "accepted"],
  rows: [
    ["=cmd|' /C calc'!A0", 3, 0.0222321234, true],
    ['a\u001B[31m,"b"\u202E', -1, -1e-9, false],
    ["+1", null, null, null],
    ["-1", 0, 5e-324, null],
    ["@x", 0, 0, null],
    [" plain", 0, 0, null],
  ],
} as const;

describe("text", () => {
  const text = answerText("What is asked.", ANSWER, plain, 80);

  test("has lengths in mm to a micrometre, and says so", () => {
    expect(text).toContain("mean, mm");
    expect(text).toMatch(/ 22\.232 /);
    expect(text).not.toContain("-0.000");
  });

  // a step of 1 µm, of 0.0001 in and of 0.00001 in
  test.each([
    [1e-6, "22.232   0.001"],
    [2.54e-6, "22.232  0.00254"],
    [2.54e-7, "22.2321  0.000254"],
  ])("has no more digits than were read in steps of %d m", (step, row) => {
    const answer = {
      columns: ["mean_m", "step_m"],
      rows: [[0.0222321234, step]],
    };
    const said = answerText("What is asked.", answer, plain, 80);
    expect(said.replaceAll(/ +/g, " ")).toContain(row.replaceAll(/ +/g, " "));
    expect(said).not.toMatch(/22\.23212/);
  });

  test("gives a terminal nothing that could steer it", () => {
    for (const sign of ["\u001B", "\u202E"]) expect(text).not.toContain(sign);
    expect(text).toContain("\\x1b[31m");
    expect(text).toContain("\\u{202e}");
  });

  test("says where there is nothing", () => {
    expect(answerText("Q.", { columns: ["a"], rows: [] }, plain, 80)).toBe(
      "Q.\n\nNothing in this archive answers it.\n",
    );
  });
});

test("JSON has every number as it is", () => {
  const read = JSON.parse(answerJson("q", ANSWER)) as {
    readonly rows: readonly Readonly<Record<string, unknown>>[];
  };
  expect(read).toMatchObject({ schema: 1, question: "q" });
  expect(read.rows.map((row) => Object.values(row))).toEqual(ANSWER.rows);
  for (const sign of ["\u001B", "\u202E"])
    expect(answerJson("q", ANSWER)).not.toContain(sign);
  expect(JSON.parse(answerJson("q", { columns: ["a"], rows: [] }))).toEqual({
    schema: 1,
    question: "q",
    rows: [],
  });
});

test("CSV is as RFC 4180 has it, and no text in it is a formula", () => {
  const lines = answerCsv(ANSWER).split("\r\n");
  expect(lines[0]).toBe("record,bores,mean_m,accepted");
  expect(lines[1]).toBe("\"'=cmd|' /C calc'!A0\",3,0.0222321234,true");
  expect(lines[2]).toBe('"a\\x1b[31m,""b""\\u{202e}",-1,-1e-9,false');
  expect(lines[3]).toBe('"\'+1",,,');
  expect(lines[4]).toBe('"\'-1",0,5e-324,');
  expect(lines[5]).toBe('"\'@x",0,0,');
  expect(lines[6]).toBe('" plain",0,0,');
  expect(lines).toHaveLength(8);
});

describe("the command", () => {
  test("lists the questions, a line each", async () => {
    const { code, out } = await thou(["ask"], { cwd: "/", columns: 200 });
    expect(code).toBe(0);
    expect(out.trimEnd().split("\n")).toHaveLength(5);
    for (const name of [
      "closures",
      "findings-by-month",
      "gauges-overdue",
      "open-concessions",
      "reamer-wear",
    ])
      expect(out).toMatch(new RegExp(`^${name} +\\w`, "m"));
  });

  test("shows a question's SQL, and says which there are where there is none of a name", async () => {
    const cwd = await folderWith({});
    const { out } = await thou(["ask", "closures", "--sql"], { cwd });
    expect(out).toMatch(/^-- How much[^]*\nORDER BY record, press\n$/);
    expect(out).not.toContain("read_parquet");
    const { code, err } = await thou(["ask", "closure"], { cwd });
    expect(code).toBe(2);
    expect(err.replaceAll(/\s+/g, " ")).toContain(
      'there is no question "closure"; there are closures, findings-by-month,',
    );
  });
});
