// A second look at the rings of server/core/press by another way (second/press.ts): pairs drawn over the whole range, edges included.
import {
  closureBand,
  elasticLimit,
  holeStressBand,
  pressureBand,
} from "../../server/core/press/boss.ts";
import {
  closure,
  contactPressure,
  interferenceFor,
  pressStresses,
  type PressedPair,
} from "../../server/core/press/ring.ts";
import {
  pressAtTemperature,
  releaseTemperature,
} from "../../server/core/press/temperature.ts";
import { firstYield } from "../../server/core/press/yield.ts";
import { got } from "../core/readings/got.ts";
import type { Check } from "./check.ts";
import { between, evenNumbers, halved } from "./second/chance.ts";
import {
  everStiffer,
  first,
  last,
  misesOf,
  mostMises,
  shoot,
} from "./second/press.ts";

const SHOT =
  "second look: the two rings as an initial value problem, Runge and Kutta outwards from the bore, shot at the free face";

/** Winch-like, thin, thick, rigid, endless, plug, then drawn ones. */
function pairs(): PressedPair[] {
  const even = evenNumbers(20);
  const plain: PressedPair = {
    bore: 0.02,
    od: 0.025,
    boss: 0.045,
    bushMaterial: { modulus: 100e9, poisson: 0.35 },
    caseMaterial: { modulus: 72e9, poisson: 0.33 },
  };
  const edges: PressedPair[] = [
    plain,
    { ...plain, bore: 0.0245 },
    { ...plain, bore: 0.001 },
    { ...plain, boss: 0.026 },
    { ...plain, boss: Infinity },
    { ...plain, caseMaterial: { modulus: Infinity, poisson: 0.3 } },
    { ...plain, bushMaterial: { modulus: 3e9, poisson: 0.45 } },
  ];
  const drawn = Array.from({ length: 25 }, (): PressedPair => {
    const od = between(even, 0.006, 0.2);
    return {
      bore: od * between(even, 0.1, 0.96),
      od,
      boss: od * between(even, 1.05, 5),
      bushMaterial: {
        modulus: between(even, 2e9, 210e9),
        poisson: between(even, 0.2, 0.45),
      },
      caseMaterial: {
        modulus: between(even, 40e9, 210e9),
        poisson: between(even, 0.2, 0.36),
      },
    };
  });
  return [...edges, ...drawn];
}

interface Drawn {
  readonly kinds: readonly string[];
  readonly what: string;
  readonly method: string;
  readonly unit: string;
  readonly within: number;
  readonly ours: (pair: PressedPair) => number;
  readonly theirs: (pair: PressedPair) => number;
  readonly source?: string;
}

const share = 0.001;
const mpa = 1e-6;

