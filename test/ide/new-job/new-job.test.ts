// A new job from many answers: the record reads well, stands as the formatter puts it, and lacks nothing but its readings.
import { readFileSync } from "node:fs";
import path from "node:path";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readLines } from "../../../grammar/lines.ts";
import { formatText } from "../../../grammar/print.ts";
import { asOffered } from "../../../server/ide/interview.ts";
import { newJob } from "../../../server/ide/new-job/new-job.ts";
import { quotedText, readName } from "../../../server/ide/new-job/names.ts";
import { readSize } from "../../../server/ide/new-job/sizes.ts";
import { valueIn } from "../../../server/model/entry.ts";
import { openingEntry } from "../../../server/model/shop.ts";
import type {
  Answer,
  NewJobFiles,
  Question,
} from "../../../server/protocol/guide.ts";
import { createProject } from "../../../server/rules/check.ts";

const TODAY = "2026-11-05";
const CRIB = readFileSync(
  path.join(import.meta.dirname, "../../../samples/shop/crib.thou"),
  "utf8",
);

interface Folder {
  readonly names: readonly string[] | null;
  readonly crib: string | null;
}
const EMPTY: Folder = { names: [], crib: null };

/** Answers each question as `how` says, and the questions that were asked on the way. */
function made(
  how: (question: Question) => readonly string[],
  folder: Folder = EMPTY,
): { readonly files: NewJobFiles; readonly asked: readonly Question[] } {
  let answers: readonly Answer[] = [];
  const asked: Question[] = [];
  const offered = new Map<string, readonly string[]>();
  for (let turn = 0; turn < 400; turn++) {
    const next = newJob({ answers, ...folder, today: TODAY });
    if ("files" in next) return { files: next, asked };
    const { question, accepted } = next;
    const isRefused = accepted < answers.length;
    answers = answers.slice(0, accepted);
    asked.push(question);
    if (!isRefused) offered.set(question.key, asOffered(question));
    const values = isRefused
      ? answerOf(question, offered.get(question.key)?.[0] ?? "")
      : how(question);
    answers = [...answers, { key: question.key, values }];
  }
  throw new Error("it asks without an end");
}

/** An answer that every question takes. */
function answerOf(question: Question, offered = ""): readonly string[] {
  if (question.kind === "pick") return asOffered(question);
  const { key } = question;
  if (key === "want numbers") return ["0.01 to 0.02"];
  if (key === "name") return ["again"];
  const word = key.split(" ")[0] ?? "";
  if (word === "shaft" || word === "case") return [`any-${word}`];
  if (word === "seat") return [`again-${key.replace(/\D/gu, "")}`];
  if (word === "from") return [offered === "" ? question.value : offered];
  return ["0.5"];
}

function checked(
  { files }: NewJobFiles,
  more: Readonly<Record<string, string>> = {},
) {
  const project = createProject({ root: "" });
  for (const { name, text } of files) project.setFile(name, readLines(text));
  for (const [name, text] of Object.entries(more))
    project.setFile(name, readLines(text));
  return files.flatMap(({ name }) => project.check(name).findings);
}

/** What is to be told of a record whose parts are still to be measured: the gate before a press or a cut, and nothing else. */
const TO_MEASURE = new Set(["cut-unchecked"]);

