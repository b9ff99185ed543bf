// Numbers whose last digits were typed as letters, and so read as a unit: `0.874O`, `1Omm`. What stands before the letters is a tenth or less of
// what was meant, so that the unit alone is never offered.
import { sayLetters, withDigits } from "../../grammar/digit-letters.ts";
import { child, type Node } from "../../grammar/tree.ts";
import { unitOf } from "../core/quantity/units.ts";
import type { Problem } from "./problem.ts";

/** The number and its would-be unit as one node, and what is said of it; undefined where the unit does not begin with such letters. */
export function letteredOf(
  body: string,
  number: Node | undefined,
  unit: Node,
): { readonly node: Node; readonly data: Problem["data"] } | undefined {
  if (number?.end !== unit.start) return undefined;
  const word = body.slice(unit.start, unit.end);
  const [run = ""] = /^[OolI]+/.exec(word) ?? [];
  // the longest, but that the l of `18Olbf` is of the unit
  const length = Array.from(run, (_, index) => run.length - index).find(
    (at) => at === word.length || unitOf(word.slice(at)) !== undefined,
  );
  if (length === undefined) return undefined;
  const [letters, rest] = [word.slice(0, length), word.slice(length)];
  const written = body.slice(number.start, unit.end);
  const mended =
    body.slice(number.start, number.end) + withDigits(letters) + rest;
  return {
    node: { ...unit, start: number.start },
    data: { written, choices: [], ...sayLetters(written, mended) },
  };
}

export function isLettered(body: string, quantity: Node): boolean {
  const unit = child(quantity, "unit");
  const number = child(quantity, "number", "decimal");
  return unit !== undefined && letteredOf(body, number, unit) !== undefined;
}
