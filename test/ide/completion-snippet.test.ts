// Every snippet is one by the protocol's grammar, numbers its stops from 1 without a gap, and reads as the line it stands for once somebody
// has filled it in.
import { describe, expect, test } from "vitest";
import { readLines } from "../../grammar/lines.ts";
import { parseBody } from "../../grammar/parse.ts";
import {
  ENTRIES,
  entrySpec,
  factSpec,
  lineSpec,
} from "../../grammar/vocabulary.ts";
import { completionAt } from "../../server/ide/completion.ts";
import { atCaret, CRIB, JOB } from "./caret.ts";
import { readSnippet, type Stop } from "./snippet-grammar.ts";

/** What a person might fill in for each capital word. */
const FILLED: Readonly<Record<string, string>> = {
  ...Object.fromEntries("LOW LEAST".split(" ").map((word) => [word, "0.5"])),
  ...Object.fromEntries("HIGH MOST".split(" ").map((word) => [word, "0.6"])),
  ...Object.fromEntries(
    "VALUE VALUES SIZE LENGTH RADIUS DEPTH DIAMETER THICKNESS TEMPERATURE TORQUE FORCE SPEED ANGLE AREA HOURS RATE RATIO COUNT NUMBER Z X"
      .split(" ")
      .map((word) => [word, "1"]),
  ),
  ...Object.fromEntries(
    "NAME PART JOURNAL HOLE BUSH BORE LINE PRESS STEP ROUTE REAMER MATERIAL GAUGE WHO"
      .split(" ")
      .map((word) => [word, "some"]),
  ),
  ENTRY: "fit some",
  TEXT: "some text",
  FILE: "crib.thou",
  DATE: "2026-11-25",
};

function filled(snippet: string, pick: (stop: Stop) => string): string {
  return readSnippet(snippet)
    .map((piece) => (typeof piece === "string" ? piece : pick(piece)))
    .join("");
}

const byHand = ({ choices, isChoice }: Stop): string => {
  const first = choices[0] ?? "";
  if (isChoice) return first;
  const word = FILLED[first];
  if (word === undefined && /^[A-Z]{2,}$/.test(first))
    throw new Error(`nobody knows what to fill in for ${first}`);
  return word ?? first;
};

const last = (stop: Stop): string =>
  stop.isChoice ? (stop.choices.at(-1) ?? "") : byHand(stop);

function stopsOf(snippet: string): readonly number[] {
  return readSnippet(snippet).flatMap((piece) =>
    typeof piece === "string" ? [] : [piece.number],
  );
}

function readable(text: string): void {
  const { blocks } = readLines(text);
  for (const block of blocks)
    block.lines.forEach((line, index) => {
      if (line.body === "") return;
      const rule = lineSpec(block.kind, line.word, index === 0)?.rule;
      expect(rule, line.text).toBeDefined();
      expect(
        parseBody(line.body, rule ?? "").damagedAt,
        line.text,
      ).toBeUndefined();
    });
}

const RECORDS = {
  "an empty shop": "job j\n  units mm\n",
  "a shop with names": JOB,
} as const;

describe.each(Object.entries(RECORDS))("in %s", (_, record) => {
  const offers = (marked: string, today?: string) => {
    const { open, position } = atCaret(marked, { "crib.thou": CRIB });
    return completionAt(open, position, today);
  };

  test.each(ENTRIES.map((each) => each.kind))("facts of a %s", (kind) => {
    const found = offers(`${record}\n${kind} zz\n  |\n`);
    expect(found.map((each) => each.label).sort()).toEqual(
      (entrySpec(kind)?.facts ?? []).map((each) => each.word).sort(),
    );
    for (const { label, insertText, isSnippet, replaceRange } of found) {
      expect(isSnippet).toBe(true);
      expect(replaceRange.start).toEqual(replaceRange.end);
      const stops = stopsOf(insertText);
      expect(stops).toEqual(stops.map((_each, index) => index + 1));
      const rule = factSpec(kind, label)?.rule ?? "";
      for (const pick of [byHand, last]) {
        const body = filled(insertText, pick);
        expect(parseBody(body, rule).damagedAt, body).toBeUndefined();
      }
    }
  });

  test("entries, as opening lines and whole", () => {
    const found = offers(`${record}\n|\n`, "2026-11-25");
    expect(
      new Set(
        found.filter((each) => each.kind === "entry").map((each) => each.label),
      ),
    ).toEqual(
      new Set(
        ENTRIES.map((each) => each.kind).filter(
          (kind) => kind !== "job" && kind !== "shop",
        ),
      ),
    );
    for (const { insertText } of found) {
      const stops = stopsOf(insertText);
      expect(stops).toEqual(stops.map((_each, index) => index + 1));
      for (const pick of [byHand, last]) readable(filled(insertText, pick));
    }
  });
});

test("in an empty file a job and a shop are offered, and what a date stands for is today", () => {
  const { open, position } = atCaret("|");
  const found = completionAt(open, position, "2026-11-25");
  const [job] = found.filter((each) => each.kind === "template");
  expect(found[0]?.label).toBe("job");
  expect(job && filled(job.insertText, byHand)).toBe(
    'job some\n  title "some text"\n  units inch\n  use "crib.thou"\n  opened 2026-11-25 by some',
  );
});

test("a placeholder that holds a sign of the snippet grammar sets it off", () => {
  const { open, position } = atCaret(
    'job j\n  opened 2026-01-01 by "a $b} \\c"\nstep s\n  |\n',
  );
  const done = completionAt(open, position).find(
    (each) => each.label === "done",
  );
  expect(done && filled(done.insertText, byHand)).toBe(
    'done 2026-11-25 by "a $b} \\c"',
  );
});
