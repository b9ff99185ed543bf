// A swing as it is taken: what is asked, what the box says, and that the record then says the same.
import { describe, expect, test } from "vitest";
import { readLines } from "../../../grammar/lines.ts";
import { formatText } from "../../../grammar/print.ts";
import { planFrom } from "../../../server/ide/taking/plan.ts";
import { promptAfter } from "../../../server/ide/taking/prompt.ts";
import { takingSetup } from "../../../server/ide/taking/setup.ts";
import { resultsIn } from "../../../server/model/project.ts";
import type { Answer, TakingPlan } from "../../../server/protocol/guide.ts";
import { opened } from "../opened.ts";

const JOB = `job winch
  units inch
gauge mic-1
  kind micrometer
gauge dti-1
  kind indicator
gauge bore-1
  kind bore-gauge
part shaft
part case
journal front on shaft
  limits 0.8740 to 0.8745
  read near 0.8742 0.8743 with mic-1
  read far 0.8742 0.8743 with mic-1
hole front in case
  read 1.0002
bore front in case
  read 0.8714 as roughed
line shaft
  bore front from 0 to 1
`;
const DATE = "2026-11-05";
const answer = (key: string, value: string): Answer => ({
  key,
  values: [value],
});

function ask(...answers: readonly Answer[]) {
  return takingSetup(
    opened(JOB, {}),
    { ref: null, position: null },
    answers,
    DATE,
  );
}

function question(...answers: readonly Answer[]) {
  const asked = ask(...answers);
  if (!("question" in asked)) throw new Error("it asks");
  expect(asked.accepted).toBe(answers.length);
  return asked.question;
}

const containing = (words: string): string =>
  expect.stringContaining(words) as string;

const JOURNAL = answer("target", "journal front swing");
const LOBES = answer("lobes journal front", "3");
const VEE = answer("vee 3", "vee 60 deg");
const GAUGE = answer("gauge-swing-outside", "dti-1");
const WHERE = answer("where-swing", "swing near far");

const PLAN: TakingPlan = {
  ref: "journal front",
  side: null,
  fact: "swing",
  turned: "vee 60 deg, 3 lobes",
  places: ["near", "far"],
  each: 1,
  gauge: "dti-1",
  temperature: null,
  stage: null,
  date: DATE,
  system: "inch",
  expected: { low: 0.874 * 0.0254, high: 0.8745 * 0.0254 },
  resolution: null,
};

/** The record with the lines of a prompt in it. */
function written(plan: TakingPlan, ...inputs: readonly string[]): string {
  const { edit } = promptAfter(opened(JOB, {}), 1, plan, inputs);
  if (edit === null) throw new Error("there is nothing to write");
  const lines = JOB.split("\n");
  const line = lines[edit.line] ?? "";
  lines[edit.line] =
    line.slice(0, edit.character) + edit.text + line.slice(edit.character);
  return lines.join("\n");
}

