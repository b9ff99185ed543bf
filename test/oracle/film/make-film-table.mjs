// Makes server/core/film/film-table.data.ts with the solver of server/core/film/reynolds.ts. Some minutes on one core:
//   node test/oracle/film/make-film-table.mjs
// Run it after any change of the solver; test/core/film/film-point.test.ts recomputes some of its rows.
import { build } from "esbuild";
import { writeFile } from "node:fs/promises";
import { format } from "prettier";

const bundled = await build({
  entryPoints: ["server/core/film/reynolds.ts"],
  bundle: true,
  platform: "node",
  format: "esm",
  write: false,
});
const { solveReynolds } = await import(
  `data:text/javascript;base64,${Buffer.from(bundled.outputFiles[0].text).toString("base64")}`
);

const grid = { around: 512, along: 64 };
/** Steps of √2 from 1/16 to 2·√2: one beyond the range that is answered, so that cubics stand on both sides. */
const lengths = Array.from({ length: 12 }, (_, k) =>
  round(2 ** ((k - 8) / 2), 10),
);
const eccentricities = [
  0.02, 0.05, 0.1, 0.15, 0.2, 0.25, 0.3, 0.35, 0.4, 0.45, 0.5, 0.55, 0.6, 0.65,
  0.7, 0.75, 0.8, 0.85, 0.9, 0.93, 0.95, 0.97,
];

function round(number, digits) {
  return Number(number.toPrecision(digits));
}

const rows = [];
for (const length of lengths) {
  for (const eccentricity of eccentricities) {
    const film = solveReynolds(length, eccentricity, grid);
    if (!film.valid)
      throw new Error(`${length} ${eccentricity}: ${film.because}`);
    const v = film.value;
    rows.push(
      [
        v.sommerfeld,
        v.attitude,
        v.flowVariable,
        v.sideFlowRatio,
        v.meanToPeakPressure,
        v.peakAngle,
        v.filmEndAngle,
      ].map((x) => round(x, 7)),
    );
  }
  console.error(`L/D ${length}`);
}

const text = `// The film of a plain bearing in ratios, as server/core/film/reynolds.ts solves it on ${grid.around} steps round by ${grid.along} from
// mid-length to the end. Made by test/oracle/film/make-film-table.mjs: not edited by hand.

export const filmTable: FilmTable = {
  grid: ${JSON.stringify(grid)},
  lengthsOverDiameter: ${JSON.stringify(lengths)},
  eccentricities: ${JSON.stringify(eccentricities)},
  /**
   * For each length over diameter, for each eccentricity: Sommerfeld number (US form), attitude (rad), flow variable
   * Q/(RcNL), side flow ratio, P/pmax, angle of the peak and of the film's end from the widest gap (rad).
   */
  rows: [
${rows.map((row) => `[${row.join(", ")}],`).join("\n")}
  ],
};

interface FilmTable {
  readonly grid: { readonly around: number; readonly along: number };
  readonly lengthsOverDiameter: readonly number[];
  readonly eccentricities: readonly number[];
  readonly rows: readonly (readonly [
    number, number, number, number, number, number, number,
  ])[];
}
`;
await writeFile(
  "server/core/film/film-table.data.ts",
  await format(text, { parser: "typescript" }),
);
