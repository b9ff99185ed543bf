// The head of a sheet: which job, of what parts, from which files and in which state they are, made when and by what.
import { allOf, valueIn } from "../model/entry.ts";
import { settings } from "../model/evaluate/settings.ts";
import { nameOf } from "../model/reference.ts";
import { entryOf, openingEntry, refsOfKind } from "../model/shop.ts";
import { jobName, titleOf, type Subject, type Versioned } from "./facts.ts";
import { el, isEmpty, type Child, type Markup } from "../markup/html.ts";
import { labelled } from "./table.ts";

/** @param kind what the sheet is called: "Job sheet" */
export function headOfSheet(subject: Subject, kind: string): Markup {
  const { facts, shop } = subject;
  const opening = openingEntry(shop);
  const opened = valueIn(opening, "OpenedFact");
  return el(
    "header",
    { class: "sheet-head" },
    el("p", { class: "kind" }, kind),
    el("h1", {}, titleOf(subject)),
    labelled(
      (
        [
          ["Record", jobName(subject)],
          ["Parts", partsText(subject)],
          ["Opened", signed(opened?.date, opened?.who)],
          ["Lengths in", subject.system === "inch" ? "inches" : "millimetres"],
          ["Verdicts", verdictText(subject)],
          ["Files read", filesText(subject)],
          ["State of the files", versionText(facts.versioned)],
          ["Sheet made", `${facts.date}, with thou ${facts.version}`],
        ] as const
      ).filter(([, value]) => !isEmpty(value)),
      "facts",
    ),
    ...notesOf(subject),
  );
}

/** "layshaft (steel-4140), case (aluminium-356-t6, serial 1187)" */
function partsText({ shop }: Subject): string {
  return refsOfKind(shop, "part")
    .map((ref) => {
      const entry = entryOf(shop, ref);
      const serial = valueIn(entry, "SerialFact");
      const said = [
        valueIn(entry, "MaterialFact")?.name,
        serial === undefined ? undefined : `serial ${serial}`,
      ].filter((each) => each !== undefined);
      return said.length === 0
        ? nameOf(ref)
        : `${nameOf(ref)} (${said.join(", ")})`;
    })
    .join("; ");
}

/** "2026-11-02 by AK"; "" where neither is written. */
export function signed(
  date: string | undefined,
  who: string | undefined,
): string {
  return [date, who === undefined ? undefined : `by ${who}`]
    .filter((each) => each !== undefined)
    .join(" ");
}

function verdictText({ shop }: Subject): string {
  return settings(shop).verdict === "guarded"
    ? "guarded: limits are held back by the uncertainty of the reading (ISO 14253-1)"
    : "simple: a size is held against its limits as they are";
}

function filesText({ shop, open, facts }: Subject): string {
  const read = shop.files.map(({ path }) => facts.nameOf(path));
  const missing = open.uses
    .filter(({ state }) => state === "missing" || state === "outside")
    .map(({ written }) => `${written} (not there)`);
  return [...read, ...missing].join(", ");
}

function versionText(versioned: Versioned): Child {
  if (versioned.state === "none") return versioned.because;
  const { revision, changed } = versioned;
  const at =
    revision === undefined
      ? "under version control, never committed"
      : `revision ${revision}`;
  return changed.length === 0
    ? `${at}, no uncommitted changes`
    : [
        `${at}, `,
        el("b", {}, "with uncommitted changes"),
        ` in ${changed.join(", ")}`,
      ];
}

function notesOf({ shop }: Subject): readonly Markup[] {
  const opening = openingEntry(shop);
  if (opening === undefined) return [];
  return allOf(opening, "NoteFact").flatMap(({ value }) =>
    value === undefined ? [] : [el("p", {}, `Note: ${value}`)],
  );
}
