// A second look at server/core/film by another way (second/film.ts): points drawn over the whole table, then bearings in their own
// units. Their heat is in second-film-heat.checks.ts.
import {
  bearingFilm,
  type Bearing,
} from "../../server/core/film/bearing-film.ts";
import {
  filmAtEccentricity,
  filmAtSommerfeld,
  filmRange,
  type FilmPoint,
} from "../../server/core/film/film-point.ts";
import { got } from "../core/readings/got.ts";
import type { Check } from "./check.ts";
import { between, evenNumbers } from "./second/chance.ts";
import { film, type Film } from "./second/film.ts";

const VOLUMES =
  "second look: finite volumes in Vogelpohl's variable, finer in the narrow gap, two grids and Richardson";

const { lengthOverDiameter: ratios, relativeEccentricity: reaches } = filmRange;

/** The corners of what must be answered, then points drawn between. */
const points: readonly (readonly [number, number])[] = (() => {
  const even = evenNumbers(11);
  const drawn = Array.from({ length: 16 }, () => {
    const ratio = Math.exp(
      between(even, Math.log(ratios.least), Math.log(ratios.greatest)),
    );
    return [ratio, between(even, reaches.least, reaches.greatest)] as const;
  });
  return [[0.25, 0.1], [0.25, 0.95], [2, 0.1], [2, 0.95], ...drawn];
})();

const figures: readonly {
  readonly kinds: readonly string[];
  readonly what: string;
  readonly ours: (point: FilmPoint) => number;
  readonly theirs: keyof Film;
}[] = [
  {
    kinds: ["sommerfeld"],
    what: "Sommerfeld number",
    ours: (p) => p.sommerfeld,
    theirs: "sommerfeld",
  },
  {
    kinds: ["film"],
    what: "attitude",
    ours: (p) => p.attitude,
    theirs: "attitude",
  },
  {
    kinds: ["friction-power"],
    what: "friction variable",
    ours: (p) => p.frictionVariable,
    theirs: "friction",
  },
  {
    kinds: ["oil-rise"],
    what: "flow variable",
    ours: (p) => p.flowVariable,
    theirs: "flow",
  },
  {
    kinds: ["oil-rise"],
    what: "side flow ratio",
    ours: (p) => p.sideFlowRatio,
    theirs: "sideFlow",
  },
  {
    kinds: ["film"],
    what: "P/pmax",
    ours: (p) => p.meanToPeakPressure,
    theirs: "meanToPeak",
  },
];

const pointChecks = points.flatMap(([ratio, reach]) =>
  figures.map((figure): Check => ({
    kinds: figure.kinds,
    what: `${figure.what} at L/D ${ratio.toFixed(3)}, ε ${reach.toFixed(3)}`,
    method: "Reynolds' equation on p, table, interpolation",
    against: "independent",
    source: VOLUMES,
    unit: "1",
    ours: () => figure.ours(got(filmAtEccentricity(ratio, reach))),
    theirs: () => film(ratio, reach)[figure.theirs],
    within: { relative: 0.01 },
  })),
);

const backChecks = points.slice(4).map(([ratio, reach]): Check => ({
  kinds: ["relative-eccentricity"],
  what: `ε of a Sommerfeld number at L/D ${ratio.toFixed(3)}, ε ${reach.toFixed(3)}`,
  method: "table turned round",
  against: "independent",
  source: VOLUMES,
  unit: "1",
  ours: () =>
    got(filmAtSommerfeld(ratio, film(ratio, reach).sommerfeld))
      .relativeEccentricity,
  theirs: () => reach,
  within: { absolute: 0.002 },
}));

