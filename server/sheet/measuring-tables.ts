// The tables of a measuring sheet: one for each size to read, with its stations and angles, and what the readings are held against beside
// it. What that is, limits.ts says.
import { showRange } from "../core/quantity/show.ts";
import { valueIn } from "../model/entry.ts";
import { boresOfHost, lineOfBore } from "../model/evaluate/index-of.ts";
import { hostOf, placesOf } from "../model/evaluate/size.ts";
import { entryOf, refsOfKind } from "../model/shop.ts";
import type { Subject } from "./facts.ts";
import { el, type Child, type Markup } from "../markup/html.ts";
import { asked, inOrOut, penLine } from "./blanks.ts";
import { swingTable } from "./swing-table.ts";
import { table } from "./table.ts";
import {
  bushHeldAgainst,
  heldAgainst,
  soFar,
  type Held,
  NOMINAL,
} from "./limits.ts";
import { capitalised } from "../model/sentences.ts";
import { kindOf } from "../model/reference.ts";

/** Entries of the record's own file: a crib is measured with a sheet of its own. */
export function refsOf(
  { shop }: Subject,
  kind: Parameters<typeof refsOfKind>[1],
): readonly string[] {
  return refsOfKind(shop, kind).filter(
    (ref) => shop.places.get(ref)?.file === 0,
  );
}

/** Journals, then each hole with its bush and its bore: the order in which hands go to them. */
export function featureTables(subject: Subject): readonly Markup[] {
  const { shop } = subject;
  const tables: Markup[] = [];
  const done = new Set<string>();
  const bore = (ref: string): void => {
    if (done.has(ref)) return;
    done.add(ref);
    tables.push(
      featureTable(
        subject,
        ref,
        heldAgainst(subject, ref),
        stagesOf(subject, ref),
      ),
    );
  };
  for (const ref of refsOf(subject, "journal"))
    tables.push(featureTable(subject, ref, heldAgainst(subject, ref), [""]));
  const bushes = refsOf(subject, "bush");
  const bush = (ref: string): void => {
    if (done.has(ref)) return;
    done.add(ref);
    for (const side of ["od", "id"] as const)
      tables.push(
        featureTable(
          subject,
          ref,
          bushHeldAgainst(subject, ref, side),
          ["bought"],
          side,
        ),
      );
    boresOfHost(shop, ref).forEach(bore);
  };
  for (const ref of refsOf(subject, "hole")) {
    tables.push(featureTable(subject, ref, heldAgainst(subject, ref), [""]));
    bushes.filter((each) => hostOf(shop, each) === ref).forEach(bush);
  }
  bushes.forEach(bush);
  refsOf(subject, "bore").forEach(bore);
  return tables.length === 0 ? [] : [el("h2", {}, "Sizes to read"), ...tables];
}

/** The stages that a bore is read at: one that a line cuts, before and after the cut. */
function stagesOf({ shop }: Subject, ref: string): readonly string[] {
  const inBush = hostOf(shop, ref)?.startsWith("bush ") === true;
  if (lineOfBore(shop, ref) === undefined) return inBush ? ["pressed"] : [""];
  return [inBush ? "pressed" : "roughed", "finished"];
}

const ANGLES = ["0°", "45°", "90°", "135°"];
const USUAL_PLACES = ["near", "middle", "far"];

export function featureTable(
  subject: Subject,
  ref: string,
  held: readonly Held[],
  stages: readonly string[],
  side?: "od" | "id",
): Markup {
  const isStaged = 1 < stages.length;
  const stage = stages.length === 1 ? stages[0] : "";
  const rows = stages.flatMap((each) =>
    placesToRead(subject, ref).map((place): readonly Child[] => [
      [el("b", {}, place), isStaged ? ` ${each}` : ""],
      ...ANGLES.map(() => ""),
      inOrOut(),
    ]),
  );
  const about = [
    lengthText(subject, ref),
    stage === "" || stage === undefined ? "" : `read as ${stage}`,
    side === undefined ? soFar(subject, ref) : "",
  ].filter((text) => text !== "");
  return el(
    "section",
    { class: "keep" },
    el(
      "h3",
      {},
      `${capitalised(ref)}${side === undefined ? "" : `, ${side}`}`,
      " ",
      el("small", {}, about.join("; ")),
    ),
    limitsBox(held),
    table(
      [
        { head: isStaged ? "Place, as" : "Place", percent: 17 },
        ...ANGLES.map((head) => ({ head })),
        { head: "Verdict", percent: 14 },
      ],
      rows,
      "fill",
    ),
    stages.map((each) =>
      readWith(isStaged ? `As ${each}, with gauge` : "With gauge"),
    ),
    swingTable(subject, ref, isStaged),
  );
}

/** With what, how warm, by whom and when: the same for all the rows that are read at one stage, which keep their room for figures. */
function readWith(gauge: string): Markup {
  return penLine(asked(gauge), asked("part at"), asked("by"), asked("on"));
}

export function limitsBox(held: readonly Held[]): Markup {
  return el(
    "div",
    { class: "limits" },
    held.map(({ label, range, note }) =>
      el(
        "span",
        {},
        `${label}: `,
        el("b", {}, range),
        note === "" ? "" : el("span", { class: "small" }, ` (${note})`),
      ),
    ),
    held.every(({ label }) => label === NOMINAL)
      ? el(
          "span",
          { class: "pen" },
          "No limits are written. ",
          asked("Limits: from"),
          " ",
          asked("to"),
        )
      : "",
  );
}

/** The places that the record knows, and those of the three usual ones that it lacks. */
function placesToRead({ shop }: Subject, ref: string): readonly string[] {
  const read = kindOf(ref) === "bush" ? undefined : placesOf(shop, ref);
  const named =
    read?.known === true ? read.value.flatMap(({ place }) => place ?? []) : [];
  return named.some((place) => !USUAL_PLACES.includes(place))
    ? named
    : USUAL_PLACES;
}

function lengthText({ shop, system }: Subject, ref: string): string {
  const length = valueIn(entryOf(shop, ref), "LengthFact");
  return length === undefined
    ? ""
    : `length ${showRange(length.low, length.high, system, length.step)}`;
}
