// Makes a snippet with tab stops from the form of an entry or a fact: CAPITALS are filled in, a|b is a choice, [ ] is left off. What a
// capital word stands for is asked of whoever knows the shop.
import { OPEN_PLACE } from "../../grammar/vocabulary.ts";
import type { System } from "../core/quantity/show.ts";
import type { Dimension } from "../core/quantity/units.ts";
import { unitsOf } from "./completion-units.ts";

/** What fills the capital words of a form. */
export interface Filling {
  readonly system: System | undefined;
  /** ISO 8601; undefined where nobody gave it. */
  readonly today: string | undefined;
  /** What may stand for a capital word of a rule's form, best first; empty for anything. */
  readonly namesFor: (word: string, rule: string) => readonly string[];
}

/** A snippet as it grows: tab stops are numbered through all its lines. */
export interface Snippet {
  readonly text: string;
  readonly stops: number;
}

export const EMPTY: Snippet = { text: "", stops: 0 };

const PIECE = /[\w-]+(?:\|[\w-]+)+(?: NAME)?|"[A-Z]+"|[A-Z]{2,}|X|Z/g;

const LEFT_OFF = / ?\[[^[\]]*\]/g;

/** Adds a form to a snippet. */
export function withForm(
  before: Snippet,
  form: string,
  rule: string,
  filling: Filling,
): Snippet {
  let stops = before.stops;
  const next = (): number => ++stops;
  const shown = form
    // one may stand within another
    .replace(LEFT_OFF, "")
    .replace(LEFT_OFF, "")
    .split(PIECE_WITH_KEPT)
    .map((piece) => fill(piece, rule, filling, next))
    .join("");
  return { text: before.text + shown, stops };
}

/** The same pieces, kept by `split`. */
const PIECE_WITH_KEPT = new RegExp(`(${PIECE.source})`, "g");

function fill(
  piece: string,
  rule: string,
  filling: Filling,
  next: () => number,
): string {
  if (/^"[A-Z]+"$/.test(piece))
    return `"${placeholder(next(), piece.slice(1, -1))}"`;
  // `bush|part NAME` is one reference
  if (piece.endsWith(" NAME") && piece.includes("|")) {
    const names = filling.namesFor(piece, rule);
    return 0 < names.length
      ? oneOf(next(), names)
      : `${oneOf(next(), piece.replace(" NAME", "").split("|"))} ${placeholder(next(), "NAME")}`;
  }
  if (/^[\w-]+(?:\|[\w-]+)+$/.test(piece))
    return oneOf(next(), piece.split("|"));
  if (piece.search(OPEN_PLACE) !== 0) return escapedText(piece);
  // what is due is due another day
  if (piece === "DATE" && rule !== "DueFact" && filling.today !== undefined)
    return placeholder(next(), filling.today);
  const names = filling.namesFor(piece, rule);
  const stop =
    0 < names.length ? oneOf(next(), names) : placeholder(next(), piece);
  const units = unitsFor(piece, rule, filling.system);
  return units.length === 0 ? stop : `${stop} ${oneOf(next(), units)}`;
}

/** What needs a unit written after it, by the capital word, then by rule. */
const OF_WORD: Readonly<Record<string, Dimension>> = {
  TEMPERATURE: "temperature",
  TORQUE: "torque",
  FORCE: "force",
  ANGLE: "angle",
  AREA: "area",
  HOURS: "time",
};
const OF_RULE: Readonly<Record<string, Dimension>> = {
  RunsFact: "rotation",
  TemperatureFact: "temperature",
  CutTemperatureFact: "temperature",
  SpeedFact: "speed",
  ExpansionFact: "expansion",
  ModulusFact: "pressure",
  YieldFact: "pressure",
  SpecificLoadFact: "pressure",
  MaterialSpeedFact: "speed",
  PvFact: "pv",
  ViscosityFact: "viscosity",
  DensityFact: "density",
};

function unitsFor(
  word: string,
  rule: string,
  system: System | undefined,
): readonly string[] {
  if (rule === "FinishFact" && word === "VALUE")
    return system === "inch" ? ["uin", "um"] : ["um", "uin"];
  const dimension =
    OF_WORD[word] ??
    (word === "VALUE" || word === "SPEED" ? OF_RULE[rule] : undefined);
  if (dimension === undefined) return [];
  const units = unitsOf(dimension, system);
  const usual = system === "inch" ? undefined : USUAL_METRIC[rule];
  return usual === undefined
    ? units
    : [usual, ...units.filter((unit) => unit !== usual)];
}

/** What such a figure is given in, where it is not the smallest unit of its kind. */
const USUAL_METRIC: Readonly<Record<string, string>> = {
  ModulusFact: "GPa",
  YieldFact: "MPa",
  SpecificLoadFact: "MPa",
};

/** A filling in which a place that stands again takes the next name: a line's second bore is another than its first. */
export function inTurn(filling: Filling): Filling {
  const asked = new Map<string, number>();
  return {
    ...filling,
    namesFor(word, rule) {
      const place = `${rule} ${word}`;
      const turn = asked.get(place) ?? 0;
      asked.set(place, turn + 1);
      const names = filling.namesFor(word, rule);
      return turn < names.length
        ? [...names.slice(turn), ...names.slice(0, turn)]
        : [];
    },
  };
}

function placeholder(stop: number, text: string): string {
  return `\${${String(stop)}:${escapedText(text)}}`;
}

function oneOf(stop: number, choices: readonly string[]): string {
  const [only, ...rest] = choices;
  return rest.length === 0
    ? placeholder(stop, only ?? "")
    : `\${${String(stop)}|${choices.map((each) => each.replace(/[\\,|]/g, "\\$&")).join(",")}|}`;
}

/** Text as the snippet grammar of the protocol takes it. */
export function escapedText(text: string): string {
  return text.replace(/[\\$}]/g, "\\$&");
}

export function withText(before: Snippet, text: string): Snippet {
  return { text: before.text + escapedText(text), stops: before.stops };
}
