// A comparison of one record as a page of Markdown to read beside it: what is worse first, then each entry with its changes, then findings.
// What a record says is set off, so that none of it is obeyed.
import { blocks, escaped, list, sentence, table } from "../markup/markdown.ts";
import { groupedBy } from "../model/groups.ts";
import type { Change, FindingChange, RecordChanges } from "./changes.ts";
import {
  changeWords,
  findingWords,
  onceEach,
  tailOf,
  whatOf,
  worseWords,
} from "./wording.ts";
import { capitalised } from "../model/sentences.ts";

export interface ComparisonPage {
  readonly name: string;
  /** What it is compared with, "HEAD (3f2a1b0c9d8e) on main". */
  readonly between: string;
  /** Whole sentences. */
  readonly notes: readonly string[];
  readonly movedFrom: string | undefined;
  readonly changes: RecordChanges;
  /** The line that an entry begins on, from 0; undefined where it is gone. */
  readonly lineOf: (entry: string) => number | undefined;
  /** The address that a link leads to the record by; undefined for no links. */
  readonly link: string | undefined;
}

export function comparisonPage(page: ComparisonPage): string {
  const { name, between, notes, movedFrom, changes } = page;
  const entries = groupedBy(changes.changes, ({ entry }) => entry);
  const isWorse = ({ tendency }: Change | FindingChange): boolean =>
    tendency === "worse";
  const worse = [
    ...changes.changes.filter(isWorse).map((change) => worseItem(change, page)),
    ...changes.come
      .filter(isWorse)
      .map((each) => findingItem(each, true, page)),
  ];
  const findings = [
    ...changes.come
      .filter((each) => !isWorse(each))
      .map((each) => findingItem(each, true, page)),
    ...changes.gone.map((each) => findingItem(each, false, page)),
  ];
  return blocks(
    `# ${escaped(name)} since the last commit`,
    `${escaped(between)}, and the record as it stands here${
      movedFrom === undefined ? "" : `; then it was ${escaped(movedFrom)}`
    }. ${summary(changes)}`,
    ...notes,
    worse.length === 0 ? "" : "## Worse",
    list(onceEach(worse)),
    0 < entries.size ? "## What changed" : "",
    ...[...entries].flatMap(([entry, of]) => [
      `### ${linked(entry, page)}${entryNote(of)}`,
      changesTable(of),
    ]),
    findings.length === 0 ? "" : "## Other findings",
    list(onceEach(findings)),
  ).concat("\n");
}

function summary(changed: RecordChanges): string {
  const { changes, come, gone, worse } = changed;
  if (changes.length + come.length + gone.length === 0)
    return "**Nothing has changed in what it comes to**; comments, layout and notes may have.";
  const words = worseWords([{ state: "changed", changes: changed }], 1);
  const sentence = `${capitalised(words)}.`;
  return worse === 0 ? sentence : `**${sentence}**`;
}

function entryNote(changes: readonly Change[]): string {
  const whole = changes.find(({ what }) => what === "entry");
  return whole === undefined ? "" : `, ${changeWords(whole).after}`;
}

function changesTable(changes: readonly Change[]): string {
  return table(
    ["What", "Last commit", "Now", "Change"],
    changes
      .filter(({ what }) => what !== "entry")
      .map((change) => {
        const { before, after } = changeWords(change);
        return [
          escaped(whatOf(change)),
          escaped(before),
          escaped(after),
          tailOf(change)
            .map((word) => (word === "worse" ? "**worse**" : escaped(word)))
            .join(", "),
        ];
      }),
  );
}

function worseItem(change: Change, page: ComparisonPage): string {
  const { before, after } = changeWords(change);
  return `${linked(change.entry, page)} ${escaped(whatOf(change))}: ${escaped(before)} → ${escaped(after)}`;
}

function findingItem(
  finding: FindingChange,
  isNew: boolean,
  page: ComparisonPage,
): string {
  const { entry, message } = finding;
  const words = escaped(findingWords({ ...finding, entry: null }, isNew));
  const at = entry === null ? "" : ` at ${linked(entry, page)}`;
  return `${words}${at}${isNew ? `: ${sentence(message)}` : ""}`;
}

function linked(entry: string, { lineOf, link }: ComparisonPage): string {
  const line = lineOf(entry);
  return link === undefined || line === undefined
    ? escaped(entry)
    : `[${escaped(entry)}](${inAddress(link)}#L${String(line + 1)})`;
}

/** What would end a link's address, or open another, in the way that addresses have for it. */
function inAddress(link: string): string {
  return link.replaceAll(
    /[()<>\\\s]/gu,
    (sign) => `%${sign.charCodeAt(0).toString(16).padStart(2, "0")}`,
  );
}