const ofPairs: readonly Drawn[] = [
  {
    kinds: ["contact-pressure"],
    what: "contact pressure",
    method: "Lamé's rings in closed form",
    unit: "MPa",
    within: 2e-6,
    ours: (pair) => mpa * got(contactPressure(pair, share * pair.od)),
    theirs: (pair) => -mpa * last(shoot(pair, share * pair.od).bush).radial,
  },
  {
    kinds: ["bore-closure"],
    what: "closure",
    method: "Lamé's rings in closed form",
    unit: "1",
    within: 2e-6,
    ours: (pair) => got(closure(pair)),
    theirs: (pair) =>
      (-2 * first(shoot(pair, share * pair.od).bush).move) / (share * pair.od),
  },
  {
    kinds: ["interference"],
    what: "interference of a pressure",
    method: "Lamé's rings in closed form",
    unit: "µm",
    within: 2e-6,
    ours: (pair) => 1e6 * got(interferenceFor(pair, 10e6)),
    theirs: (pair) =>
      (1e6 * share * pair.od * 10e6) /
      -last(shoot(pair, share * pair.od).bush).radial,
  },
  {
    kinds: ["bush-stress"],
    what: "most of von Mises' stress anywhere in the bush",
    method: "Lamé's stress at the bore",
    unit: "MPa",
    within: 2e-6,
    ours: (pair) => {
      const p = got(contactPressure(pair, share * pair.od));
      return mpa * got(pressStresses(pair, p)).bushBore.vonMises;
    },
    theirs: (pair) => mpa * mostMises(shoot(pair, share * pair.od).bush),
  },
  {
    kinds: ["hole-stress"],
    what: "most of von Mises' stress anywhere in the boss",
    method: "Lamé's stress at the hole",
    unit: "MPa",
    within: 2e-6,
    ours: (pair) => {
      const p = got(contactPressure(pair, share * pair.od));
      return mpa * got(pressStresses(pair, p)).hole.vonMises;
    },
    theirs: (pair) => mpa * mostMises(shoot(pair, share * pair.od).boss),
  },
  {
    kinds: ["contact-pressure"],
    what: "interference at first yield anywhere",
    method: "yield put into Lamé's stresses at bore and hole",
    unit: "µm",
    within: 2e-6,
    ours: (pair) =>
      1e6 * got(firstYield(pair, { bush: 150e6, case: 200e6 })).interference,
    theirs: (pair) => {
      const one = shoot(pair, share * pair.od);
      const most = Math.max(
        mostMises(one.bush) / 150e6,
        mostMises(one.boss) / 200e6,
      );
      return (1e6 * share * pair.od) / most;
    },
  },
];

const stiffened = pairs()
  .filter(({ boss, caseMaterial }) => boss < 1 && caseMaterial.modulus < 1e12)
  .slice(0, 12);
const HELD =
  "second look: fifty bosses from bare to one that doesn't give, each shot with the pressure that holds it";

const ofStiffer: readonly Drawn[] = [
  {
    kinds: ["bore-closure"],
    what: "most closure in a stiffer boss",
    method: "bracket from the plain ring to a rigid boss",
    unit: "1",
    within: 2e-6,
    source: HELD,
    ours: (pair) => got(closureBand(pair, "stiffer")).high,
    theirs: (pair) =>
      Math.max(
        ...everStiffer(pair, share * pair.od, 50).map(
          ({ bush }) => (-2 * first(bush).move) / (share * pair.od),
        ),
      ),
  },
  {
    kinds: ["contact-pressure"],
    what: "most pressure in a stiffer boss",
    method: "bracket from the plain ring to a rigid boss",
    unit: "MPa",
    within: 2e-6,
    source: HELD,
    ours: (pair) => {
      const band = { low: share * pair.od, high: share * pair.od };
      return mpa * got(pressureBand(pair, band, "stiffer")).high;
    },
    theirs: (pair) =>
      Math.max(
        ...everStiffer(pair, share * pair.od, 50).map(
          ({ bush }) => -mpa * last(bush).radial,
        ),
      ),
  },
  ...(["low", "high"] as const).map((end): Drawn => ({
    kinds: ["hole-stress"],
    what: `hole's stress in a stiffer boss, ${end}`,
    method: "Hooke's law at the hole, parabola in the pressure",
    unit: "MPa",
    within: 1e-3,
    source: HELD,
    ours: (pair) => {
      const band = { low: share * pair.od, high: share * pair.od };
      return mpa * got(holeStressBand(pair, band, "stiffer"))[end];
    },
    theirs: (pair) => {
      const all = everStiffer(pair, share * pair.od, 50).map(
        ({ boss }) => mpa * misesOf(first(boss)),
      );
      return end === "low" ? Math.min(...all) : Math.max(...all);
    },
  })),
  {
    kinds: ["contact-pressure"],
    what: "least interference at which a stiffer pair yields",
    method: "the worse of bare and rigid",
    unit: "µm",
    within: 2e-6,
    source: HELD,
    ours: (pair) =>
      1e6 *
      got(elasticLimit(pair, { bush: 150e6, case: 120e6 }, "stiffer"))
        .interference,
    theirs: (pair) =>
      Math.min(
        ...everStiffer(pair, share * pair.od, 50).map(
          ({ bush, boss }) =>
            (1e6 * share * pair.od) /
            Math.max(mostMises(bush) / 150e6, misesOf(first(boss)) / 120e6),
        ),
      ),
  },
];

