// What `thou trend` and `thou learn` say of made-up shops, whose truths are known, held against what they state: what wears, drifts or stands
// apart is found, what is true lies in its interval, and what does not change is said to no oftener than is stated. The seeds were set aside
// until the rules were done; whoever tunes any of these takes a new block. THOU_SHOPS sets how many shops, from the first seed on; where it is
// set the counts are written out, as docs/counts.md has them of 200.
import { expect, test } from "vitest";
import { leastOf, mostOf } from "./chance.ts";
import { countsOf, misreadCountsOf } from "./counts.ts";
import { misread, misreadIn } from "./misread.ts";
import { judgedShop } from "./planted.ts";

const FIRST_SEED = 910_001;
const SHOPS = Number(process.env.THOU_SHOPS ?? "6");

const shops = Array.from({ length: SHOPS }, (_, index) =>
  judgedShop(FIRST_SEED + index),
);
const spoiled = shops.map(({ records }, index) => {
  const within = misreadIn(records);
  return { shop: judgedShop(FIRST_SEED + index, misread(within)), within };
});
const counts = [...countsOf(shops), ...misreadCountsOf(spoiled)];
if (process.env.THOU_SHOPS !== undefined)
  console.log(
    [
      "| of what | stated | came | of | share |",
      "|---|---|---|---|---|",
      ...counts.map(
        ({ what, came, of, stated }) =>
          `| ${what} | ${stated === undefined ? "" : `${String(100 * stated)} %`} | ${String(came)} | ${String(of)} | ${((100 * came) / of).toFixed(1)} % |`,
      ),
    ].join("\n"),
  );

test("each shop has all that was planted", () => {
  const numbers = Object.fromEntries(counts.map(({ what, of }) => [what, of]));
  const each: readonly (readonly [string, number])[] = [
    ["journals that wear, found over the years", 12],
    ["steady journals said to wear, over the years", 12],
    ["journals that wear, found over running hours", 12],
    ["steady journals said to wear, over running hours", 12],
    ["reamers that wear, found", 1],
    ["steady reamers said to change", 4],
    ["lots that close more, found", 1],
    ["sizes of bushes of which another lot is said to", 4],
    ["gauges that drift, found", 1],
    ["gauges that agree, said to be off", 2],
    ["bores that were misread by a thou and signed, found", 1],
  ];
  for (const [what, number] of each)
    expect(numbers[what], what).toBe(number * SHOPS);
});

test.each(counts.filter(({ stated }) => stated === undefined))(
  "$what",
  ({ came, of }) => {
    // nine of ten; the shops are made so that each stands well out of its noise
    expect(came).toBeGreaterThanOrEqual(0.9 * of);
    expect(of).toBeGreaterThan(0);
  },
);

test.each(
  counts.flatMap(({ stated, ...each }) =>
    stated === undefined ? [] : [{ ...each, stated }],
  ),
)("$what: no more than stated", ({ came, of, stated }) => {
  expect(of).toBeGreaterThan(0);
  expect(came).toBeLessThanOrEqual(mostOf(of, stated));
});

test.each(
  counts.filter(({ what }) => what.startsWith("true rates of journals")),
)("$what: not far less either, or they would say nothing", ({ came, of }) => {
  expect(came).toBeGreaterThanOrEqual(leastOf(of, 0.05));
  expect(leastOf(of, 0.05)).toBeGreaterThan(0);
});