describe("what is asked", () => {
  test("of a journal: how many lobes, how it is turned, with what, where; and that makes the plan", () => {
    const made = ask(JOURNAL, LOBES, VEE, GAUGE, WHERE);
    expect(made).toEqual({ plan: PLAN });
    expect(planFrom(JSON.parse(JSON.stringify(PLAN)))).toEqual(PLAN);
    expect(question(JOURNAL).key).toBe("lobes journal front");
    expect(question(JOURNAL, LOBES).step).toBe(3);
  });

  test("offers the vee that shows the lobes largest first, and says of each what it shows", () => {
    const vees = (lobes: string) => {
      const asked = question(JOURNAL, answer("lobes journal front", lobes));
      if (asked.kind !== "pick") throw new Error("it offers");
      return asked.choices.map(({ value, beside, picked }) => [
        value,
        beside,
        picked,
      ]);
    };
    // J. Jpn. Soc. Precis. Eng. 43 (1977) no. 514, p. 1167, abstract, for a vee: 1 + cos n(90° + θ/2)/sin(θ/2), by hand
    expect(vees("3")).toEqual([
      ["vee 60 deg", "shows them 3.00 times", true],
      ["vee 90 deg", "shows them 2.00 times", false],
      ["vee 108 deg", "shows them 1.38 times", false],
      ["vee 120 deg", "shows them 1.00 times", false],
      ["three points", "shows them 2.00 times", false],
      ["other", "", false],
    ]);
    expect(vees("5")[0]).toEqual([
      "vee 108 deg",
      "shows them 2.24 times",
      true,
    ]);
    expect(vees("5").slice(-3)).toEqual([
      ["vee 60 deg", "blind to so many lobes", false],
      ["three points", "blind to so many lobes", false],
      ["other", "", false],
    ]);
  });

  test("another vee by its angle", () => {
    const other = answer("vee 3", "other");
    const made = ask(
      JOURNAL,
      LOBES,
      other,
      answer("vee-angle", "72,5°"),
      GAUGE,
      WHERE,
    );
    expect(made).toMatchObject({ plan: { turned: "vee 72.5 deg, 3 lobes" } });
    for (const wrong of ["", "0", "180", "flat"]) {
      const asked = ask(JOURNAL, LOBES, other, answer("vee-angle", wrong));
      expect(asked, wrong).toMatchObject({
        question: { fault: containing("between 0 and 180") },
      });
    }
  });

  test.each([
    ["journal front", "", "Nothing follows from a swing without"],
    ["journal front", "1", "two lobes at least"],
    ["journal front", "three", "a whole number"],
    ["journal front", "2.5", "a whole number"],
    ["hole front", "5", "nothing of 5"],
  ])("%s takes no %j lobes, with a sentence", (ref, lobes, words) => {
    const asked = ask(
      answer("target", `${ref} swing`),
      answer(`lobes ${ref}`, lobes),
    );
    expect(asked).toMatchObject({
      accepted: 1,
      question: { kind: "text", fault: containing(words) },
    });
  });

  test("of a hole no vee, and of a bore that is not cut how far it has come", () => {
    const hole = ask(
      answer("target", "hole front swing"),
      answer("lobes hole front", "3"),
      answer("gauge-swing-inside", "bore-1"),
      answer("where-swing", "swing"),
    );
    if (!("plan" in hole)) throw new Error("all is answered");
    expect(
      promptAfter(opened(JOB, {}), 1, hole.plan, ["0.0004"]).lines,
    ).toEqual([
      "swing 0.0004 on three points, 3 lobes with bore-1 on 2026-11-05",
    ]);
    const plan: TakingPlan = {
      ...hole.plan,
      ref: "bore front",
      stage: "roughed",
    };
    expect(planFrom(plan)).toEqual(plan);
    const { lines, text } = promptAfter(opened(JOB, {}), 1, plan, ["0.0004"]);
    expect(lines).toEqual([
      "swing 0.0004 on three points, 3 lobes with bore-1 as roughed on 2026-11-05",
    ]);
    expect(text).toContain("its mate meets it smaller by 0.00020 in");
  });

  test("nothing of what has a swing, of a bush or of a tool, nor where an entry was pointed at", () => {
    const targets = (text: string, ref: string | null) => {
      const asked = takingSetup(
        opened(text, {}),
        { ref, position: null },
        [],
        DATE,
      );
      return "question" in asked && asked.question.kind === "pick"
        ? asked.question.choices.map(({ value }) => value)
        : [];
    };
    expect(targets(JOB, null)).toContain("journal front swing");
    const turned = JOB.replace(
      "hole front in",
      "  swing 0.0002 on vee 60 deg, 3 lobes\nhole front in",
    );
    expect(targets(turned, null)).not.toContain("journal front swing");
    expect(targets(turned, null)).toContain("hole front swing");
    expect(targets(JOB, "journal front")).not.toContain("journal front swing");
  });
});

