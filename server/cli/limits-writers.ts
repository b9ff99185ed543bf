// How the answers of `thou limits` are laid out, as text and as JSON. What they are is limits.ts's and limits-pair.ts's.
import type { Zone } from "../core/fits/limits.ts";
import { fixed } from "../core/quantity/show.ts";
import type { Unit } from "../core/quantity/units.ts";
import type { Io } from "./io.ts";
import { jsonText } from "./json-text.ts";
import type { Pair } from "./limits-pair.ts";
import { padded, shown } from "./terminal-text.ts";

/** Limits of one feature, or the fits of a pair, or why there are none: the contract's objects, with the unit that the user reads in. */
export type Answer =
  | {
      readonly asked: string;
      readonly zone: Zone;
      readonly size: number;
      readonly code: string;
      readonly unit: Unit;
    }
  | { readonly asked: string; readonly pair: Pair }
  | { readonly asked: string; readonly error: string };

export interface Writer {
  batch(answers: readonly Answer[]): void;
  end(): void;
}

/** The contract of docs/language.md, key by key and in its order. */
export function jsonWriter(io: Io): Writer {
  let separator = "[\n";
  return {
    batch(answers) {
      const objects = answers.map((answer) => {
        if ("error" in answer)
          return { asked: answer.asked, error: answer.error };
        if ("pair" in answer) return pairObject(answer.asked, answer.pair);
        const { asked, size, code, zone } = answer;
        return {
          asked,
          size,
          code,
          kind: zone.feature,
          lower: zone.lower,
          upper: zone.upper,
          unit: "m",
        };
      });
      if (objects.length === 0) return;
      io.stdout.write(
        separator + objects.map((object) => jsonText(object)).join(",\n"),
      );
      separator = ",\n";
    },
    end() {
      io.stdout.write(separator === "[\n" ? "[]\n" : "\n]\n");
    },
  };
}

function pairObject(
  asked: string,
  { size, least, most, nearest }: Pair,
): Readonly<Record<string, unknown>> {
  return {
    asked,
    size,
    kind: "pair",
    least,
    most,
    nearest: nearest.map(({ word, clearance, outside }) => ({
      code: word,
      least: clearance.least,
      most: clearance.most,
      outside,
    })),
    unit: "m",
  };
}

/** Columns as wide as the first answers need; later ones that are wider stand out. */
export function textWriter(io: Io): Writer {
  let width = 0;
  return {
    batch(answers) {
      width = Math.max(
        width,
        ...answers.slice(0, 1000).map((answer) => answer.asked.length),
      );
      const lines = answers.map((answer) => {
        const asked = padded(shown(answer.asked), width);
        if ("error" in answer) return `${asked}  ${shown(answer.error)}\n`;
        if ("pair" in answer) return pairLines(asked, answer.pair);
        const { zone, unit, code } = answer;
        return `${asked}  ${padded(code, 4)}  ${padded(zone.feature, 5)}  ${range(zone, unit)}\n`;
      });
      io.stdout.write(lines.join(""));
    },
    end: () => undefined,
  };
}

/** The clearance of the pair, then a line for each fit that it comes nearest to. */
function pairLines(
  asked: string,
  { least, most, size, unit, nearest }: Pair,
): string {
  const cleared = `clearance ${span(least, most, unit)}; at ${plain(size, unit)} ${unit.symbol} nearest to\n`;
  const fits = nearest.map(
    ({ word, clearance, outside }) =>
      `  ${padded(word, 8)}${span(clearance.least, clearance.most, unit)}${
        outside === 0
          ? ", which holds it"
          : `, ${plain(outside, unit)} ${unit.symbol} short of it`
      }\n`,
  );
  return `${asked}  ${cleared}${fits.join("")}`;
}

/** One length where both ends are the same. */
function span(least: number, most: number, unit: Unit): string {
  return least === most
    ? `${plain(least, unit)} ${unit.symbol}`
    : range({ lower: least, upper: most }, unit);
}

/** As many decimals as it has, within those of `range`. */
function plain(metres: number, unit: Unit): string {
  return range({ lower: metres, upper: metres }, unit).split(" to ")[0] ?? "";
}

const DECIMALS: Readonly<
  Record<string, readonly [least: number, most: number]>
> = { in: [4, 6], mm: [3, 7] };

/** Both limits with as many decimals as they have, but not fewer than the trade is used to, and none finer than 0.1 nm or 1 uin. */
function range(
  { lower, upper }: Pick<Zone, "lower" | "upper">,
  unit: Unit,
): string {
  const [least, most] = DECIMALS[unit.symbol] ?? [0, 7];
  const written = [lower, upper].map((metres) =>
    fixed(metres / unit.size, most),
  );
  const needed = Math.max(
    ...written.map(
      (text) => (text.split(".")[1] ?? "").replace(/0+$/, "").length,
    ),
  );
  const cut = most - Math.max(least, needed);
  const [from, to] = written.map((text) =>
    cut === 0 ? text : text.slice(0, -cut).replace(/\.$/, ""),
  );
  return `${from ?? ""} to ${to ?? ""} ${unit.symbol}`;
}
