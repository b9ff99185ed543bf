// A second look at the shares that the intervals of server/core/learning and server/core/trend promise, counted over series drawn from a
// known truth.
import { learnOverTime } from "../../server/core/learning/drift.ts";
import { fitLine } from "../../server/core/learning/line-fit.ts";
import { oddGroups } from "../../server/core/learning/odd-groups.ts";
import {
  meanInterval,
  nextInterval,
  sampleOf,
} from "../../server/core/learning/sample.ts";
import { reachOf } from "../../server/core/trend/reaching.ts";
import { got } from "../core/readings/got.ts";
import type { Check } from "./check.ts";
import { normalNumbers } from "./second/chance.ts";

/** How often a thing holds over series drawn anew. */
function shareOf(
  seed: number,
  series: number,
  holds: (normal: () => number) => boolean,
) {
  const normal = normalNumbers(seed);
  let held = 0;
  for (let i = 0; i < series; i++) if (holds(normal)) held++;
  return held / series;
}
const drawn = (normal: () => number, count: number, mean = 0) =>
  Array.from({ length: count }, () => mean + normal());
const SERIES = 4000;
const COUNTED = `second look: counted over ${String(SERIES)} series drawn from a known truth; allowed: four standard deviations of such a count`;

function counted(
  what: string,
  method: string,
  promised: number,
  holds: (normal: () => number) => boolean,
): Check {
  let kept: number | undefined;
  return {
    kinds: [],
    what,
    method,
    against: "independent",
    source: COUNTED,
    unit: "1",
    ours: () => promised,
    theirs: () => (kept ??= shareOf(what.length * 97 + 5, SERIES, holds)),
    within: { absolute: 4 * Math.sqrt((promised * (1 - promised)) / SERIES) },
  };
}
const timed = (values: readonly number[], slope = 0) =>
  values.map((y, x) => ({ x, y: y + slope * x }));

const sharesChecks: readonly Check[] = [
  ...[2, 3, 8].flatMap((count) => [
    counted(
      `mean held, ${String(count)} values`,
      "interval of the mean, 95 %",
      0.95,
      (normal) => {
        const { low, high } = got(
          meanInterval(got(sampleOf(drawn(normal, count, 5))), 0.95),
        );
        return low <= 5 && 5 <= high;
      },
    ),
    counted(
      `next held, after ${String(count)} values`,
      "interval of the next one, 95 %",
      0.95,
      (normal) => {
        const { low, high } = got(
          nextInterval(got(sampleOf(drawn(normal, count))), 0.95),
        );
        const next = normal();
        return low <= next && next <= high;
      },
    ),
  ]),
  ...[6, 15, 40].map((count) =>
    counted(
      `steady series of ${String(count)} taken for changing ones`,
      "slope at 1 %",
      0.01,
      (normal) =>
        got(learnOverTime(timed(drawn(normal, count)), count)).drift !==
        undefined,
    ),
  ),
  ...[12, 40].map((count) =>
    counted(
      `height now held, steep series of ${String(count)}`,
      "line through the latest, 95 %",
      0.95,
      (normal) => {
        const slope = 3;
        const found = got(
          learnOverTime(timed(drawn(normal, count), slope), count),
        );
        const now = slope * count;
        const { interval } = found;
        return (
          interval !== undefined && interval.low <= now && now <= interval.high
        );
      },
    ),
  ),
  counted(
    "crossing held, sure slope",
    "Fieller's interval, 95 %",
    0.95,
    (normal) => {
      const line = got(fitLine(timed(drawn(normal, 10), 2)));
      const { earliest, latest } = got(reachOf(line, 30, 1, 0.95));
      return (earliest ?? -Infinity) <= 15 && 15 <= (latest ?? Infinity);
    },
  ),
];

/** At most one in a hundred, by Bonferroni: so a count over it fails and one under it passes. */
const oddChecks = [3, 6].map((groups): Check => {
  const most = 0.01;
  return {
    kinds: [],
    what: `kinds of ${String(groups)} like groups said to have an odd one, over one in a hundred`,
    method: "Student's t of each group against the rest, 1 % over the groups",
    against: "independent",
    source: COUNTED,
    unit: "1",
    ours: () => most,
    theirs: () =>
      Math.max(
        most,
        shareOf(
          groups + 3,
          SERIES,
          (normal) =>
            0 <
            oddGroups(Array.from({ length: groups }, () => drawn(normal, 5)))
              .length,
        ),
      ),
    within: { absolute: 4 * Math.sqrt((most * (1 - most)) / SERIES) },
  };
});

export default [...sharesChecks, ...oddChecks] satisfies readonly Check[];