/** A bearing in SI whose film stands at a point of the drawn ones, the load being what that point carries. */
function bearingAt(index: number, groove: boolean) {
  const even = evenNumbers(index + 60);
  const ratio = between(even, 0.3, 0.9);
  const reach = between(even, 0.3, 0.85);
  const diameter = between(even, 0.015, 0.1);
  const land = ratio * diameter;
  const grooveWidth = groove ? 0.1 * diameter : 0;
  const lands = groove ? 2 : 1;
  const diametralClearance = diameter * between(even, 0.0008, 0.002);
  const turnsPerSecond = between(even, 3, 20);
  const viscosity = between(even, 0.02, 0.15);
  const one = film(ratio, reach);
  const radius = diameter / 2;
  const gap = diametralClearance / 2;
  const pressure =
    (viscosity * turnsPerSecond * (radius / gap) ** 2) / one.sommerfeld;
  const load = lands * pressure * diameter * land;
  const bearing: Bearing = {
    diameter,
    length: lands * land + grooveWidth,
    diametralClearance,
    load,
    turnsPerSecond,
    ...(groove ? { roundGrooveWidth: grooveWidth } : {}),
  };
  const speed = Math.PI * diameter * turnsPerSecond;
  const drawn = lands * one.flow * radius * gap * turnsPerSecond * land;
  return {
    bearing,
    viscosity,
    leastFilm: gap * (1 - reach),
    peak: pressure / one.meanToPeak,
    power: one.friction * (gap / radius) * load * speed,
    torque: one.friction * (gap / radius) * load * radius,
    drawn,
    leaves: one.sideFlow * drawn,
  };
}

type At = ReturnType<typeof bearingAt>;
const bearingFigures: readonly {
  readonly kinds: readonly string[];
  readonly what: string;
  readonly unit: string;
  readonly ours: (at: At) => number;
  readonly theirs: (at: At) => number;
}[] = (() => {
  const found = ({ bearing, viscosity }: At) =>
    got(bearingFilm(bearing, { viscosity, density: 870 }));
  return [
    {
      kinds: ["film"],
      what: "least film",
      unit: "µm",
      ours: (at: At) => 1e6 * found(at).leastFilm,
      theirs: (at: At) => 1e6 * at.leastFilm,
    },
    {
      kinds: ["film"],
      what: "peak pressure",
      unit: "MPa",
      ours: (at: At) => 1e-6 * found(at).peakPressure,
      theirs: (at: At) => 1e-6 * at.peak,
    },
    {
      kinds: ["friction-power"],
      what: "friction power",
      unit: "W",
      ours: (at: At) => found(at).frictionPower,
      theirs: (at: At) => at.power,
    },
    {
      kinds: ["friction-power"],
      what: "friction torque",
      unit: "N·m",
      ours: (at: At) => found(at).frictionTorque,
      theirs: (at: At) => at.torque,
    },
    {
      kinds: ["oil-rise"],
      what: "flow drawn in",
      unit: "mm³/s",
      ours: (at: At) => 1e9 * found(at).flow,
      theirs: (at: At) => 1e9 * at.drawn,
    },
    {
      kinds: ["oil-rise"],
      what: "flow out of the ends",
      unit: "mm³/s",
      ours: (at: At) => 1e9 * found(at).sideFlow,
      theirs: (at: At) => 1e9 * at.leaves,
    },
  ];
})();

const bearingChecks = [false, true].flatMap((groove) =>
  [0, 1, 2].flatMap((index) =>
    bearingFigures.map(({ kinds, what, unit, ours, theirs }): Check => {
      let kept: At | undefined;
      const at = () => (kept ??= bearingAt(index, groove));
      return {
        kinds,
        what: `${what}, bearing ${String(index + 1)}${groove ? " with a groove round" : ""}`,
        method: "bearing in its own units, two lands where a groove parts it",
        against: "independent",
        source: `${VOLUMES}; units put in by hand`,
        unit,
        ours: () => ours(at()),
        theirs: () => theirs(at()),
        within: { relative: 0.01 },
      };
    }),
  ),
);

export default [
  ...pointChecks,
  ...backChecks,
  ...bearingChecks,
] satisfies readonly Check[];
