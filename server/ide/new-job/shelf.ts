// What a crib begins with: common gauges, and reamers at and just over the sizes of the journals. Which of them are there a person says;
// their own figures come from their certificates and readings later.
import {
  UNIT_OF_SYSTEM,
  fixed,
  type System,
} from "../../core/quantity/show.ts";
import type { Choice } from "../../protocol/guide.ts";
import { choice } from "../interview.ts";
import type { Size } from "./sizes.ts";

interface Gauge {
  readonly name: string;
  readonly label: string;
  readonly kind: string;
  /** By unit of the crib. */
  readonly resolution: Readonly<Record<System, string>>;
  readonly picked: boolean;
}

/** Resolutions that such gauges commonly have. Common practice, no source. */
const GAUGES: readonly Gauge[] = [
  {
    name: "mic-1",
    label: "Micrometer, outside",
    kind: "micrometer",
    resolution: { inch: "0.0001", mm: "0.001" },
    picked: true,
  },
  {
    name: "bore-1",
    label: "Bore gauge",
    kind: "bore-gauge",
    resolution: { inch: "0.0001", mm: "0.001" },
    picked: true,
  },
  {
    name: "inside-mic-1",
    label: "Micrometer, inside",
    kind: "micrometer",
    resolution: { inch: "0.0001", mm: "0.005" },
    picked: false,
  },
  {
    name: "dial-1",
    label: "Dial indicator",
    kind: "indicator",
    resolution: { inch: "0.0005", mm: "0.01" },
    picked: false,
  },
];

export function gaugeChoices(system: System): readonly Choice[] {
  return GAUGES.map(({ name, label, resolution, picked }) =>
    choice(name, label, {
      beside: name,
      below: `shows steps of ${resolution[system]} ${UNIT_OF_SYSTEM[system]}; correct it in the crib where yours differs`,
      picked,
    }),
  );
}

/** The gauge among these that shows no size by itself. */
export const COMPARATOR = "bore-1";

/** What it may be set on: a micrometer that is there, or a ring. */
export function setChoices(names: readonly string[]): readonly Choice[] {
  return [
    choice("", "Not known yet", {
      below: "It is asked for once it has read: its readings hang on it",
      picked: true,
    }),
    ...GAUGES.filter(
      ({ name, kind }) => kind === "micrometer" && names.includes(name),
    ).map(({ name, label }) => choice(`with ${name}`, label, { beside: name })),
    choice("ring", "A setting ring"),
  ];
}

/** The entries of gauges by their names. @param set what the bore gauge is set on */
export function gaugeEntries(
  names: readonly string[],
  system: System,
  set: string | undefined,
): readonly (readonly string[])[] {
  return GAUGES.filter(({ name }) => names.includes(name)).map(
    ({ name, kind, resolution }) => [
      `gauge ${name}`,
      `  kind ${kind}`,
      `  resolution ${resolution[system]}`,
      ...(name === COMPARATOR && set !== undefined ? [`  set ${set}`] : []),
    ],
  );
}

/** Over the journal's nominal size: the size itself and steps of a running clearance. Common practice, no source. */
const OVER: Readonly<Record<System, readonly number[]>> = {
  inch: [0, 0.0005, 0.001, 0.0015, 0.002, 0.003],
  mm: [0, 0.01, 0.02, 0.03, 0.05, 0.08],
};

interface Reamer {
  readonly name: string;
  /** As the crib writes it, bare. */
  readonly text: string;
  /** m, for the order of the list. */
  readonly metres: number;
  /** What it is to the journal. */
  readonly below: string;
}

function reamersFor(sizes: readonly Size[], system: System): readonly Reamer[] {
  const decimals = system === "inch" ? 4 : 2;
  const unit = system === "inch" ? 0.0254 : 0.001;
  const symbol = UNIT_OF_SYSTEM[system];
  const all = sizes.flatMap(({ metres, text: nominal }) =>
    OVER[system].map((over): Reamer => {
      const h7 = over === 0 ? standardReamer(metres, system) : undefined;
      const text = h7 ?? fixed(metres / unit + over, decimals);
      return {
        name: `r-${text.replace(".", "-").replace(" ", "-")}`,
        text,
        metres: metres + over * unit,
        below:
          h7 !== undefined
            ? `the standard one of a journal of ${nominal} ${symbol}`
            : over === 0
              ? `a journal of ${nominal} ${symbol} by its name`
              : `${fixed(over, decimals)} ${symbol} over a journal of ${nominal} ${symbol}`,
      };
    }),
  );
  return all
    .filter(
      ({ name, metres }, index) =>
        0 < metres && all.findIndex((each) => each.name === name) === index,
    )
    .sort((a, b) => a.metres - b.metres);
}

/** Reamers are sold for H7 holes by the half millimetre to 20 mm and by the millimetre to 50 mm; undefined at other sizes. Common practice, no source. */
function standardReamer(metres: number, system: System): string | undefined {
  if (system === "inch") return undefined;
  const millimetres = Number((metres * 1e3).toFixed(6));
  const isSold =
    millimetres <= 20
      ? 1 <= millimetres && Number.isInteger(millimetres * 2)
      : millimetres <= 50 && Number.isInteger(millimetres);
  return isSold ? `${String(millimetres)} H7` : undefined;
}

export function reamerChoices(
  sizes: readonly Size[],
  system: System,
): readonly Choice[] {
  return reamersFor(sizes, system).map(({ name, text, below }) =>
    choice(
      name,
      text.endsWith(" H7") ? text : `${text} ${UNIT_OF_SYSTEM[system]}`,
      {
        beside: name,
        below,
      },
    ),
  );
}

export function reamerEntries(
  names: readonly string[],
  sizes: readonly Size[],
  system: System,
): readonly (readonly string[])[] {
  return reamersFor(sizes, system)
    .filter(({ name }) => names.includes(name))
    .map(({ name, text }) => [`reamer ${name}`, `  size ${text}`]);
}