describe("Enter, Enter, Enter", () => {
  test.each<[string, Folder]>([
    ["in an empty folder", EMPTY],
    ["beside a crib", { names: ["crib.thou", "new-job.thou"], crib: CRIB }],
    ["without a folder", { names: null, crib: null }],
  ])("%s makes a record that lacks only readings", (_, folder) => {
    const { files, asked } = made(asOffered, folder);
    const found = checked(
      files,
      folder.crib === null ? {} : { "crib.thou": folder.crib },
    );
    expect(found.filter(({ code }) => !TO_MEASURE.has(code))).toEqual([]);
    // every question counts its steps to the same end
    expect(asked.map(({ step }) => step)).toEqual(
      asked.map((__, at) => at + 1),
    );
    expect(new Set(asked.map(({ of }) => of))).toEqual(new Set([asked.length]));
  });

  test("goes on where an answer was refused, and says no less of what is to come", () => {
    const { asked } = made((question) =>
      question.kind === "text" ? ["?"] : asOffered(question),
    );
    const refused = asked.filter(
      (question) => question.kind === "text" && question.fault !== null,
    );
    expect(refused.length).toBeGreaterThan(2);
    for (const { key, step, of } of refused)
      expect(asked.find((each) => each.key === key)).toMatchObject({
        step,
        of,
      });
  });

  test.each([
    ["inch", "22.2", "22.2 mm", "22.2 in", "0.874016"],
    ["mm", "0.875", "0.875 in", "0.875 mm", "22.225"],
    ["mm", "7/8", "7/8 in", "7/8 mm", "22.225"],
  ])(
    "in %s asks whether %s is %s, and takes the answer",
    (system, typed, meant, own, written) => {
      const doubts: Question[] = [];
      const recordOf = (unit?: "other" | "own"): string => {
        const { files, asked } = made((question) => {
          if (question.key === "units") return [system];
          if (question.key === "size 1") return [typed];
          if (question.key === "more 1") return ["yes"];
          if (question.key === "unit 1" && unit !== undefined) return [unit];
          return asOffered(question);
        });
        doubts.push(...asked.filter(({ key }) => key.startsWith("unit ")));
        return files.files[0]?.text ?? "";
      };
      const nominal = (text: string): readonly string[] =>
        [...text.matchAll(/^ {2}nominal (\S+)$/gmu)].map(
          ([, size = ""]) => size,
        );
      const offered = recordOf();
      expect(new Set(nominal(offered))).toEqual(new Set([written]));
      expect(recordOf("other")).toBe(offered);
      const kept = nominal(recordOf("own"));
      expect(new Set(kept)).toEqual(
        new Set([typed === "7/8" ? "0.875" : typed]),
      );
      // once each time: the second journal is offered what the first has
      expect(doubts.map(({ key }) => key)).toEqual([
        "unit 1",
        "unit 1",
        "unit 1",
      ]);
      const [doubt] = doubts;
      expect(
        doubt?.kind === "pick" && doubt.choices.map(({ label }) => label),
      ).toEqual([meant, own]);
    },
  );

  test.each([
    ["inch", "9.99"],
    ["inch", "22.2 in"],
    ["inch", "22.2 mm"],
    ["mm", "1.5"],
    ["mm", "0.875 mm"],
    ["mm", "22.2"],
  ])("in %s does not doubt %s", (system, typed) => {
    const { asked } = made((question) => {
      if (question.key === "units") return [system];
      return question.key === "size 1" ? [typed] : asOffered(question);
    });
    expect(asked.map(({ key }) => key)).toContain("size 1");
    expect(asked.filter(({ key }) => key.startsWith("unit "))).toEqual([]);
  });

  test("is this, to the letter", () => {
    const { files, caret } = made(asOffered).files;
    expect(files.map(({ name }) => name)).toEqual([
      "new-job.thou",
      "crib.thou",
    ]);
    expect(files[0]?.text).toBe(`job new-job
  title "new-job"
  units inch
  use "crib.thou"
  opened 2026-11-05

part shaft

part case

journal front on shaft
  nominal 1

hole front in case
  depth through

bush front in hole front
  length 1

bore front in bush front

press front of bush front in hole front

fit front of journal front in bore front
  want 0.0008 to 0.0013

line shaft
  bore front from 0 to 1

step press-in
  presses press front

step ream
  after press-in
  cuts line shaft

step dry-fit
  after ream
  checks fit front
`);
    expect(files[0]?.text.split("\n")[caret.line]).toBe(
      "journal front on shaft",
    );
  });

  test("never takes the name of a file that is there", () => {
    const names = ["New-Job.thou", "new-job-2.thou", "CRIB.thou"];
    const { files } = made(asOffered, { names, crib: CRIB });
    expect(files.files.map(({ name }) => name)).toEqual(["new-job-3.thou"]);
    expect(files.files[0]?.text).toContain('use "CRIB.thou"');
    expect(
      made((q) => (q.key === "name" ? ["con"] : asOffered(q))).files.files[0]
        ?.name,
    ).toBe("job-con.thou");
  });
});

