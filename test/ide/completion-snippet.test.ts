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
import { formatEdits } from "../../server/ide/formatting.ts";
import { createProject } from "../../server/rules/check.ts";
import { atCaret, CRIB, edited, JOB } from "./caret.ts";
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

/** As it is inserted: each place with what it offers first. */
const asInserted = ({ choices }: Stop): string => choices[0] ?? "";

/** What is said of a place or a name that is still to be filled in, and of a step whose parts are not measured yet. */
const TO_FILL =
  /is only a place to fill in|^There is no .*`[A-Z]+`|^`NAME` is a |is not measured\.$/u;

describe.each(
  Object.entries({
    "an empty file": "|",
    "a job that begins": "job j\n  units inch\n\n|",
    "a metric job": "job j\n  units mm\n\n|\n\n# a remark at the end\n",
    "a shop's crib": `${CRIB}|`,
    "a job with entries before it": `${JOB}|`,
    "a job with entries before and after it": JOB.replace(
      "\nhole front",
      "\n|\nhole front",
    ),
  }),
)("as it is inserted in %s", (_, marked) => {
  const others = { "crib.thou": CRIB };
  const { open, position, text } = atCaret(marked, others);
  const found = (of: string) => {
    const project = createProject({ root: "" });
    for (const [path, each] of Object.entries({ ...others, "job.thou": of }))
      project.setFile(path, readLines(each));
    return project
      .check("job.thou")
      .findings.filter(({ level }) => level === "error");
  };
  const before = new Set(found(text).map(({ message }) => message));

  test.each(
    completionAt(open, position, "2026-11-25").map((offer) => [
      offer.label,
      offer.insertText,
    ]),
  )("%s", (_label, insertText) => {
    const whole = edited(text, [
      {
        range: { start: position, end: position },
        text: filled(insertText, asInserted),
      },
    ]);
    expect(formatEdits(readLines(whole)), whole).toEqual([]);
    expect(
      found(whole)
        .map(({ message }) => message)
        .filter((message) => !before.has(message) && !TO_FILL.test(message)),
      whole,
    ).toEqual([]);
  });
});

test("a line offers its next bore, and a pilot another bore than it runs in", () => {
  const { open, position } = atCaret(`${JOB}|`, { "crib.thou": CRIB });
  const line = completionAt(open, position).find(({ label }) =>
    label.startsWith("line with"),
  );
  expect(line && filled(line.insertText, asInserted)).toBe(
    "line NAME\n  bore front from Z to Z\n  bore rear from Z to Z\n  ream with r-875\n  pilot p-870 in bore front for bore rear",
  );
});

test("what a gauge is due at is not today; a stiffness is offered in its usual unit", () => {
  const { open, position } = atCaret("shop s\n  units mm\n\n|");
  const offers = completionAt(open, position, "2026-11-25");
  const whole = (kind: string): string =>
    filled(
      offers.find(({ label }) => label.startsWith(`${kind} with`))
        ?.insertText ?? "",
      asInserted,
    );
  expect(whole("gauge")).toContain("calibrated 2026-11-25\n  due DATE");
  expect(whole("material")).toContain("modulus VALUE GPa");
  expect(whole("material")).toContain("yield VALUE MPa");
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
