// What the prompt shows while readings are taken, held against the check of the record once the lines stand in it, and against sums done
// apart.
import { readFileSync } from "node:fs";
import path from "node:path";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { formatText } from "../../../grammar/print.ts";
import { readLines } from "../../../grammar/lines.ts";
import { lengthDigits } from "../../../server/core/quantity/show.ts";
import { planFrom } from "../../../server/ide/taking/plan.ts";
import { promptAfter } from "../../../server/ide/taking/prompt.ts";
import { overviewOf } from "../../../server/ide/overview.ts";
import { takingSetup } from "../../../server/ide/taking/setup.ts";
import type {
  Answer,
  TakingPlan,
  TakingPrompt,
} from "../../../server/protocol/guide.ts";
import { resultsIn } from "../../../server/model/project.ts";
import { findingsIn } from "../../../server/rules/check.ts";
import { opened } from "../opened.ts";
import { PLAN, REPEATS } from "./plans.ts";

const SHOP = path.join(import.meta.dirname, "../../../samples/shop");
const sample = (name: string): string =>
  readFileSync(path.join(SHOP, name), "utf8");
const CRIB = { "crib.thou": sample("crib.thou") };
const WINCH = sample("winch.thou");

/** The record with the lines of a prompt in it. */
function written(text: string, { edit }: TakingPrompt): string {
  if (edit === null) throw new Error("there is nothing to write");
  const lines = text.split("\n");
  const line = lines[edit.line] ?? "";
  lines[edit.line] =
    line.slice(0, edit.character) + edit.text + line.slice(edit.character);
  return lines.join("\n");
}

const SIX = ["0.87432", "0.87428", "0.87430", "0.87435", "0.87431", "0.87432"];

describe("the prompt", () => {
  test("says what comes next and what it comes to so far", () => {
    const open = opened(WINCH, CRIB);
    expect(promptAfter(open, 3, PLAN, [])).toMatchObject({
      title: "journal rear: place near, angle 1 of 3",
      step: 1,
      of: 6,
      taken: 0,
      doubt: null,
      edit: null,
      gone: null,
      lines: [],
    });
    // the gauge and the temperature may have been answered for a target before
    const told = "Written with mic-1 at 68 F; g changes that.";
    expect(promptAfter(open, 3, PLAN, []).text).toContain(told);
    expect(promptAfter(open, 3, PLAN, SIX.slice(0, 1)).text).not.toContain(
      told,
    );
    const bare = { ...PLAN, gauge: null, temperature: null };
    expect(promptAfter(open, 3, bare, []).text).not.toContain("Written");
    const after = promptAfter(open, 3, PLAN, SIX.slice(0, 4));
    expect(after.title).toBe("journal rear: place far, angle 2 of 3");
    expect(after.step).toBe(5);
    expect(after.text).toContain("Here so far: 0.87435 in.");
    expect(after.text).toContain(
      "Mean 0.87431 in, out-of-round 0.00004 in, taper 0.00005 in.",
    );
    expect(after.text).toContain("In: within 0.8740 to 0.8745 in.");
    expect(after.edit?.version).toBe(3);
  });

  test("tells out from in, and unsure from both", () => {
    const open = opened(WINCH, CRIB);
    const said = (...inputs: string[]) =>
      promptAfter(open, null, PLAN, inputs).text;
    expect(said("0.8751")).toContain("Out: not within 0.8740 to 0.8745 in.");
    expect(said("0.87450")).toContain("Unsure whether within");
  });

  test("of repeats tells how they scatter, and gives no verdict", () => {
    const open = opened(WINCH, CRIB);
    const { text } = promptAfter(open, null, REPEATS, ["0.87430", "0.87433"]);
    expect(text).toContain("largest less smallest 0.00003 in");
    expect(text).toContain("standard deviation 0.000021 in");
    expect(text).not.toMatch(/within|In:|out-of-round/u);
  });

  test("brings readings to 20 °C as the check does, and says so", () => {
    const open = opened(WINCH, CRIB);
    const plan = { ...PLAN, temperature: "104 F" };
    // 0.87430 in of steel, 20 K above: it grows 0 to 1.5 µm/m-K more than the gauge, which takes 0 to 0.00003 in
    expect(promptAfter(open, null, plan, ["0.87430"]).text).toMatch(
      /Mean 0\.874(?:2[789]|30) in at 20 °C/u,
    );
  });

  test("asks in its own words, and says a doubt apart from a slip", () => {
    const open = opened(WINCH, CRIB);
    const asked = promptAfter(open, null, PLAN, ["22.207"]);
    expect(asked.doubt).toContain("millimetres");
    expect(asked.offers.map(({ word }) => word)).toEqual(["mm", "k", "u", "s"]);
    expect(promptAfter(open, null, PLAN, ["ERR"]).doubt).toContain("ERR");
  });

  test("keeps the lines where the entry or the record is gone, and says so", () => {
    const without = opened(
      WINCH.replace("journal rear on layshaft", "journal far on layshaft"),
      CRIB,
    );
    const gone = promptAfter(without, 1, PLAN, SIX);
    expect(gone.gone).toContain("journal rear is no longer in this record");
    expect(gone.edit).toBeNull();
    expect(gone.lines).toHaveLength(2);
    const away = promptAfter(undefined, null, PLAN, SIX);
    expect(away.gone).toContain("no longer there");
    expect(away.lines).toEqual(gone.lines);
  });

  test("finds the entry wherever it has moved", () => {
    const moved = `# a remark\n\n${WINCH}`;
    const prompt = promptAfter(opened(moved, CRIB), 1, PLAN, SIX);
    expect(written(moved, prompt)).toContain(
      `journal rear on layshaft
  length 1.250
  limits 0.8740 to 0.8745 from "yard drawing L-204"
  finish 16 uin Ra
  read near 0.87432 0.87428 0.87430 with mic-1 at 68 F on 2026-11-05
  read far 0.87435 0.87431 0.87432 with mic-1 at 68 F on 2026-11-05

hole front in case`,
    );
  });

  test("adds to the readings that stand there, after the last of them", () => {
    const plan = { ...PLAN, ref: "journal front" };
    const prompt = promptAfter(opened(WINCH, CRIB), 1, plan, ["0.8743"]);
    expect(written(WINCH, prompt)).toContain(
      `read far 0.87435 0.87431 0.87432 with mic-1 at 68 F
  read near 0.8743 with mic-1 at 68 F on 2026-11-05
  finish 16 uin Ra`,
    );
  });

  test("keeps the line ends of the record", () => {
    const crlf = WINCH.replaceAll("\n", "\r\n");
    const { edit } = promptAfter(opened(crlf, CRIB), 1, PLAN, ["0.8743"]);
    expect(edit?.text.startsWith("\r\n  read near")).toBe(true);
  });

  test("says nothing of figures where a line can't be read", () => {
    const damaged = WINCH.replace(
      "journal rear on layshaft\n",
      "journal rear on layshaft\n  read near 0.87x\n",
    );
    const { text, lines } = promptAfter(opened(damaged, CRIB), 1, PLAN, SIX);
    expect(text).toContain("No figures");
    expect(lines).toHaveLength(2);
  });
});

