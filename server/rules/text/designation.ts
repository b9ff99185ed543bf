// What is shipped under a designation of the trade, however it is written: `4140`, `SAE 660`, `C93200`, `VG68`.
import { materials, type Material } from "../../core/materials/material.ts";
import { oils, type Oil } from "../../core/materials/oils.ts";
import { firstFound } from "./near.ts";

/** How a material or an oil that is not shipped is written, as the lines to write: "write it as the shop's own, …". */
export function howToWrite(kind: "material" | "oil", name: string): string {
  const facts =
    kind === "oil"
      ? "the line `viscosity VALUE cSt at 40 C, VALUE cSt at 100 C` from its sheet"
      : "its `expansion`, and what else is asked for, as lines";
  return `write it as the shop's own, with \`${kind} ${name}\` from column 1 and ${facts} set in below`;
}

/** `10w-40`, `sae-10w40`: an oil of two grades, as J300 writes it, which no single grade stands for. */
export function isMultigrade(name: string): boolean {
  return /^(?:sae[\s-]*)?\d{1,2}w[\s-]*\d{2}$/iu.test(name);
}

/** `sae-10w-40` for `10w-40` or `SAE 10W-40`, `oil-9` for `9`: undefined where no figure stands in it. */
export function nameFor(
  kind: "material" | "oil",
  written: string,
): string | undefined {
  if (!/^[\p{L}\d][\p{L}\d\s/-]*$/u.test(written) || !/\d/.test(written))
    return undefined;
  const joined = written.toLowerCase().replaceAll(/[\s/-]+/gu, "-");
  if (/^\p{L}/u.test(joined)) return joined;
  return `${kind === "oil" && isMultigrade(joined) ? "sae" : kind}-${joined}`;
}

interface Candidate {
  readonly name: string;
  readonly ofName: readonly string[];
  /** Of its name and of what it is called in the trade. */
  readonly ofBoth: ReadonlySet<string>;
}

/**
 * The shipped materials and oils that bear every number of a designation in their name; where none does, those that bear it with all its
 * letters in what they are called in the trade. Of those the ones that share most of its letters, at most three. None where it has no
 * number of two figures at least.
 */
export function shippedAs(
  written: string,
  kinds: readonly string[],
): readonly string[] {
  const parts = partsOf(written);
  const numbers = parts.filter(isNumber);
  if (!numbers.some((each) => 2 <= each.length)) return [];
  const letters = parts.filter((each) => !isNumber(each));
  const isNamed = ({ ofName }: Candidate) =>
    numbers.every((each) => ofName.includes(each)) &&
    ofName.every(
      (each) => !isNumber(each) || each.length < 2 || numbers.includes(each),
    );
  // a bare number of two figures may be anything in a sentence
  const isCalled = ({ ofBoth }: Candidate) =>
    (0 < letters.length || numbers.every((each) => 3 <= each.length)) &&
    parts.every((each) => ofBoth.has(each));
  const all = [
    ...(kinds.includes("material") ? materials : []),
    ...(kinds.includes("oil") ? oils : []),
  ].map(candidate);
  const found = firstFound(
    () => all.filter(isNamed),
    () => all.filter(isCalled),
  );
  const shared = ({ ofBoth }: Candidate) =>
    letters.filter((each) => ofBoth.has(each)).length;
  const most = Math.max(...found.map(shared));
  return found
    .filter((each) => shared(each) === most)
    .map(({ name }) => name)
    .slice(0, 3);
}

function candidate(shipped: Material | Oil): Candidate {
  const { name } = shipped;
  const ofName = partsOf(name);
  const called = "what" in shipped ? shipped.what : shipped.grade;
  return { name, ofName, ofBoth: new Set([...ofName, ...partsOf(called)]) };
}

/** `C93200`: `c`, `93200` */
function partsOf(text: string): readonly string[] {
  return text.toLowerCase().match(/\p{L}+|\d+/gu) ?? [];
}

function isNumber(part: string): boolean {
  return /^\d/u.test(part);
}