test("the reamers at hand in millimetres begin with the standard one, each with what it is to the journal", () => {
  const { files, asked } = made((question) => {
    if (question.key === "units") return ["mm"];
    if (question.key === "size 1") return ["25"];
    if (question.key === "reamers") return ["r-25-H7", "r-25-02"];
    return asOffered(question);
  });
  const choices = asked.flatMap((each) =>
    each.key === "reamers" && each.kind === "pick" ? each.choices : [],
  );
  expect(choices.map(({ label }) => label)).toEqual([
    "25 H7",
    "25.01 mm",
    "25.02 mm",
    "25.03 mm",
    "25.05 mm",
    "25.08 mm",
  ]);
  expect(choices.map(({ below }) => below).slice(0, 2)).toEqual([
    "the standard one of a journal of 25 mm",
    "0.01 mm over a journal of 25 mm",
  ]);
  const crib = files.files[1]?.text;
  expect(crib).toContain("reamer r-25-H7\n  size 25 H7");
  expect(crib).toContain("reamer r-25-02\n  size 25.02");
  expect(checked(files).filter(({ code }) => !TO_MEASURE.has(code))).toEqual(
    [],
  );
});

describe("what the bore gauge is set on", () => {
  /** The crib and what is found once a bore is read with its gauge, with this answer. */
  const read = (how: Readonly<Record<string, readonly string[]>>) => {
    const { files, asked } = made(
      (question) => how[question.key] ?? asOffered(question),
    );
    const [job, crib] = files.files;
    if (job === undefined || crib === undefined) throw new Error("both");
    const text = job.text.replace(
      "hole front in case\n",
      "hole front in case\n  read 1.0001 with bore-1\n",
    );
    const found = checked({ ...files, files: [{ ...job, text }, crib] });
    return {
      crib: crib.text,
      codes: found.map(({ code }) => code),
      asked: asked.map(({ key }) => key),
      choices: asked.flatMap((each) =>
        each.key === "set" && each.kind === "pick"
          ? each.choices.map(({ value }) => value)
          : [],
      ),
    };
  };

  test.each([
    ["a micrometer that is there", { set: ["with mic-1"] }, "with mic-1"],
    ["a ring", { set: ["ring"], ring: ["7/8"] }, "on ring 0.875"],
  ])("%s: its readings are taken as they stand", (_, how, written) => {
    const { crib, codes } = read(how);
    expect(crib).toContain(
      `gauge bore-1\n  kind bore-gauge\n  resolution 0.0001\n  set ${written}\n`,
    );
    expect(codes).not.toContain("gauge-unset");
  });

  test("is guessed by nobody: not known, it is asked for once it has read", () => {
    const { crib, codes, choices } = read({});
    expect(choices).toEqual(["", "with mic-1", "ring"]);
    expect(crib).not.toContain(" set ");
    expect(codes).toContain("gauge-unset");
  });

  test("is not asked where there is none", () => {
    expect(read({ gauges: ["mic-1"] }).asked).not.toContain("set");
  });
});