/** The first number with a unit after a word, in inches. */
function shown(text: string, word: string): number | undefined {
  const found = new RegExp(`${word} (\\d+\\.\\d+) in`, "u").exec(text)?.[1];
  return found === undefined ? undefined : Number(found);
}

const readings = fc.array(
  fc.integer({ min: 87_360, max: 87_480 }).map((n) => `0.${String(n)}`),
  { minLength: 2, maxLength: 6 },
);

test("the lines read well, stand as the formatter puts them, and come to what the prompt showed", () => {
  fc.assert(
    fc.property(readings, fc.boolean(), (values, oneMore) => {
      const inputs = oneMore ? [...values, "u", values.at(-1) ?? ""] : values;
      const prompt = promptAfter(opened(WINCH, CRIB), 1, PLAN, inputs);
      const text = written(WINCH, prompt);
      expect(formatText(readLines(text))).toBe(text);
      const open = opened(text, CRIB);
      const results = resultsIn(open).filter(
        ({ entry }) => entry === "journal rear",
      );
      const nominal = (kind: string) =>
        results.find((each) => each.kind === kind)?.nominal ?? undefined;
      const inches = (metres: number | undefined) =>
        metres === undefined
          ? undefined
          : lengthDigits(metres, "inch", 0.0254e-5);
      expect(shown(prompt.summary, "Mean")?.toFixed(5)).toBe(
        inches(nominal("size")),
      );
      expect(shown(prompt.summary, "out-of-round")?.toFixed(5)).toBe(
        inches(nominal("out-of-round")),
      );
      expect(shown(prompt.summary, "taper")?.toFixed(5)).toBe(
        inches(nominal("taper")),
      );
      const verdict = results.find(({ kind }) => kind === "size")?.verdict;
      expect(prompt.summary).toContain(
        { in: "In: ", out: "Out: ", unsure: "Unsure ", none: "No limits" }[
          verdict ?? "none"
        ],
      );
      // by sums done apart, in whole hundredths of a thou
      const numbers = values.map(Number);
      const near = numbers.slice(0, 3);
      const far = numbers.slice(3);
      const spread = (of: number[]) =>
        of.length < 2 ? 0 : Math.max(...of) - Math.min(...of);
      const sum = values.reduce((all, each) => all + Number(each.slice(2)), 0);
      expect(
        Math.abs(
          1e5 * (shown(prompt.summary, "Mean") ?? 0) - sum / values.length,
        ),
      ).toBeLessThan(0.51);
      expect(shown(prompt.summary, "out-of-round")).toBeCloseTo(
        Math.max(spread(near), spread(far)),
        6,
      );
      // nothing but what the sizes themselves bring about
      const codes = findingsIn(open)
        .filter(({ entry }) => entry === "journal rear")
        .map(({ code }) => code);
      for (const code of codes)
        expect([
          "reading-off-limits",
          "out-of-round",
          "taper",
          "gauge-coarse",
        ]).toContain(code);
    }),
    { numRuns: 40 },
  );
});

