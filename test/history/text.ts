// Writes a made-up job, and the crib of a made-up shop, as a person would: one text for each state that the record went through.
import {
  ELASTIC,
  WANTED,
  type JobDates,
  type JobValues,
  type EndValues,
  type Flaw,
  type TwoPlaces,
} from "./values.ts";
import { REAMERS, SIZES, type Machine } from "./truths.ts";

export type State = keyof JobDates;
export const STATES: readonly State[] = ["opened", "pressed", "reamed", "run"];

/** A length in the file's unit, with the digits that its gauges show. */
function written(value: number, units: Machine["units"]): string {
  return units === "inch"
    ? (value / 0.0254).toFixed(5)
    : (value * 1000).toFixed(3);
}

const GAUGES: Readonly<
  Record<
    Machine["units"],
    {
      readonly mic: string;
      readonly micAgain: string;
      readonly bore: string;
      readonly boreAgain: string;
    }
  >
> = {
  inch: {
    mic: "mic-1",
    micAgain: "mic-2",
    bore: "bore-1",
    boreAgain: "bore-2",
  },
  mm: {
    mic: "mic-mm",
    micAgain: "mic-mm-2",
    bore: "bore-mm",
    boreAgain: "bore-mm-2",
  },
};

/** The record as it stood in one of its states. */
export function jobText(job: JobValues, state: State): string {
  const { machine, dates, visit } = job;
  const isInch = job.system === "inch";
  const has = (other: State): boolean =>
    STATES.indexOf(other) <= STATES.indexOf(state);
  const lines = [
    `job ${machine.name}-${String(visit + 1)}`,
    `  title "Mooring winch ${machine.name.slice(1)}, layshaft, visit ${String(visit + 1)}"`,
    `  units ${job.system}`,
    `  use "../crib.thou"`,
    `  opened ${dates.opened} by AK`,
    `  hours ${String(job.hours.opened)} h`,
    ...(["reamed", "run"] as const).flatMap((other) =>
      has(other)
        ? [`  hours ${String(job.hours[other])} h on ${dates[other]}`]
        : [],
    ),
    `  temperature 20 C`,
    "",
    "part layshaft",
    "  material steel-4140",
    `  serial ${machine.serial}-LS`,
    "part case",
    "  material case-aluminium",
    `  serial ${machine.serial}-C`,
    "  split across",
    "  joint bare",
    isInch ? "  bolts 18 lbf-ft" : "  bolts 25 N-m",
    "",
    ...job.ends.flatMap((end) => endLines(job, end, has)),
    "line layshaft",
    isInch ? "  bore rear from 5.50 to 6.75" : "  bore rear from 140 to 172",
    isInch ? "  bore front from 0 to 1.25" : "  bore front from 0 to 32",
    `  ream with ${job.reamer}`,
    "  joint bare",
    isInch ? "  bolts 18 lbf-ft" : "  bolts 25 N-m",
    "",
    "step press-in",
    "  presses press front, press rear",
    ...(has("pressed") ? [`  done ${dates.pressed} by AK`] : []),
    "step ream",
    "  after press-in",
    "  cuts line layshaft",
    "  checks fit front, fit rear",
    ...(has("reamed") ? [`  done ${dates.reamed} by MB`] : []),
  ];
  for (const { end, isConceded } of job.ends)
    if (isConceded && has("reamed")) lines.push(...concession(job, end));
  return `${lines.join("\n")}\n`;
}

function concession(job: JobValues, end: EndValues["end"]): readonly string[] {
  return [
    "",
    `concession ${end}-loose`,
    `  allows fit-loose on fit ${end}`,
    `  up to ${job.system === "inch" ? "0.0045" : "0.110"}`,
    `  why "runs light and slow; shaft to be built up at the next visit" by AK on ${job.dates.reamed}`,
  ];
}

function endLines(
  job: JobValues,
  values: EndValues,
  has: (state: State) => boolean,
): readonly string[] {
  const { system: units, dates, machine } = job;
  const { end } = values;
  const gauges = GAUGES[units];
  const sizes = SIZES[units];
  const show = (list: readonly number[]): string =>
    list.map((value) => written(value, units)).join(" ");
  const places = (size: TwoPlaces, rest: string): readonly string[] => [
    `  read near ${show(size.near)} ${rest}`,
    `  read far ${show(size.far)} ${rest}`,
  ];
  const opened = `by AK on ${dates.opened}`;
  const flaw = end === "front" ? job.flaw : undefined;
  const range = (low: number, high: number): string =>
    `${written(low, units)} to ${written(high, units)}`;
  return [
    `journal ${end} on layshaft`,
    `  length ${written(sizes.length, units)}`,
    `  limits ${range(sizes.journal - 40e-6, sizes.journal + 10e-6)}`,
    `  service-limit ${written(sizes.journal - 50e-6, units)}`,
    ...places(values.journal, `with ${gauges.mic} ${opened}`),
    ...(values.journalAgain === undefined
      ? []
      : places(values.journalAgain, `with ${gauges.micAgain} ${opened}`)),
    ...(has("run")
      ? places(
          values.journalRun,
          `with ${gauges.mic} as run by TS on ${dates.run}`,
        )
      : []),
    `hole ${end} in case`,
    `  boss ${written(sizes.boss, units)}`,
    "  depth through",
    `  read ${show(values.hole)} with ${gauges.bore} ${opened}`,
    ...(values.holeAgain === undefined
      ? []
      : [
          `  read ${show(values.holeAgain)} with ${gauges.boreAgain} ${opened}`,
        ]),
    `bush ${end} in hole ${end}`,
    `  material ${machine.material}`,
    "  construction solid",
    `  lot ${job.lot}`,
    `  od ${range(sizes.od - 3e-6, sizes.od + 3e-6)}`,
    `  id ${range(sizes.id - 8e-6, sizes.id + 8e-6)}`,
    `  length ${written(sizes.length, units)}`,
    `  read od ${show(values.od)} with ${gauges.mic} ${opened}`,
    `  read id ${show(values.id)} with ${gauges.bore} ${opened}`,
    `bore ${end} in bush ${end}`,
    ...(has("pressed")
      ? [
          `  read ${show(values.pressed)} with ${gauges.bore} as pressed ${flaw === "press-unsigned" ? "" : "by AK "}on ${dates.pressed}`,
        ]
      : []),
    ...(has("reamed")
      ? cutLines(values.cut, flaw, show, gauges.bore, dates.reamed)
      : []),
    `press ${end} of bush ${end} in hole ${end}`,
    `fit ${end} of journal ${end} in bore ${end}`,
    `  want ${range(...WANTED[units])}`,
    "",
  ];
}

