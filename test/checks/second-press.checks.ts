// A second look at server/core/press, sizes and temperatures: what sizes that vary leave, the bush to make, and dropping in. The rings
// themselves are in second-press-rings.checks.ts.
import {
  caseTemperatureToDropIn,
  temperaturesToDropIn,
} from "../../server/core/press/drop-in.ts";
import {
  boreAfterPress,
  bushOdToMake,
} from "../../server/core/press/interference.ts";
import { got } from "../core/readings/got.ts";
import type { Check } from "./check.ts";
import {
  between,
  evenNumbers,
  halved,
  normalNumbers,
} from "./second/chance.ts";

/** A bush before pressing whose sizes vary, drawn as a shop would make them. */
function made(index: number) {
  const even = evenNumbers(index + 300);
  const od = between(even, 0.012, 0.08);
  const half = () => between(even, 1e-6, 12e-6);
  const about = (size: number, reach: number) => ({
    low: size - reach,
    high: size + reach,
  });
  const low = between(even, 0.3, 0.9);
  return {
    sizes: {
      id: about(od * 0.8, half()),
      od: about(od, half()),
      hole: about(od - between(even, 45e-6, 90e-6), half()),
    },
    closure: { low, high: low + between(even, 0, 0.3) },
    smoothing: between(even, 0, 6e-6),
  };
}

const DRAWN_BUSHES =
  "second look: 20,000 bushes drawn with normal sizes, limits at three deviations, at either bound of the closure";

const boreChecks = Array.from({ length: 6 }, (_, index) =>
  (["low", "high"] as const).flatMap((end): Check[] => {
    const { sizes, closure: share, smoothing } = made(index);
    const boreOf = (id: number, od: number, hole: number, c: number) =>
      id - c * Math.max(0, od - hole - smoothing);
    const after = () => got(boreAfterPress(sizes, share, smoothing));
    const ends = (band: { low: number; high: number }) => [band.low, band.high];
    const corners = () =>
      ends(sizes.id).flatMap((id) =>
        ends(sizes.od).flatMap((od) =>
          ends(sizes.hole).flatMap((hole) =>
            ends(share).map((c) => boreOf(id, od, hole, c)),
          ),
        ),
      );
    const drawnEnd = () => {
      const normal = normalNumbers(index + 500);
      const draw = ({ low, high }: { low: number; high: number }) =>
        (low + high) / 2 + ((high - low) / 6) * normal();
      // The end that each bound of C gives by itself; the outer of the two.
      const bounds = ends(share).map((c) => {
        const bores = Array.from({ length: 20_000 }, () =>
          boreOf(draw(sizes.id), draw(sizes.od), draw(sizes.hole), c),
        );
        const mean = bores.reduce((sum, one) => sum + one, 0) / bores.length;
        const squares = bores.reduce((sum, one) => sum + (one - mean) ** 2, 0);
        const three = 3 * Math.sqrt(squares / bores.length);
        return end === "low" ? mean - three : mean + three;
      });
      return end === "low" ? Math.min(...bounds) : Math.max(...bounds);
    };
    const common = {
      kinds: ["bore-after-press"],
      against: "independent",
      unit: "µm",
    } as const;
    const name = `bush ${String(index + 1)}, ${end}`;
    return [
      {
        ...common,
        what: `worst bore after pressing, ${name}`,
        method: "every size at its own worst end",
        source: "second look: every corner of sizes and closure",
        ours: () => 1e6 * after().worst[end],
        theirs: () =>
          1e6 *
          (end === "low" ? Math.min(...corners()) : Math.max(...corners())),
        within: { absolute: 1e-6 },
      },
      {
        ...common,
        what: `likely bore after pressing, ${name}`,
        method: "root-sum-square, the closure's bracket in full",
        source: DRAWN_BUSHES,
        ours: () => 1e6 * got(after().rootSumSquare)[end],
        theirs: () => 1e6 * drawnEnd(),
        within: { absolute: 0.3 },
      },
    ];
  }),
).flat();

const odChecks = Array.from({ length: 5 }, (_, index) =>
  (["low", "high"] as const).map((end): Check => {
    const even = evenNumbers(index + 700);
    // Whole tenths of a micrometre, so that a walk over them meets the ends.
    const tenths = (low: number, high: number) =>
      Math.round(between(even, low, high));
    const hole = tenths(200_000, 400_000);
    const wide = tenths(0, 120);
    const want = tenths(150, 400);
    const wantWide = wide + tenths(0, 100);
    return {
      kinds: ["bush-od-to-make"],
      what: `od to make, hole ${String(index + 1)}, ${end}`,
      method: "ends of the hole and of what is wanted",
      against: "independent",
      source:
        "second look: every size in steps of 0.1 µm tried in every hole in steps of 0.1 µm",
      unit: "µm",
      ours: () =>
        1e6 *
        got(
          bushOdToMake(
            { low: hole * 1e-7, high: (hole + wide) * 1e-7 },
            { low: want * 1e-7, high: (want + wantWide) * 1e-7 },
          ),
        )[end],
      theirs: () => {
        const fits: number[] = [];
        for (let od = hole; od < hole + 1200; od++) {
          let good = true;
          for (let h = hole; good && h <= hole + wide; h++)
            good = want <= od - h && od - h <= want + wantWide;
          if (good) fits.push(od);
        }
        return (end === "low" ? Math.min(...fits) : Math.max(...fits)) / 10;
      },
      within: { absolute: 1e-6 },
    };
  }),
).flat();

const dropChecks = Array.from({ length: 10 }, (_, index): Check[] => {
  const even = evenNumbers(index + 900);
  const hole = between(even, 0.01, 0.15);
  const sizes = {
    hole,
    od: hole * (1 + between(even, 0.0001, 0.0012)),
    gap: between(even, 5e-6, 20e-6),
    bushExpansion: between(even, 11e-6, 24e-6),
    caseExpansion: between(even, 10e-6, 24e-6),
  };
  const grown = (size: number, alpha: number, t: number) =>
    size * (1 + alpha * (t - 20));
  const room = (bush: number, housing: number) =>
    grown(sizes.hole, sizes.caseExpansion, housing) -
    grown(sizes.od, sizes.bushExpansion, bush) -
    sizes.gap;
  const common = {
    method: "closed form",
    against: "independent",
    source: "second look: halved to where the grown sizes leave just the gap",
    unit: "K",
    within: { absolute: 1e-6 },
  } as const;
  const cold = between(even, -80, 20);
  const limit = between(even, 40, 120);
  const needed = () => halved((t) => room(cold, t), 20, 400);
  const both = () => {
    const hot = Math.min(
      limit,
      Math.max(
        20,
        halved((t) => room(20, t), 20, 900),
      ),
    );
    return Math.min(20, halved((t) => -room(-t, hot), -20, 2000) * -1);
  };
  const reachable = both() >= -80;
  return [
    ...(needed() < 299
      ? [
          {
            ...common,
            kinds: ["heat-to"],
            what: `case for a cold bush ${String(index + 1)}`,
            ours: () => got(caseTemperatureToDropIn(sizes, cold)),
            theirs: needed,
          },
        ]
      : []),
    ...(reachable
      ? [
          {
            ...common,
            kinds: ["freeze-to"],
            what: `bush for a case at its limit ${String(index + 1)}`,
            ours: () => got(temperaturesToDropIn(sizes, limit)).bush,
            theirs: both,
          },
        ]
      : []),
  ];
}).flat();

export default [
  ...boreChecks,
  ...odChecks,
  ...dropChecks,
] satisfies readonly Check[];