describe("what may follow", () => {
  test("the other journal before the reamer is chosen, and the choice once no journal is left", () => {
    // of winch.thou only journal rear and the bushes have no reading
    const front = { ...PLAN, ref: "journal front" };
    const before = promptAfter(opened(WINCH, CRIB), 1, front, []).after;
    expect(before.map(({ does, target }) => [does, target])).toEqual([
      ["take", "journal rear"],
      ["see", null],
      ["take", "journal front swing"],
    ]);
    const last = promptAfter(opened(WINCH, CRIB), 1, PLAN, []).after;
    expect(last.map(({ does, target }) => [does, target])).toEqual([
      ["see", null],
      ["take", "bush front od"],
      ["take", "journal rear swing"],
    ]);
    expect(last[1]?.label).toBe("Take readings of bush front, outside");
  });

  test("it counts what is to measure as the overview will once the lines stand", () => {
    const said = (text: string, plan: TakingPlan): string | undefined =>
      promptAfter(opened(text, CRIB), 1, plan, SIX).after.find(
        ({ does }) => does === "take",
      )?.below;
    const counted = (text: string): number =>
      overviewOf(opened(text, CRIB), {}, String).counts.toMeasure;
    // no journal, hole or bush of it is read: two bores are still to cut, and each bush has two diameters
    const bare = WINCH.replaceAll(/^ {2}read .*\n/gmu, "");
    const first = promptAfter(opened(bare, CRIB), 1, PLAN, SIX);
    const after = written(bare, first);
    expect(counted(after)).toBeGreaterThan(2);
    expect(said(bare, PLAN)).toBe(
      `${String(counted(after))} are left to measure`,
    );
    const last = "job a\n  units mm\npart p\njournal j on p\njournal k on p\n";
    const plan = { ...PLAN, ref: "journal j", system: "mm" } as const;
    expect(said(last, plan)).toBe("The last one left to measure");
    const reamer = `${last.replace("journal k on p\n", "")}reamer r\n  size 25\n`;
    expect(said(reamer, plan)).toBe(
      "It has no reading, and nothing waits for one",
    );
  });

  test("each target is an answer that the setup takes", () => {
    const open = opened(WINCH, CRIB);
    const [next] = promptAfter(
      open,
      1,
      { ...PLAN, ref: "journal front" },
      [],
    ).after;
    const asked = takingSetup(
      open,
      { ref: null, position: null },
      [{ key: "target", values: [next?.target ?? ""] }],
      "2026-11-05",
    );
    if (!("question" in asked)) throw new Error("it asks on");
    expect(asked.accepted).toBe(1);
  });

  test("nothing but seeing is left where all has been read and turned", () => {
    const text =
      "job a\n  units mm\npart p\njournal j on p\n  read 25 25\n  swing 0.002 on vee 60 deg, 3 lobes\n";
    const plan = { ...PLAN, ref: "journal j", system: "mm" } as const;
    expect(
      promptAfter(opened(text, {}), 1, plan, []).after.map(({ does }) => does),
    ).toEqual(["see"]);
  });
});

test("a box shows words in quotes, not in the marks of code", () => {
  const { doubt } = promptAfter(opened(WINCH, CRIB), 1, PLAN, ["0.87x"]);
  expect(doubt).toContain("‘x’");
});

