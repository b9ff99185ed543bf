// What follows from the record: entries of one kind side by side, with what is asked of each, what was read, the results with how they are
// known, and what would settle the rest. The working behind them is working.ts's.
import { allOf } from "../model/entry.ts";
import { askedOf, guardOf } from "../model/asked.ts";
import { namedIn } from "../model/evaluate/index-of.ts";
import { materialOfFeature } from "../model/evaluate/size.ts";
import { groupedBy } from "../model/groups.ts";
import { kindOf, nameOf } from "../model/reference.ts";
import {
  resultName,
  statusWord,
  VERDICT_WORDS,
} from "../model/result-kinds.ts";
import type { Result } from "../model/result.ts";
import { entryOf, refsOfKind, type Shop } from "../model/shop.ts";
import type { EntryKind } from "../../grammar/vocabulary.ts";
import type { Subject } from "./facts.ts";
import { gaugesTable } from "./gauges.ts";
import {
  type Child,
  el,
  isEmpty,
  type Markup,
  sentence,
} from "../markup/html.ts";
import { reamersTable } from "./reamers.ts";
import { line, table } from "./table.ts";

/** Told in the steps, or in the table of reamers. */
const ELSEWHERE: ReadonlySet<string> = new Set(["ready", "cut-size", "chance"]);

/** In the order in which a job goes. */
const KINDS: readonly (readonly [EntryKind, string])[] = [
  ["fit", "Running fits"],
  ["line", "Cutting in line"],
  ["stack", "End float"],
  ["journal", "Journals"],
  ["hole", "Holes"],
  ["bush", "Bushes"],
  ["bore", "Bores"],
  ["press", "Presses"],
];

/** @param pictures the pictures of entries of one kind */
export function resultsSection(
  subject: Subject,
  pictures: (refs: readonly string[]) => Child,
): Markup | undefined {
  const { check, shop } = subject;
  const entries = groupedBy(check.results, ({ entry }) => entry);
  const groups = KINDS.flatMap(([kind, title]) => {
    const refs = refsOfKind(shop, kind).filter(
      (ref) =>
        shop.places.get(ref)?.file === 0 &&
        (entries.has(ref) || !isEmpty(readAsWritten(shop, ref))),
    );
    return refs.length === 0 ? [] : [{ kind, title, refs }];
  });
  const gauges = gaugesTable(subject, entries);
  if (groups.length === 0 && gauges === undefined) return undefined;
  return el(
    "section",
    {},
    el("h2", {}, "Results"),
    el(
      "p",
      { class: "small heads" },
      "Sizes are at 20 °C. Clearances and interferences are on the diameter. ",
      el("b", {}, "Measured"),
      ": every size that it rests on was read; ",
      el("b", {}, "predicted"),
      ": a limit or a tool stands for one that nobody has read yet. Loads, turns, temperatures and materials are as the record states them, in either.",
    ),
    groups.map(({ kind, title, refs }) => [
      el("h3", {}, title),
      inSets(refs).map((set) => sideBySide(subject, set, entries)),
      kind === "line"
        ? refs.map((ref) => reamersTable(subject, ref))
        : undefined,
      pictures(refs),
    ]),
    gauges,
  );
}

/** So many columns can be read on a page that stands upright. */
const MOST_COLUMNS = 3;

/** Four entries are two and two, not three and one. */
function inSets(refs: readonly string[]): readonly (readonly string[])[] {
  const sets = Math.ceil(refs.length / MOST_COLUMNS);
  const wide = Math.ceil(refs.length / sets);
  return Array.from({ length: sets }, (_, set) =>
    refs.slice(set * wide, (set + 1) * wide),
  );
}

function sideBySide(
  subject: Subject,
  refs: readonly string[],
  entries: ReadonlyMap<string, readonly Result[]>,
): Markup {
  const { shop } = subject;
  const results = refs.map((ref) =>
    (entries.get(ref) ?? []).filter(({ kind }) => !ELSEWHERE.has(kind)),
  );
  const reasons = createReasons();
  const labels = [...new Set(results.flat().map(nameOfResult))];
  const rows = [
    ["Asked", ...refs.map((ref) => askedCell(subject, ref))],
    ["Read", ...refs.map((ref) => readAsWritten(shop, ref))],
    ...labels.map((label): readonly Child[] => [
      label,
      ...results.map((list) =>
        list
          .filter((result) => nameOfResult(result) === label)
          .map((result) => resultCell(result, reasons)),
      ),
    ]),
  ].filter(([, ...cells]) => !isEmpty(cells));
  return el(
    "div",
    {},
    table(
      [
        { head: "", percent: 22 },
        ...refs.map((ref) => ({ head: headOf(subject, ref) })),
      ],
      rows,
      "results short",
    ),
    reasons.list(),
  );
}

