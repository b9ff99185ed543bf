// What is said of a gauge that the records taught to be off, beyond what the page's samples show: which way, what it is to add, and when that
// can't be told. Lengths are worked out by hand.
import { describe, expect, test } from "vitest";
import { foundIn, messages, toldIn } from "./found.ts";

describe("a gauge that the records taught to be off", () => {
  const CODE = "gauge-off";
  const lesson = (
    about: string,
    reads: string,
    gauges = "",
  ): string => `shop learned
  units inch
gauge mic-1
  adds -0.02 thou
gauge mic-2
  resolution 0.00001
gauge bore-1
  resolution 0.00001
  set on ring 0.8750
${gauges}lesson a
${about === "" ? "" : `  gauge ${about}\n`}${reads === "" ? "" : `  reads ${reads}\n`}`;
  const fixes = (...of: Parameters<typeof lesson>): readonly string[] =>
    foundIn(lesson(...of), CODE).flatMap(({ fixes: all }) =>
      all.flatMap(({ title, edits }) => [
        title,
        ...edits.map(({ text }) => text),
      ]),
    );

  test("is told which way, and is to add what it reads under with what it added before taken in", () => {
    expect(
      toldIn(
        lesson("mic-1 against bore-1", "-0.06 thou  spread 0.02 thou from 9"),
        CODE,
      ),
    ).toEqual([
      "12:3-44 information gauge-off of lesson a: mic-1 reads 0.00006 in under bore-1, spread 0.00002 in from 9, more than chance explains (99 %). gauge bore-1 is set on a ring, so it is gauge mic-1 that is off: have it calibrated, or write what it `adds`, and learn again.",
      "  see 3:7-12: gauge mic-1, which reads otherwise",
      "  see 7:7-13: gauge bore-1, which it was read against",
      // −0.02 + 0.06, which leaves nothing
      "  fix: Write `adds +0.04 thou` under gauge mic-1",
      '    4:3-18 "adds +0.04 thou"',
      '    12:3-44 "reads +0.00 thou  spread 0.02 thou from 9"',
    ]);
    expect(
      fixes("mic-1 against bore-1", "+0.03 thou spread 0.01 thou from 9"),
    ).toEqual([
      "Write `adds -0.05 thou` under gauge mic-1",
      "adds -0.05 thou",
      "reads +0.00 thou spread 0.01 thou from 9",
    ]);
    expect(
      fixes("mic-1 against bore-1", "-0.02 thou spread 0.01 thou from 9")[0],
    ).toBe("Write `adds +0.00 thou` under gauge mic-1");
  });

  test("is written in micrometres where the lesson is, what is left of a tenth of one in the lesson", () => {
    expect(
      fixes("mic-2 against bore-1", "-1.54 um spread 0.4 um from 9"),
    ).toEqual([
      "Write `adds +1.5 um` under gauge mic-2",
      "\n  adds +1.5 um",
      "reads +0.0 um spread 0.4 um from 9",
    ]);
  });

  test("is offered no line while what it adds can't be read, nor where neither is set on a ring or both are", () => {
    const off = "-0.06 thou spread 0.02 thou from 9";
    expect(
      fixes("mic-3 against bore-1", off, "gauge mic-3\n  adds 0.05x thou\n"),
    ).toEqual([]);
    for (const [about, gauges] of [
      ["mic-2 against mic-1", ""],
      ["bore-2 against bore-1", "gauge bore-2\n  set on ring 0.8750\n"],
    ] as const) {
      expect(fixes(about, off, gauges)).toEqual([]);
      expect(messages(lesson(about, off, gauges), CODE)[0]).toContain(
        "Which of the two is off can't be told from this: read a ring or a gauge block with both.",
      );
    }
  });

  test("is told of a lesson that says of which gauges it is and what they read, and of no other", () => {
    const off = "-0.06 thou spread 0.02 thou from 9";
    expect(messages(lesson("", off), CODE)).toEqual([]);
    expect(messages(lesson("mic-2 against bore-1", ""), CODE)).toEqual([]);
    expect(messages(lesson("none against bore-1", off), CODE)).toEqual([]);
    // within 3.36 · 0.02 / √9 of nothing (Student's t for 99 %, 8 degrees of freedom)
    expect(
      messages(
        lesson("mic-2 against bore-1", "-0.02 thou spread 0.02 thou from 9"),
        CODE,
      ),
    ).toEqual([]);
    expect(
      messages(
        lesson("mic-2 against bore-1", "-0.03 thou spread 0.02 thou from 9"),
        CODE,
      ),
    ).toHaveLength(1);
    expect(
      messages(
        lesson("mic-2 against bore-1", "+0.02 thou spread 0.02 thou from 9"),
        CODE,
      ),
    ).toEqual([]);
  });
});
