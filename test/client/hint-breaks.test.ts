// Where hints may be broken: what is drawn stays as it was, numbers keep their units, and no piece is so long that the editor breaks it up.
import { expect, test } from "vitest";
import { withBreaks } from "../../client/hint-breaks.ts";

const like = <P extends { value: string }>(part: P, value: string): P => ({
  ...part,
  value,
});

function broken(text: string): readonly string[] {
  return withBreaks([{ value: text }], like).map(({ value }) => value);
}

const LONG =
  "bore to be 1.0004 to 1.0006 in, by measured journals: no reamer that serves";

test("what is drawn stays as it was", () => {
  expect(broken(LONG).join("").replaceAll("\u200B", "")).toBe(LONG);
});

test("a line may end before a word, and not within a number with its unit", () => {
  const places = broken(LONG).join("").split("\u200B");
  expect(places).toContain("1.0006 in, ");
  expect(places).toContain("1.0004 ");
  expect(places).toContain("to ");
});

test("a long part is several, each of which leads where it led, and shorter than the fifty signs that the editor draws at once", () => {
  const parts = withBreaks([{ value: LONG, location: "there" }], like);
  expect(parts.length).toBeGreaterThan(1);
  for (const { value, location } of parts) {
    expect(value.length).toBeLessThanOrEqual(50);
    expect(location).toBe("there");
  }
});

test("a part that comes back from the server stays as it is", () => {
  const once = withBreaks([{ value: LONG }], like);
  expect(withBreaks(once, like)).toEqual(once);
});
