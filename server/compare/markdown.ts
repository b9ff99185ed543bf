// A comparison as Markdown, for a comment beside a change. What a record says is set off, so that none of it is obeyed.
import { escaped, sentence } from "../markup/markdown.ts";
import type { FindingChange } from "./changes.ts";
import {
  changeWords,
  findingWords,
  onceEach,
  stateWords,
  summaryWords,
  tailOf,
  whatOf,
  type ComparedRecord,
} from "./wording.ts";

/** @param between "HEAD and the files as they are" */
export function comparisonMarkdown(
  between: string,
  compared: number,
  records: readonly ComparedRecord[],
): string {
  return [
    `**Thou: ${escaped(between)}.** ${summaryWords(compared, records)}`,
    ...records.map(recordMarkdown),
  ]
    .join("\n\n")
    .concat("\n");
}

function recordMarkdown(record: ComparedRecord): string {
  const { name, changes } = record;
  const head = `### ${escaped(name)}${stateWords(record, escaped)}`;
  const rows = changes.changes.map((change) => {
    const { before, after } = changeWords(change);
    const what = change.what === "entry" ? "" : ` ${escaped(whatOf(change))}`;
    return `| **${escaped(change.entry)}**${what} | ${escaped(before)} | ${escaped(after)} | ${tailOf(change).map(marked).join(", ")} |`;
  });
  const findings = onceEach([
    ...changes.come.map((each) => findingMarkdown(each, true)),
    ...changes.gone.map((each) => findingMarkdown(each, false)),
  ]);
  return [
    head,
    ...(rows.length === 0
      ? []
      : [["| | before | after | |", "|---|---|---|---|", ...rows].join("\n")]),
    ...(findings.length === 0 ? [] : [findings.join("\n")]),
  ].join("\n\n");
}

function marked(word: string): string {
  return word === "worse" ? "**worse**" : escaped(word);
}

function findingMarkdown(finding: FindingChange, isNew: boolean): string {
  const said = isNew ? `: ${sentence(finding.message)}` : "";
  return `- ${escaped(findingWords(finding, isNew))}${said}`;
}
