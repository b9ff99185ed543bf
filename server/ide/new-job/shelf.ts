// What a crib begins with: common gauges, and reamers at and just over the sizes of the journals. Which of them are there a person says;
// their own figures come from their certificates and readings later.
import { fixed, type System } from "../../core/quantity/show.ts";
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
      below: `shows steps of ${resolution[system]} ${system === "inch" ? "in" : "mm"}; correct it in the crib where yours differs`,
      picked,
    }),
  );
}

/** The entries of gauges by their names. */
export function gaugeEntries(
  names: readonly string[],
  system: System,
): readonly (readonly string[])[] {
  return GAUGES.filter(({ name }) => names.includes(name)).map(
    ({ name, kind, resolution }) => [
      `gauge ${name}`,
      `  kind ${kind}`,
      `  resolution ${resolution[system]}`,
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
  readonly text: string;
}

function reamersFor(sizes: readonly Size[], system: System): readonly Reamer[] {
  const decimals = system === "inch" ? 4 : 2;
  const unit = system === "inch" ? 0.0254 : 0.001;
  const texts = sizes.flatMap(({ metres }) =>
    OVER[system].map((over) => fixed(metres / unit + over, decimals)),
  );
  return [...new Set(texts)]
    .filter((text) => 0 < Number(text))
    .sort((a, b) => Number(a) - Number(b))
    .map((text) => ({ name: `r-${text.replace(".", "-")}`, text }));
}

export function reamerChoices(
  sizes: readonly Size[],
  system: System,
): readonly Choice[] {
  return reamersFor(sizes, system).map(({ name, text }) =>
    choice(name, `${text} ${system === "inch" ? "in" : "mm"}`, {
      beside: name,
    }),
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