test("the winch, as a person would tell it", () => {
  const told: Readonly<Record<string, readonly string[]>> = {
    name: ['Mooring winch 3, "layshaft" rebush'],
    shaft: ["layshaft"],
    "shaft material": ["steel-4140"],
    "case material": ["aluminium-356-t6"],
    split: ["across"],
    "size 1": ["7/8"],
    "bush 1": ["vented"],
    "depth 1": ["1.350"],
    "length 1": ["1.250"],
    "more 1": ["yes"],
    "bush 2": ["through"],
    "from 2": ["5.50"],
    "bush material": ["bronze-c932"],
    want: ["numbers"],
    "want numbers": ["0.0008 to 0.0016"],
    gauges: ["mic-1", "bore-1"],
    reamers: ["r-0-8755", "r-0-8760"],
  };
  const { files } = made(
    (question) => told[question.key] ?? asOffered(question),
  );
  const [job, crib] = files.files;
  expect(job?.name).toBe("Mooring-winch-3-layshaft-rebush.thou");
  expect(job?.text).toContain(`title "Mooring winch 3, 'layshaft' rebush"`);
  expect(job?.text).toContain("  depth 1.350 blind\n  vented");
  expect(job?.text).toContain(
    "  bore front from 0 to 1.25\n  bore rear from 5.50 to 6.75\n",
  );
  expect(job?.text).toContain("  want 0.0008 to 0.0016");
  expect(crib?.text).toContain("reamer r-0-8755\n  size 0.8755");
  expect(checked(files).filter(({ code }) => !TO_MEASURE.has(code))).toEqual(
    [],
  );
});

const typed = fc.oneof(
  fc.constantFrom(
    "front",
    "bush",
    "in",
    "with",
    "7/8",
    "1",
    "0.75",
    "25 mm",
    "1.5",
    "12,5",
    "-3",
    "0",
    "1e9",
    '"; drop',
    "# no",
    "a\nb",
    "\u{FEFF}x",
    "é",
    "名前",
    "con",
    "__proto__",
    "constructor",
    "mm",
    "F",
    'a "b" c',
  ),
  fc.string({ unit: "binary", maxLength: 12 }),
  fc.double({ min: 0.05, max: 3, noNaN: true }).map((n) => n.toFixed(3)),
  fc
    .tuple(fc.integer({ min: 1, max: 20 }), fc.integer({ min: 21, max: 60 }))
    .map(
      ([a, b]) =>
        `0.${String(a).padStart(4, "0")} to 0.${String(b).padStart(4, "0")}`,
    ),
);

test("whatever is answered, the record is whole, laid out, and lacks only readings", () => {
  fc.assert(
    fc.property(
      fc.infiniteStream(fc.tuple(fc.nat(), typed, fc.boolean())),
      fc.constantFrom<Folder>(
        EMPTY,
        { names: null, crib: null },
        { names: ["crib.thou"], crib: CRIB },
      ),
      (stream, folder) => {
        const { files } = made((question) => {
          const {
            value: [number, text, isUsual],
          } = stream.next() as IteratorYieldResult<[number, string, boolean]>; // it has no end
          if (isUsual) return answerOf(question);
          if (question.kind === "text") return [text];
          if (question.many)
            return question.choices
              .filter((__, at) => ((number >> at) & 1) === 1)
              .map(({ value }) => value);
          return [
            question.choices[number % question.choices.length]?.value ?? "",
          ];
        }, folder);
        for (const { text } of files.files)
          expect(formatText(readLines(text))).toBe(text);
        const found = checked(
          files,
          folder.crib === null ? {} : { "crib.thou": folder.crib },
        );
        const isTrapped = /^ {2}depth .* blind\n(?! {2}vented)/mu.test(
          files.files[0]?.text ?? "",
        );
        const odd = found.filter(
          ({ code, level }) =>
            (level === "error" || level === "warning") &&
            !TO_MEASURE.has(code) &&
            !(isTrapped && code === "vent-missing"),
        );
        expect(odd.map(({ code, message }) => `${code}: ${message}`)).toEqual(
          [],
        );
        expect(files.files[0]?.text.split("\n")[files.caret.line]).toMatch(
          /^journal /u,
        );
      },
    ),
    { numRuns: 60 },
  );
});

