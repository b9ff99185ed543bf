// A choice of reamer in words: one bore of the line whose oversize is taken as zero is enough to say so, and no chance is told where nothing says
// how far its cuts spread.
import { expect, test } from "vitest";
import { reamingAdviceFor } from "../../server/model/evaluate/reaming-advice.ts";
import { cribRankingOf } from "../../server/model/evaluate/window.ts";
import { toolWords, type ToolWords } from "../../server/model/tool-words.ts";
import { opened } from "../ide/opened.ts";

const job = (reamer: string): string => `job winch
  units inch
part shaft
part case
bush front in case
  material bronze-c932
bush rear in case
  material iron-grey
journal front on shaft
  read 0.8742
journal rear on shaft
  read 0.8742
bore front in bush front
bore rear in bush rear
fit front of journal front in bore front
  want 0.0008 to 0.0016
fit rear of journal rear in bore rear
  want 0.0008 to 0.0016
reamer r
  size 0.8752
${reamer}line l
  bore front from 0 to 1
  bore rear from 2 to 3
  ream with r
`;

function words(reamer: string): ToolWords {
  const { shop } = opened(job(reamer));
  const ranking = cribRankingOf(shop, "line l");
  if (!ranking.known) throw new Error("no ranking");
  const [choice] = ranking.value.crib;
  if (choice === undefined) throw new Error("no choice");
  return toolWords(shop, ranking.value.demands, choice);
}

const bronze = "  oversize bronze-c932 +0.0001 to +0.0003\n";
const iron = "  oversize iron-grey +0.0001 to +0.0003\n";

test("an oversize that is taken as zero in any bore of the line is said", () => {
  expect(words("").oversizeAssumed).toBe(true);
  expect(words(bronze).oversizeAssumed).toBe(true);
  expect(words(bronze + iron).oversizeAssumed).toBe(false);
});

test("a chance is told as a share or not at all", () => {
  expect(words("").chance).toBe("");
  expect(words(bronze + iron).chance).toMatch(/^(?:over |under )?\d+ %$/u);
});

test("a margin is counted in standard deviations up to ten of them, and said to be outside where it is", () => {
  const { shop } = opened(job(bronze + iron));
  const ranking = cribRankingOf(shop, "line l");
  if (!ranking.known) throw new Error("no ranking");
  const { demands, crib } = ranking.value;
  const margin = (metres: number, deviations: number): string[] =>
    crib.map(
      ({ ranked, ...choice }) =>
        toolWords(shop, demands, {
          ...choice,
          ranked: {
            ...ranked,
            margin: { ...ranked.margin, metres, deviations },
          },
        }).margin,
    );
  expect(margin(25.4e-6, 10)).toEqual(["0.0010 in (10.0 standard deviations)"]);
  expect(margin(-25.4e-6, -10)).toEqual([
    "0.0010 in outside (10.0 standard deviations)",
  ]);
  expect(margin(-25.4e-6, -10.1)).toEqual(["0.0010 in outside"]);
  expect(margin(25.4e-6, 10.1)).toEqual(["0.0010 in"]);
  expect(margin(0, 0)).toEqual(["on the very end"]);
});

test("a reamer serves where it leaves every bore what its fit wants, ends and all, by the tenth of a nanometre", () => {
  const { shop } = opened(job(bronze + iron));
  const ranking = cribRankingOf(shop, "line l");
  if (!ranking.known) throw new Error("no ranking");
  const { demands, crib } = ranking.value;
  const [choice] = crib;
  const [of] = choice?.ranked.clearances ?? [];
  if (choice === undefined || of === undefined) throw new Error("no choice");
  const serves = (
    does: boolean,
    ...left: readonly (readonly [low: number, high: number])[]
  ): string =>
    toolWords(shop, demands, {
      ...choice,
      ranked: {
        ...choice.ranked,
        serves: does,
        clearances: left.map(([low, high]) => ({ ...of, low, high })),
      },
    }).serves;
  const ends = demands.map(({ wanted: { low, high } }) => [low, high] as const);
  const step = 1e-10;
  expect(ends).toHaveLength(2);
  expect(serves(false, ...ends)).toBe("no");
  expect(serves(true, ...ends)).toBe("yes");
  // what falls short of it in either bore and at either end is no more than likely
  for (const bore of ends.keys())
    for (const [below, above, said] of [
      [1, -1, "yes"],
      [-1, 0, "at its likeliest cut"],
      [0, 1, "at its likeliest cut"],
      [-1, 1, "at its likeliest cut"],
    ] as const) {
      const left = ends.map(([low, high], index) =>
        index === bore
          ? ([low + below * step, high + above * step] as const)
          : ([low, high] as const),
      );
      expect(serves(true, ...left)).toBe(said);
    }
});

test("of a reamer without its drive, of a machine's without its material, that is what the advice is in want of", () => {
  const wants = (reamer: string): readonly string[] =>
    reamingAdviceFor(opened(job(reamer)).shop, "line l").flatMap((each) =>
      each.known ? [] : each.needs.map(({ text }) => text),
    );
  expect(new Set(wants(""))).toEqual(new Set(["the drive of reamer r"]));
  expect(new Set(wants("  drive machine\n"))).toEqual(
    new Set(["the material of reamer r"]),
  );
});
