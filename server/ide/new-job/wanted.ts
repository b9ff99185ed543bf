// The clearances that a new job may want: what is offered, and how each is written for a size. It takes none of them by itself.
import { clearanceByShopRule } from "../../core/film/wanted-clearance.ts";
import { commonFitsAt } from "../../core/fits/common-classes.ts";
import {
  UNIT_OF_SYSTEM,
  showRange,
  stepTaken,
  type System,
} from "../../core/quantity/show.ts";
import type { Choice } from "../../protocol/guide.ts";
import { choice, type Fault } from "../interview.ts";
import { digitsFor, readSize, type Size } from "./sizes.ts";

export type Want =
  | { readonly kind: "shop-rule" }
  | { readonly kind: "class"; readonly word: string }
  | { readonly kind: "numbers"; readonly low: string; readonly high: string }
  | { readonly kind: "later" };

/** Classes that run, of those that are common. */
const RUNNING = /^(?:RC\d|H\d+\/[a-h]\d+)$/u;

/** What is offered for journals of these sizes; a class only where its standard has it at each of them. */
export function wantChoices(
  sizes: readonly Size[],
  system: System,
): readonly Choice[] {
  const [first] = sizes;
  const rule = first === undefined ? undefined : shopRule(first, system);
  return [
    ...(rule === undefined
      ? []
      : [
          choice("shop-rule", "A thou to the inch, a quarter either way", {
            beside: `${rule.low} to ${rule.high} ${UNIT_OF_SYSTEM[system]}`,
            below: "Common practice, no source",
            picked: true,
          }),
        ]),
    ...classesAt(sizes, system).map(({ word, text }) =>
      choice(`class ${word}`, word, {
        beside: text,
        below: system === "inch" ? "ANSI B4.1-1967" : "ISO 286-2:2010",
      }),
    ),
    choice("numbers", "Numbers of my own"),
    choice("later", "Not decided yet", {
      below: "The line then has no window to choose a reamer by",
    }),
  ];
}

function classesAt(
  sizes: readonly Size[],
  system: System,
): readonly { readonly word: string; readonly text: string }[] {
  const of = system === "inch" ? "inch" : "iso";
  const [first, ...others] = sizes.map(({ metres }) =>
    commonFitsAt(metres, of).filter(({ word }) => RUNNING.test(word)),
  );
  return (first ?? [])
    .filter(({ word }) =>
      others.every((fits) => fits.some((each) => each.word === word)),
    )
    .map(({ word, clearance: { least, most } }) => ({
      word,
      text: showRange(least, most, system, stepTaken([least, most])),
    }));
}

/** What `want` says at a size; undefined where it is left open. */
export function wantText(
  want: Want,
  size: Size,
  system: System,
): string | undefined {
  switch (want.kind) {
    case "shop-rule": {
      const rule = shopRule(size, system);
      return rule === undefined ? undefined : `${rule.low} to ${rule.high}`;
    }
    case "class":
      return `${size.text} ${want.word}`;
    case "numbers":
      return `${want.low} to ${want.high}`;
    case "later":
      return undefined;
  }
}

/** The shop rule with a quarter of it either way, to a tenth of a thou or a micrometre; undefined where that leaves no band. */
function shopRule(
  { metres }: Size,
  system: System,
): { readonly low: string; readonly high: string } | undefined {
  const rule = clearanceByShopRule(metres);
  if (!rule.valid) return undefined;
  const decimals = system === "inch" ? 4 : 3;
  const low = digitsFor(0.75 * rule.value, system, decimals);
  const high = digitsFor(1.25 * rule.value, system, decimals);
  return Number(low) < Number(high) ? { low, high } : undefined;
}

/** Two lengths: `0.0008 to 0.0016`. */
export function readWant(
  text: string,
  system: System,
): { readonly value: Want } | Fault {
  const fault = {
    fault: `Write the least and the most clearance on diameter, such as ${system === "inch" ? "0.0008 to 0.0016" : "0.020 to 0.045"}.`,
  };
  const [from, to, more] = text.split(/\s+to\s+/u);
  if (from === undefined || to === undefined || more !== undefined)
    return fault;
  const unit = /(?:"|[\p{L}\u{B5}]+)$/u.exec(to)?.[0] ?? "";
  const low = readSize(
    /\p{L}|"/u.test(from) ? from : `${from} ${unit}`.trim(),
    system,
  );
  const high = readSize(to, system);
  if ("fault" in low || "fault" in high) return fault;
  return low.value.metres < high.value.metres
    ? { value: { kind: "numbers", low: low.value.text, high: high.value.text } }
    : { fault: "The least comes first and is less than the most." };
}
