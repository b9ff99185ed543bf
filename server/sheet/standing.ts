// Where the job stands, on one look: findings counted, verdicts counted, what is next and what blocks it, what is still to be measured.
import { missingTexts } from "../model/known.ts";
import { showCount } from "../core/quantity/show.ts";
import { orderOf } from "../model/evaluate/order.ts";
import { groupedBy } from "../model/groups.ts";
import type { Finding, Result, Verdict } from "../model/result.ts";
import { resultsOf } from "../model/results.ts";
import type { Subject } from "./facts.ts";
import { standsAgainst } from "../rules/entry-findings.ts";
import { standWords } from "../rules/order/stands.ts";
import { type Child, el, type Markup, sentence } from "../markup/html.ts";
import { nameOfResult } from "./results.ts";
import { labelled } from "./table.ts";

export function standing(subject: Subject): Markup {
  const { results } = subject.check;
  const rows: readonly (readonly [string, Child])[] = [
    ["Next", nextText(subject)],
    ["Findings", findingsText(subject.check.findings)],
    ["Out", listed(results, "out")],
    ["Unsure", listed(results, "unsure")],
    ["In", listed(results, "in")],
    ["Still unknown", unknownText(results)],
  ];
  return el(
    "section",
    {},
    el("h2", {}, "Where it stands"),
    labelled(rows, "standing"),
  );
}

/** The steps that wait for nothing, and what blocks those of them that are gated. */
function nextText({ shop }: Subject): Child {
  const { steps, next } = orderOf(shop);
  if (steps.length === 0) return "No steps are written.";
  if (steps.every((step) => step.done)) return "All steps are done.";
  if (next.length === 0) return "No step can be taken: see the steps.";
  return next.map((ref, index) => {
    const ready = resultsOf(shop, ref).find((each) => each.kind === "ready");
    const words = standWords(standsAgainst(shop, ref));
    return [
      index === 0 ? "" : el("br"),
      el("b", {}, ref),
      ready === undefined ? "" : `: ${ready.text}`,
      words === "" ? "" : `; look first: ${words}`,
    ];
  });
}

function findingsText(findings: readonly Finding[]): string {
  const open = findings.filter((finding) => finding.accepted === null);
  const count = (level: Finding["level"]): number =>
    open.filter((finding) => finding.level === level).length;
  const said = [
    counted(count("error"), "error"),
    counted(count("warning"), "warning"),
    counted(count("information"), "note"),
    counted(count("hint"), "hint"),
    counted(findings.length - open.length, "accepted finding"),
  ].filter((each) => each !== "");
  return said.length === 0 ? "none" : said.join(", ");
}

function counted(count: number, what: string): string {
  return count === 0 ? "" : showCount(count, what);
}

/** "fit front: clearance, surface speed; fit rear: …", predicted ones marked. */
function listed(results: readonly Result[], verdict: Verdict): string {
  const entries = groupedBy(
    results.filter((result) => result.verdict === verdict),
    ({ entry }) => entry,
  );
  const named = (result: Result): string =>
    `${nameOfResult(result).replace(/ \([^)]*\)/g, "")}${result.status === "predicted" ? " (predicted)" : ""}`;
  return entries.size === 0
    ? "none"
    : [...entries]
        .map(([ref, all]) => `${ref}: ${all.map(named).join(", ")}`)
        .join("; ");
}

/** What would settle the most first; each need once. */
function unknownText(results: readonly Result[]): Child {
  const unknown = results.filter((result) => result.status === "unknown");
  if (unknown.length === 0) return "nothing that the record asks for";
  const settles = new Map<string, number>();
  for (const { needs } of unknown)
    for (const text of missingTexts(needs))
      settles.set(text, (settles.get(text) ?? 0) + 1);
  const most = [...settles].sort(([, a], [, b]) => b - a);
  return [
    counted(unknown.length, "result"),
    most.length === 0 ? "" : ", for want of ",
    sentence(
      most
        .map(([text, count]) =>
          count === 1 ? text : `${text} (settles ${String(count)})`,
        )
        .join("; "),
    ),
  ];
}
