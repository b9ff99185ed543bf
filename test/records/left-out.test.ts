// What `learn` leaves out of a whole record, and why: presses in a boss that is no plain ring, and a signed reading that no other is like. The
// records are a made-up shop's, each changed in one line.
import { expect, test } from "vitest";
import { judgedShop } from "../history/planted.ts";
import { cutIn, isPlain, misread, misreadIn } from "../history/misread.ts";

const SEED = 20_262;

/** Of the first records that work in inches and have no flaw, each with another change. */
function changed(changes: readonly (readonly [string, string])[]) {
  const paths: string[] = [];
  const shop = judgedShop(SEED, (record, text) => {
    if (!isPlain(record) || !text.includes("  units inch\n")) return text;
    const change = changes[paths.length];
    if (change === undefined) return text;
    paths.push(record.path);
    const [from, to] = change;
    expect(text).toContain(from);
    return text.replace(from, to);
  });
  return paths.map((path) =>
    shop.lessons.leftOut
      .filter(({ file }) => file === path)
      .map(({ about, why, entry }) => `${about} ${why} ${entry}`),
  );
}

test("a boss that is blind, or that the bush stands out of, or that is split along its axis, is told apart", () => {
  const hole = "  depth through\n";
  expect(
    changed([
      [hole, "  depth 1.250 blind\n"],
      [hole, "  depth 2.000 through\n"],
      [hole, "  depth 1.000 blind\n"],
      ["  split across\n", "  split along\n"],
      [hole, hole],
    ]),
  ).toEqual([
    ["bush stiffer bore front"],
    ["bush stiffer bore front"],
    ["bush overhangs bore front"],
    ["bush split bore front", "bush split bore rear"],
    [],
  ]);
});

test("a signed bore that was misread by a thou is left out and told, and the lesson is that of all other cuts", () => {
  const clean = judgedShop(SEED);
  const within = misreadIn(clean.records);
  const spoiled = judgedShop(SEED, misread(within));
  const told = spoiled.lessons.leftOut.filter(({ why }) => why === "wild");
  expect(told).toMatchObject([
    {
      about: "reamer",
      file: clean.records[within]?.path,
      entry: "bore rear",
    },
  ]);
  const what = cutIn(clean.records[within]);
  const [before, after] = [clean, spoiled].map((shop) =>
    shop.lessons.reamers.find(
      ({ reamer, material }) => `${reamer} in ${material}` === `reamer ${what}`,
    ),
  );
  expect(after?.cuts).toBe((before?.cuts ?? 0) - 1);
  // one cut fewer of some ten or more: its spread is what it was
  const ratio =
    (after?.learned.sample.spread ?? NaN) /
    (before?.learned.sample.spread ?? NaN);
  expect(Math.abs(ratio - 1)).toBeLessThan(0.25);
});