describe("what the box says", () => {
  test("which turn comes next, and what it comes to", () => {
    const open = opened(JOB, {});
    expect(promptAfter(open, 1, PLAN, [])).toMatchObject({
      title: "journal front: place near, swing on vee 60 deg, 3 lobes",
      step: 1,
      of: 2,
      placeholder: "Turn it once, and type how far the pointer went (in)",
      doubt: null,
    });
    const one = promptAfter(open, 1, PLAN, ["0.0006"]);
    expect(one.title).toContain("place far");
    // over the 3.00 of a vee of 60°
    expect(one.text).toContain(
      "Radial roundness 0.00020 in. Two points don't see an odd number of lobes: its mate meets it larger by 0.00020 in.",
    );
    const both = promptAfter(open, 1, PLAN, ["0.0006", "0.0000"]);
    expect(both).toMatchObject({
      isDone: true,
      taken: 2,
      placeholder: "Enter writes the swings",
    });
    expect(both.summary).toContain("journal front: 2 swings. Radial");
  });

  test("that a vee is blind, and what would show it; and that two points see an even number", () => {
    const text = (turned: string) =>
      promptAfter(opened(JOB, {}), 1, { ...PLAN, turned }, ["0.0003"]).text;
    expect(text("vee 60 deg, 5 lobes")).toContain(
      "shows nothing of these lobes: that takes the swing of journal front in a vee of 108°",
    );
    expect(text("vee 90 deg, 4 lobes")).toContain(
      "Two points see an even number of lobes.",
    );
  });

  test("what is far for a swing is asked about, a size before all", () => {
    const said = (input: string, plan = PLAN) =>
      promptAfter(opened(JOB, {}), 1, plan, [input]);
    expect(said("0.8743").doubt).toContain("is far for a pointer to swing");
    expect(said("0.8743").taken).toBe(0);
    expect(said("0.0087").doubt).toBeNull();
    expect(said("0.0088").doubt).toContain("far");
    expect(said("-0.0002").doubt).toContain("a swing is not");
    const alone = { ...PLAN, expected: null };
    expect(said("1.0 mm", alone).doubt).toBeNull();
    expect(said("1.1 mm", alone).doubt).toContain("far");
    const kept = promptAfter(opened(JOB, {}), 1, PLAN, ["0.0088", "k"]);
    expect(kept.lines).toEqual([
      "swing near 0.0088 on vee 60 deg, 3 lobes with dti-1 on 2026-11-05",
    ]);
  });
});

test("the lines stand as the formatter puts them, and a check says what the box said", () => {
  const text = written(PLAN, "0.0003", "0.0006", "u", "15 um");
  expect(formatText(readLines(text))).toBe(text);
  expect(text).toContain(
    "swing near 0.0003 on vee 60 deg, 3 lobes with dti-1 on 2026-11-05\n  swing far 15 um on vee 60 deg, 3 lobes with dti-1 on 2026-11-05\n",
  );
  const roundness = resultsIn(opened(text, {})).find(
    ({ kind }) => kind === "roundness",
  );
  // 15 µm over 3.00 is more than 0.0003 in over 3.00
  expect(roundness?.nominal).toBeCloseTo(5e-6, 12);
  const { summary } = promptAfter(opened(JOB, {}), 1, PLAN, [
    "0.0003",
    "15 um",
  ]);
  expect(summary).toContain(`Radial roundness ${String(roundness?.text)}`);
});

test("once it is taken nothing asks for it again", () => {
  const after = (plan: TakingPlan) =>
    promptAfter(opened(JOB, {}), 1, plan, ["0.0003"]).after.map(
      ({ target }) => target,
    );
  expect(after(PLAN)).toEqual([null]);
  expect(after({ ...PLAN, fact: "read", turned: null, each: 2 })).toEqual([
    null,
    "journal front swing",
  ]);
});

describe("a plan that no server made is refused", () => {
  test.each([
    { turned: null },
    { fact: "read" },
    { turned: "vee 60 deg, 3 lobes\nstep x" },
    { turned: "vee 60 deg, 0 lobes" },
    { ref: "hole front" },
    { ref: "reamer r", turned: "three points, 3 lobes" },
    { side: "od" },
    { temperature: "68 F" },
  ])("%j", (wrong) => {
    expect(planFrom({ ...PLAN, ...wrong })).toBeUndefined();
  });

  test("one of an earlier version, which knew no swings, is not", () => {
    const before = { ...PLAN, fact: "read", turned: undefined };
    expect(planFrom(before)).toMatchObject({ fact: "read", turned: null });
  });
});