/** The bore as reamed, or what was written in its place. */
function cutLines(
  cut: TwoPlaces,
  flaw: Flaw | undefined,
  show: (list: readonly number[]) => string,
  gauge: string,
  date: string,
): readonly string[] {
  const both = (rest: string): readonly string[] => [
    `  read near ${show(cut.near)} with ${gauge} ${rest}`,
    `  read far ${show(cut.far)} with ${gauge} ${rest}`,
  ];
  const signed = `by MB on ${date}`;
  switch (flaw) {
    case "damaged":
      return both(signed).map((line) => line.replace(/\.(\d)\d/u, ".$1x"));
    case "unsigned":
      return both(`on ${date}`);
    case "undated":
      return both("by MB");
    case "only-roughed":
      return both(`as roughed ${signed}`);
    case "stray": {
      const [first = 0] = cut.near;
      const repeats = [0, 0.3e-6, -0.3e-6, 0.4e-6, 80e-6].map(
        (more) => first + more,
      );
      return [
        ...both(signed),
        `  repeat near ${show(repeats)} with ${gauge} ${signed}`,
      ];
    }
    case "press-unsigned":
    case undefined:
      return both(signed);
  }
}

/** The crib of a made-up shop. One of its gauges is overdue from the third year on. */
export function cribText(shop: number): string {
  const gpa = (value: number): string => `${String(value / 1e9)} GPa`;
  const gauge = (
    name: string,
    kind: "micrometer" | "bore-gauge",
    units: Machine["units"],
    due: string,
    set?: string,
  ): string =>
    [
      `gauge ${name}`,
      `  kind ${kind}`,
      units === "inch" ? "  resolution 0.00001" : "  resolution 0.001 mm",
      units === "inch" ? "  uncertainty 0.00004" : "  uncertainty 0.0015 mm",
      ...(set === undefined ? [] : [`  set ${set}`]),
      `  calibrated 2016-11-14`,
      `  due ${due}`,
    ].join("\n");
  const reamer = (
    name: keyof typeof REAMERS,
    units: Machine["units"],
  ): string =>
    [
      `reamer ${name}`,
      units === "inch"
        ? `  size ${(REAMERS[name] / 0.0254).toFixed(4)}`
        : `  size ${(REAMERS[name] * 1000).toFixed(2)} mm`,
      `  read ${written(REAMERS[name], units)} ${written(REAMERS[name], units)}${units === "mm" ? " mm" : ""} with ${units === "inch" ? "mic-1" : "mic-mm"}`,
      "  drive hand",
      "  material hss",
      "  flutes 6 left",
    ].join("\n");
  const material = (
    name: keyof typeof ELASTIC,
    expansion: string,
    strength: string,
  ): string =>
    [
      `material ${name}`,
      `  expansion ${expansion} um/m-K`,
      `  modulus ${gpa(ELASTIC[name].modulus)}`,
      `  poisson ${String(ELASTIC[name].poisson)}`,
      `  yield ${strength} MPa`,
    ].join("\n");
  const far = "2030-01-01";
  return `${[
    `shop harbour-${String(shop + 1)}\n  units inch`,
    gauge("mic-1", "micrometer", "inch", far),
    gauge("mic-2", "micrometer", "inch", far),
    gauge("bore-1", "bore-gauge", "inch", far, "on ring 0.8750"),
    gauge("bore-2", "bore-gauge", "inch", "2019-06-30", "on ring 0.8750"),
    gauge("mic-mm", "micrometer", "mm", far),
    gauge("mic-mm-2", "micrometer", "mm", far),
    gauge("bore-mm", "bore-gauge", "mm", far, "on ring 25 mm"),
    gauge("bore-mm-2", "bore-gauge", "mm", far, "on ring 25 mm"),
    reamer("r-8755", "inch"),
    reamer("r-8756", "inch"),
    reamer("r-25", "mm"),
    material("tin-bronze", "18", "200"),
    material("aluminium-bronze", "16.2", "250"),
    material("case-aluminium", "21.5", "250"),
  ].join("\n\n")}\n`;
}