describe("the setup", () => {
  const DATE = "2026-11-05";
  const ask = (
    text: string,
    answers: readonly Answer[],
    ref: string | null = null,
  ) => takingSetup(opened(text, CRIB), { ref, position: null }, answers, DATE);

  test("offers no gauge for a shaft that goes into holes alone", () => {
    const gauges = (target: string): readonly string[] => {
      const asked = ask(WINCH, [
        { key: "target", values: [target] },
        ...(target.startsWith("bore ")
          ? [{ key: `stage ${target}`, values: ["pressed"] }]
          : []),
      ]);
      if (!("question" in asked) || asked.question.kind !== "pick")
        throw new Error("it offers");
      return asked.question.choices.map(({ value }) => value);
    };
    expect(gauges("bore rear")).toContain("bore-1");
    expect(gauges("journal rear")).toContain("mic-1");
    expect(gauges("journal rear")).not.toContain("bore-1");
    expect(gauges("bush rear od")).not.toContain("bore-1");
    expect(gauges("bush rear id")).toContain("bore-1");
  });

  test("offers first what lacks readings, and asks each thing once", () => {
    const first = ask(WINCH, []);
    if (!("question" in first)) throw new Error("it asks");
    const { question } = first;
    if (question.kind !== "pick") throw new Error("it offers");
    expect(question.choices.map(({ value }) => value)).toEqual([
      "journal rear",
      "bush front od",
      "bush front id",
      "bush rear od",
      "bush rear id",
      "journal front",
      "hole front",
      "hole rear",
      "bore front",
      "bore rear",
      "journal front swing",
      "hole front swing",
      "hole rear swing",
      "bore front swing",
      "bore rear swing",
    ]);
    expect(question.choices[0]).toMatchObject({
      beside: "no readings yet",
      below: "0.8740 to 0.8745 in",
      picked: true,
    });
    expect([question.step, question.of]).toEqual([1, 4]);
  });

  const answers: readonly Answer[] = [
    { key: "target", values: ["journal rear"] },
    { key: "gauge-outside", values: ["mic-1"] },
    { key: "temperature", values: ["68 °f"] },
    { key: "where-part", values: ["read near far 3"] },
  ];

  test("makes the plan, and the plan comes back through the wire", () => {
    const made = ask(WINCH, answers);
    expect(made).toEqual({ plan: PLAN });
    expect(planFrom(JSON.parse(JSON.stringify(PLAN)))).toEqual(PLAN);
  });

  test("puts the gauges of the place first", () => {
    const asked = ask(WINCH, [{ key: "target", values: ["hole front"] }]);
    if (!("question" in asked) || asked.question.kind !== "pick")
      throw new Error("it offers");
    expect(asked.question.key).toBe("gauge-inside");
    expect(asked.question.choices[0]?.value).toBe("bore-1");
    expect(asked.question.choices.at(-1)?.value).toBe("");
  });

  test("asks how far a bore has come that is not cut yet", () => {
    const asked = ask(WINCH, [{ key: "target", values: ["bore front"] }]);
    expect("question" in asked && asked.question.key).toBe("stage bore front");
    const made = ask(WINCH, [
      { key: "target", values: ["bore front"] },
      { key: "stage bore front", values: ["pressed"] },
      { key: "gauge-inside", values: ["bore-1"] },
      { key: "temperature", values: [""] },
      { key: "where-part", values: ["read 3"] },
    ]);
    if (!("plan" in made)) throw new Error("all is answered");
    const { lines, text } = promptAfter(opened(WINCH, CRIB), 1, made.plan, [
      "0.8709",
    ]);
    expect(lines).toEqual(["read 0.8709 with bore-1 as pressed on 2026-11-05"]);
    // the limits of a bore are for when it is finished
    expect(text).toContain("No limits to hold it against.");
  });

  test("refuses a temperature without a scale, with a sentence", () => {
    for (const [typed, words] of [
      ["68", "68 F or 68 C"],
      ["warm", "68 F"],
      ["900 C", "no temperature to read a size at"],
    ] as const) {
      const asked = ask(WINCH, [
        ...answers.slice(0, 2),
        { key: "temperature", values: [typed] },
      ]);
      if (!("question" in asked) || asked.question.kind !== "text")
        throw new Error("it asks again");
      expect(asked.question.fault).toContain(words);
      expect(asked.accepted).toBe(2);
    }
  });

  test("says what is missing where there is nothing to read", () => {
    expect(ask("job a\n  units mm\n", [])).toHaveProperty("sentence");
    expect(ask("journal a on b\n", [])).toHaveProperty("sentence");
    expect(ask(WINCH, [], "journal nowhere")).toHaveProperty("sentence");
  });

  test("both diameters of a bush, and a reamer of the crib", () => {
    const od = ask(
      WINCH,
      [
        { key: "target", values: ["bush front od"] },
        { key: "gauge-outside", values: [""] },
        { key: "temperature", values: [""] },
        { key: "where-part", values: ["read 3"] },
      ],
      "bush front",
    );
    if (!("plan" in od)) throw new Error("all is answered");
    const prompt = promptAfter(opened(WINCH, CRIB), 1, od.plan, ["1.0011"]);
    expect(prompt.lines).toEqual(["read od 1.0011 on 2026-11-05"]);
    expect(prompt.text).toContain(
      "Unsure whether within 1.0010 to 1.0011 in: the verdict is guarded, and needs the gauge that read bush front.",
    );
    const tool = ask(CRIB["crib.thou"], [
      { key: "target", values: ["reamer r-876"] },
      { key: "gauge-outside", values: ["mic-1"] },
      { key: "temperature", values: [""] },
      { key: "where-tool", values: ["read 2"] },
    ]);
    expect(tool).toMatchObject({
      plan: { ref: "reamer r-876", places: [null], each: 2 },
    });
  });
});