/** "fit front", and below "of journal front in bore front" */
function headOf({ shop }: Subject, ref: string): Child {
  const words = CLAUSE[kindOf(ref)] ?? [];
  const clauses = namedIn(shop, ref).flatMap((each, index) =>
    each === undefined ? [] : [`${words[index] ?? "in"} ${each}`],
  );
  const isFeature = ["journal", "hole", "bush", "bore"].includes(kindOf(ref));
  const material = isFeature ? materialOfFeature(shop, ref) : undefined;
  const made =
    material?.known === true ? `, ${nameOf(material.value.ref)}` : "";
  return [
    el("b", {}, ref),
    el("div", { class: "plain" }, `${clauses.join(" ")}${made}`),
  ];
}

const CLAUSE: Readonly<Record<string, readonly string[]>> = {
  journal: ["on"],
  press: ["of", "in"],
  fit: ["of", "in"],
};

function askedCell({ shop }: Subject, ref: string): Child {
  const guard = guardOf(shop, ref);
  return [
    ...askedOf(shop, ref).map((text) => line(text)),
    guard === "" ? undefined : el("div", { class: "small" }, guard),
  ];
}

const READING_RULES: ReadonlySet<string> = new Set([
  "ReadFact",
  "RepeatFact",
  "BushReadFact",
  "StackReadFact",
  "SwingFact",
  "BoreSwingFact",
]);

/** The readings word for word, so that the sheet can be held against what was read. */
function readAsWritten(shop: Shop, ref: string): Child {
  return (entryOf(shop, ref)?.facts ?? [])
    .filter(({ rule }) => READING_RULES.has(rule))
    .map(({ span, value }) => {
      const body = entryOf(shop, ref)?.block.lines[span.line]?.body ?? "";
      return el(
        "div",
        { class: "written" },
        value === undefined ? `${body} (can't be read)` : body,
      );
    });
}

function resultCell(result: Result, reasons: Reasons): Child {
  if (result.status === "unknown")
    return line(el("b", {}, "unknown"), ` ${reasons.markFor(result.text)}`);
  return line(
    `${result.text}, ${statusWord(result)}`,
    result.verdict === "none" ? "" : [", ", verdictMark(result)],
  );
}

export function verdictMark({ verdict }: Pick<Result, "verdict">): Child {
  const word = VERDICT_WORDS[verdict];
  return verdict === "out" || verdict === "unsure"
    ? el("span", { class: verdict }, word)
    : word;
}

/** Why results are unknown: each reason once under the table, by a letter. */
interface Reasons {
  markFor(text: string): string;
  list(): Markup | undefined;
}

function createReasons(): Reasons {
  const marks = new Map<string, string>();
  return {
    markFor(text) {
      const mark = marks.get(text) ?? markOf(marks.size);
      marks.set(text, mark);
      return `(${mark})`;
    },
    list: () =>
      marks.size === 0
        ? undefined
        : el(
            "div",
            { class: "reasons small below" },
            [...marks].map(([text, mark]) =>
              line(el("b", {}, `(${mark}) `), "unknown: ", sentence(text)),
            ),
          ),
  };
}

/** a … z, then aa, ab … */
function markOf(index: number): string {
  const last = String.fromCharCode(97 + (index % 26));
  return index < 26 ? last : markOf(Math.floor(index / 26) - 1) + last;
}

/** "clearance hot (diametral), case 1"; "stock, bore front" */
export function nameOfResult({ kind, of, case: number }: Result): string {
  return [
    resultName(kind),
    number === null ? undefined : `case ${String(number)}`,
    of ?? undefined,
  ]
    .filter((part) => part !== undefined)
    .join(", ");
}

/** Notes that people wrote into entries, for whoever does the work. */
export function notesSection({ open }: Subject): Markup | undefined {
  const notes = open.file.entries.flatMap((entry) =>
    entry.kind === "job" || entry.kind === "shop"
      ? []
      : allOf(entry, "NoteFact").flatMap(({ value }) =>
          value === undefined ? [] : [`${entry.ref}: ${value}`],
        ),
  );
  return notes.length === 0
    ? undefined
    : el(
        "section",
        {},
        el("h2", {}, "Notes in the record"),
        el(
          "ul",
          {},
          notes.map((note) => el("li", {}, note)),
        ),
      );
}
