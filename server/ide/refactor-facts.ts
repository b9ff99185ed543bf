// Facts that an entry lacks, written as a form to fill in: those that would settle what its results don't say, rows for the readings that a
// feature is without, and the day that a step was done. Nothing is filled in that nobody knows.
import { eolOf } from "../../grammar/lines.ts";
import { factSpec } from "../../grammar/vocabulary.ts";
import { orderOf } from "../model/evaluate/order.ts";
import { resultsOf } from "../model/results.ts";
import type { OpenFile } from "../model/project.ts";
import type { Need } from "../model/result.ts";
import { refsOfKind } from "../model/shop.ts";
import { fillingOf } from "./completion-names.ts";
import { EMPTY, escapedText, withForm } from "./completion-snippet.ts";
import type { Spot } from "./position.ts";
import { endOfFacts, type Refactoring } from "./refactoring.ts";
import { readingsOf, targetsIn, type Target } from "./taking/targets.ts";
import { nameOf } from "../model/reference.ts";

/** The facts that the results of the entry wait for, in the entries of this file that they belong to. */
export function missingFacts(
  open: OpenFile,
  { entry }: Spot,
  today: string,
): readonly Refactoring[] {
  if (entry.ref === "" || entry.damaged) return [];
  const seen = new Set<string>();
  const needs: Need[] = [];
  for (const need of resultsOf(open.shop, entry.ref).flatMap(
    (result) => result.needs,
  )) {
    const key = `${need.ref} ${need.fact}`;
    if (!seen.has(key)) needs.push(need);
    seen.add(key);
  }
  return needs.flatMap((need) => factFor(open, need, today) ?? []);
}

function factFor(
  open: OpenFile,
  { ref, fact, text }: Need,
  today: string,
): Refactoring | undefined {
  const { shop, file } = open;
  const place = shop.places.get(ref);
  const entry = place?.file === 0 ? file.entries[place.index] : undefined;
  if (place === undefined || entry?.kind === undefined || entry.damaged)
    return undefined;
  const spec = factSpec(entry.kind, fact);
  const isGiven = entry.facts.some(({ word }) => word === fact);
  if (spec === undefined || (isGiven && !spec.many)) return undefined;
  // rows of readings are offered by themselves, with their places
  if (fact === "read" && targetsIn(open).some((each) => each.ref === ref))
    return undefined;
  const filling = fillingOf(open, ref, today);
  return added(
    open,
    place.index,
    `Add \`${fact}\` to ${ref}: ${text}`,
    [withForm(EMPTY, spec.form, spec.rule, filling).text],
    [spec.form],
  );
}

/** A row of readings for each place of the feature that has none: near and far, so that taper shows too. */
export function readingRows(
  open: OpenFile,
  { entry }: Spot,
): readonly Refactoring[] {
  return targetsIn(open)
    .filter((target) => target.entry === entry)
    .flatMap((target) => rowsFor(open, target) ?? []);
}

function rowsFor(open: OpenFile, target: Target): Refactoring | undefined {
  const { entry, side, ref } = target;
  const readings = readingsOf(entry, side);
  const isTool = entry.kind === "reamer" || entry.kind === "pilot";
  const read = new Set(readings.map(({ place }) => place));
  // readings at no named place are a choice that was made
  if (isTool ? 0 < readings.length : read.has(undefined)) return undefined;
  const places = isTool
    ? [undefined]
    : ["near", "far"].filter((place) => !read.has(place));
  if (places.length === 0 || entry.facts.some(isUnread)) return undefined;
  const gauges = gaugeNames(open, target);
  let stops = 0;
  const rows = places.map((place) => {
    const start = ["read", side, place].filter(
      (word) => word !== null && word !== undefined,
    );
    const values = `\${${String(++stops)}:VALUES}`;
    const gauge =
      gauges.length === 0
        ? ""
        : ` with \${${String(++stops)}${choice(gauges)}}`;
    const [first] = gauges;
    return {
      snippet: `${start.join(" ")} ${values}${gauge}`,
      plain: `${start.join(" ")} VALUES${first === undefined ? "" : ` with ${first}`}`,
    };
  });
  const index = open.file.entries.indexOf(entry);
  const what = side === null ? ref : `the ${side} of ${ref}`;
  const where = isTool ? "" : ` ${places.join(" and ")}`;
  return added(
    open,
    index,
    `Add ${rows.length === 1 ? "a row" : "rows"} for readings of ${what}${where}`,
    rows.map(({ snippet }) => snippet),
    rows.map(({ plain }) => plain),
  );
}

function isUnread({ word, value }: { word: string; value: unknown }): boolean {
  return word === "read" && value === undefined;
}

function choice(names: readonly string[]): string {
  return names.length === 1
    ? `:${escapedText(names[0] ?? "")}`
    : `|${names.join(",")}|`;
}

/** The gauges of the shop: the one that the feature was read with first. */
function gaugeNames(
  { shop }: OpenFile,
  { entry, side }: Target,
): readonly string[] {
  const names = refsOfKind(shop, "gauge").map(nameOf);
  const used = readingsOf(entry, side).at(-1)?.gauge?.name;
  return used === undefined
    ? names
    : [used, ...names.filter((name) => name !== used)];
}

/** The day that the next step was done. Only whoever takes it knows that it is. */
export function doneToday(
  { shop, file, path }: OpenFile,
  { entry, index }: Spot,
  today: string,
): readonly Refactoring[] {
  if (entry.kind !== "step" || entry.damaged) return [];
  if (!orderOf(shop).next.includes(entry.ref)) return [];
  const at = endOfFacts(file, index);
  const fact = `done ${today}`;
  return [
    {
      title: `It is done today: \`${fact}\``,
      kind: "mend",
      edits: [
        {
          file: path,
          range: { start: at, end: at },
          text: `${eolOf(file.lines)}  ${fact}`,
        },
      ],
    },
  ];
}

/** Lines with tab stops after the last fact; an editor without stops gets their forms as comments, which say nothing yet. */
function added(
  { file, path }: OpenFile,
  index: number,
  title: string,
  snippets: readonly string[],
  forms: readonly string[],
): Refactoring {
  const end = endOfFacts(file, index);
  const eol = eolOf(file.lines);
  // at the margin of the next line, since an editor sets a snippet in as far as what stands before it
  const at = { line: end.line + 1, character: 0 };
  const hasNext = at.line < file.lines.lines.length;
  const comments = forms.map((each) => `  # ${each}`);
  return {
    title,
    kind: "rewrite",
    edits: [
      hasNext
        ? {
            file: path,
            range: { start: at, end: at },
            text: snippets.map((each) => `  ${each}${eol}`).join(""),
            plain: comments.map((each) => `${each}${eol}`).join(""),
          }
        : {
            file: path,
            range: { start: end, end },
            text: comments.map((each) => `${eol}${each}`).join(""),
          },
    ],
  };
}