describe("a nominal size", () => {
  const text = `job w
  units inch
  use "crib.thou"
part s
part c
journal a on s
  nominal 7/8
hole a in c
  nominal 1
bore a in part c
fit a of journal a in bore a
`;
  /** What the plan expects when each question but the first is left at what stands there. */
  const expectedOfPlan = (target: string, record = text) => {
    const answers: Answer[] = [{ key: "target", values: [target] }];
    for (;;) {
      const asked = takingSetup(
        opened(record, CRIB),
        { ref: null, position: null },
        answers,
        "2026-11-05",
      );
      if ("plan" in asked) return asked.plan.expected;
      if (!("question" in asked)) throw new Error(JSON.stringify(asked));
      const { question } = asked;
      const value =
        question.kind === "pick" ? (question.choices[0]?.value ?? "") : "";
      answers.push({ key: question.key, values: [value] });
    }
  };

  test("is what the first reading is held against, on its own part and on its mate", () => {
    const seven = { low: 0.022225, high: 0.022225 };
    expect(expectedOfPlan("journal a")).toEqual(seven);
    expect(expectedOfPlan("bore a")).toEqual(seven);
    expect(expectedOfPlan("hole a")).toEqual({ low: 0.0254, high: 0.0254 });
    expect(
      expectedOfPlan("journal a", text.replace("  nominal 7/8\n", "")),
    ).toBeNull();
  });

  test("gives way to limits and to what was read", () => {
    expect(
      expectedOfPlan(
        "journal a",
        text.replace(
          "  nominal 7/8",
          "  nominal 7/8\n  limits 0.8740 to 0.8745",
        ),
      ),
    ).toEqual({ low: 0.0221996, high: 0.0222123 });
    expect(
      expectedOfPlan(
        "journal a",
        text.replace("  nominal 7/8", "  nominal 7/8\n  read 0.8800"),
      ),
    ).toEqual({ low: 0.022352, high: 0.022352 });
  });
});

describe("a plan that comes back changed is none", () => {
  test.each<[string, Record<string, unknown>]>([
    ["another line in the reference", { ref: "journal a\n  note" }],
    ["an entry that takes no readings", { ref: "fit front" }],
    ["a gauge with more than a name", { gauge: "mic-1 as bought" }],
    ["a gauge that is a word of the grammar", { gauge: "with" }],
    ["a place that opens a clause", { places: ["at"] }],
    ["no place", { places: [] }],
    ["the same place twice", { places: ["near", "near"] }],
    ["a temperature in words", { temperature: "68 F\n  note" }],
    ["no date", { date: null }],
    ["too many readings", { each: 1e9 }],
    ["an endless expectation", { expected: { low: 1, high: Infinity } }],
    ["a bush's repeats", { ref: "bush a", side: "od", fact: "repeat" }],
  ])("%s", (_, change) => {
    expect(planFrom({ ...PLAN, ...change })).toBeUndefined();
  });

  test("whatever it is", () => {
    fc.assert(
      fc.property(fc.anything(), (given) => {
        planFrom(given);
      }),
    );
    expect(planFrom({} satisfies Partial<TakingPlan>)).toBeUndefined();
  });
});