function checksOf(drawn: readonly Drawn[], over: readonly PressedPair[]) {
  return drawn.flatMap((one) =>
    over.map((pair, index): Check => {
      let known: number | undefined;
      return {
        kinds: one.kinds,
        what: `${one.what}, pair ${String(index + 1)}`,
        method: one.method,
        against: "independent",
        source: one.source ?? SHOT,
        unit: one.unit,
        ours: () => one.ours(pair),
        theirs: () => (known ??= one.theirs(pair)),
        within: { relative: one.within },
      };
    }),
  );
}

/** A pair with heat: bronze in aluminium, or the other way round, from −80 to 300 °C. */
const warmChecks = pairs()
  .slice(7, 27)
  .map((pair, index): Check => {
    const even = evenNumbers(index + 40);
    const bushExpansion = between(even, 10e-6, 30e-6);
    const caseExpansion = between(even, 9e-6, 25e-6);
    const bush = between(even, -80, 300);
    const housing = between(even, -80, 300);
    const interference = between(even, 0, 0.0015) * pair.od;
    return {
      kinds: ["hot-clearance", "cold-clearance"],
      what: `bore of a press at two temperatures, pair ${String(index + 1)}`,
      method: "closure taken off the bush grown free",
      against: "independent",
      source: `${SHOT}, thermal strain in both rings; apart where they let go`,
      unit: "µm",
      ours: () => {
        const press = {
          bore: pair.bore,
          od: pair.od,
          interference,
          closure: got(closure(pair)),
          bushExpansion,
          caseExpansion,
        };
        return 1e6 * got(pressAtTemperature(press, bush, housing)).bore;
      },
      theirs: () => {
        const cold = shoot(pair, interference);
        const bushStrain = bushExpansion * (bush - 20);
        const caseStrain = caseExpansion * (housing - 20);
        const warm = shoot({ ...pair, bushStrain, caseStrain }, interference);
        const holds = last(warm.bush).radial < 0;
        const moved = holds
          ? first(warm.bush).move
          : (bushStrain * pair.bore) / 2;
        const pressed = interference > 0 ? first(cold.bush).move : 0;
        return 1e6 * (pair.bore + 2 * (moved - pressed));
      },
      // Metres of the part as made, not as grown, bear the interference: 5e-3 of it at the most.
      within: { absolute: 1 },
      because:
        "the interference itself grows with its part, which neither way counts alike: up to 0.5 % of it",
    };
  });

const releaseChecks = pairs()
  .slice(7, 17)
  .map((pair, index): Check => {
    const even = evenNumbers(index + 80);
    const bushExpansion = between(even, 9e-6, 14e-6);
    const caseExpansion = between(even, 20e-6, 25e-6);
    const interference = between(even, 0.0001, 0.0015) * pair.od;
    return {
      kinds: ["release-temperature"],
      what: `release, pair ${String(index + 1)}`,
      method: "interference over the difference of growth",
      against: "independent",
      source: `${SHOT}, halved to where no pressure is left`,
      unit: "K",
      ours: () =>
        got(
          releaseTemperature({
            od: pair.od,
            interference,
            bushExpansion,
            caseExpansion,
          }),
        ),
      theirs: () =>
        halved(
          (t) =>
            last(
              shoot(
                {
                  ...pair,
                  bushStrain: bushExpansion * (t - 20),
                  caseStrain: caseExpansion * (t - 20),
                },
                interference,
                60,
              ).bush,
            ).radial,
          20,
          300,
        ),
      within: { absolute: 0.001 },
    };
  });

export default [
  ...checksOf(ofPairs, pairs()),
  ...checksOf(ofStiffer, stiffened),
  ...warmChecks,
  ...releaseChecks,
] satisfies readonly Check[];
