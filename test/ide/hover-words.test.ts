// What hover says over words of the language.
import { describe, expect, test } from "vitest";
import { hover, said, job } from "./hover-said.ts";

describe("words", () => {
  test("a fact: what it means and how it is written", () => {
    const { markdown, over } = hover(job("ru|ns 240"));
    expect(over).toBe("runs");
    expect(markdown).toBe("**runs**: Speed of rotation.\n\n`runs SPEED`");
  });

  test.each([
    [job("verdict guar|ded"), "ISO 14253-1"],
    [job("depth 1.350 bl|ind"), "It has a bottom."],
    [job("load 180 lbf ste|ady"), "keeps its direction"],
    ["step s\n  caution frozen|-parts\n", "liquid nitrogen"],
    ["job j\n  warn fit-t|ight at 1\n", "**fit-tight**: a finding (error)"],
    [job('use "cr|ib.thou"'), "shop harbour"],
    ['job j\n  use "mis|sing.thou"\n', "is not there"],
    [job("read ne|ar"), "3 readings at 20 °C"],
  ])("%#", (marked, words) => {
    expect(said(marked)).toContain(words);
  });
});