describe("what is typed", () => {
  test("a text stands between quotes as it was, but for its own double quotes", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary", maxLength: 30 }), (text) => {
        const project = createProject({ root: "" });
        project.setFile("a", readLines(`job a\n  title ${quotedText(text)}\n`));
        const open = project.open("a");
        if (open === undefined) throw new Error("it is there");
        const title = valueIn(openingEntry(open.shop), "TitleFact");
        expect(title).toBe(quotedText(text).slice(1, -1));
      }),
    );
    expect(quotedText('12" shaft # 3')).toBe(`"12' shaft # 3"`);
  });

  test.each(["", "123", "in", "bush", "--", "a".repeat(41), "#", "🙂"])(
    "%j is no name, and a sentence says why",
    (text) => {
      expect(readName(text, "a bore")).toHaveProperty("fault");
    },
  );

  test("a name that differs from another in capitals alone is refused", () => {
    expect(readName("Front", "a bore", ["front"])).toEqual({
      fault: "`Front` and `front` differ in capitals alone. Take another name.",
    });
    expect(readName("front", "a bore", ["front"])).toHaveProperty(
      "fault",
      "`front` is taken already. Take another name.",
    );
    expect(readName("Front", "a bore", ["rear"])).toEqual({ value: "Front" });
  });

  test.each(["front, rear", "front and rear", "front & rear", "front; rear"])(
    "%j is two places, and they are asked for one at a time",
    (text) => {
      const answers = made(answerOf).asked.map((question) => ({
        key: question.key,
        values: question.key === "seat 1" ? [text] : answerOf(question),
      }));
      const next = newJob({ answers, ...EMPTY, today: TODAY });
      if (!("question" in next)) throw new Error("it asks again");
      expect(next.question).toMatchObject({
        key: "seat 1",
        fault: expect.stringContaining("One place at a time") as string,
      });
    },
  );

  test("a length with a letter where a digit belongs is said so", () => {
    expect(readSize("O.875", "inch")).toEqual({
      fault: "`O.875` has a letter where a digit belongs: write `0.875`.",
    });
    expect(readSize("l/2", "inch")).toHaveProperty(
      "fault",
      "`l/2` has a letter where a digit belongs: write `1/2`.",
    );
    expect(readSize("22 mm", "inch")).toHaveProperty("value");
  });

  test.each([
    ["7/8", "inch", "0.875"],
    ["0.8750", "inch", "0.8750"],
    ["22.225 mm", "inch", "0.875"],
    ['1"', "inch", "1"],
    ["1 in", "mm", "25.4"],
    ["25.0", "mm", "25.0"],
    ["1-3/16", "inch", "1.1875"],
  ] as const)("%s in %s is written %s", (text, system, expected) => {
    const read = readSize(text, system);
    expect("value" in read && read.value.text).toBe(expected);
  });

  test.each(["", "x", "0", "-1", "12,5", "4 F", "1e99", "1/0"])(
    "%j is no length, and a sentence says why",
    (text) => {
      expect(readSize(text, "mm")).toHaveProperty("fault");
    },
  );
});

test("what a class comes to is shown with the digits that its limits take", () => {
  // B4.1 gives RC1 at 7/8 in 0.30 to 0.95 thou, RC4 0.8 to 2.8
  const { asked } = made((question) =>
    question.key === "size 1"
      ? ["7/8"]
      : question.key === "units"
        ? ["inch"]
        : asOffered(question),
  );
  const want = asked.find(({ key }) => key === "want");
  const beside = (word: string): string | undefined =>
    want?.kind === "pick"
      ? want.choices.find(({ value }) => value === `class ${word}`)?.beside
      : undefined;
  expect(beside("RC1")).toBe("0.00030 to 0.00095 in");
  expect(beside("RC4")).toBe("0.0008 to 0.0028 in");
});
