// The findings of a record, the gravest first, and the concessions that someone has signed.
import { UNIT_OF_SYSTEM } from "../core/quantity/show.ts";
import { allOf, valueIn } from "../model/entry.ts";
import { refOf, entryOf, refsOfKind } from "../model/shop.ts";
import type { Finding, Level } from "../model/result.ts";
import type { Subject } from "./facts.ts";
import { signed } from "./head.ts";
import { type Child, el, type Markup, sentence } from "../markup/html.ts";
import { line, table } from "./table.ts";

const LEVELS: readonly Level[] = ["error", "warning", "information", "hint"];

export function findingsSection({ check, facts }: Subject): Markup | undefined {
  if (check.findings.length === 0) return undefined;
  const sorted = [...check.findings].sort(
    (a, b) => rank(a) - rank(b) || a.place.line - b.place.line,
  );
  return el(
    "section",
    {},
    el("h2", {}, "Findings"),
    table(
      [
        { head: "Level", percent: 15 },
        { head: "Where", percent: 29 },
        { head: "Finding" },
      ],
      sorted.map((finding) => [
        el(
          "span",
          { class: "short" },
          finding.accepted === null
            ? finding.level === "error" || finding.level === "warning"
              ? el("b", {}, finding.level)
              : finding.level
            : "accepted",
        ),
        [
          finding.entry ?? "",
          el(
            "div",
            { class: "small" },
            `${facts.nameOf(finding.place.file)}, line ${String(finding.place.line + 1)}`,
          ),
        ],
        [
          sentence(finding.message),
          el("div", { class: "small" }, `code ${finding.code}`),
        ],
      ]),
    ),
  );
}

function rank({ level, accepted }: Finding): number {
  return accepted === null ? LEVELS.indexOf(level) : LEVELS.length;
}

/** Every concession of the record: what it allows, up to where, who signed it and when, and whether it holds a finding now. */
export function concessionsSection(subject: Subject): Markup | undefined {
  const { shop, check } = subject;
  const refs = refsOfKind(shop, "concession");
  if (refs.length === 0) return undefined;
  const rows = refs.map((ref): readonly Child[] => {
    const entry = entryOf(shop, ref);
    const allows = valueIn(entry, "AllowsFact");
    const on = refOf(shop, allows?.on) ?? allows?.on.name;
    const why = valueIn(entry, "WhyFact");
    const name = entry?.name ?? "";
    const accepted = check.findings.filter((each) => each.accepted === name);
    const own = check.findings.filter((each) => each.entry === ref);
    return [
      el("b", {}, name),
      allows === undefined
        ? "can't be read"
        : `${allows.code} on ${on ?? "what can't be found"}`,
      boundAsWritten(subject, ref, allows?.code),
      why?.text ?? "",
      signed(why?.signature.date, why?.signature.who) || el("b", {}, "nobody"),
      0 < accepted.length
        ? "accepts a finding"
        : own.length === 0
          ? ""
          : own.map((each) => line(sentence(each.message))),
    ];
  });
  return el(
    "section",
    {},
    el("h2", {}, "Concessions"),
    table(
      [
        { head: "Name", percent: 13 },
        { head: "Allows", percent: 19 },
        { head: "Up to", percent: 12 },
        { head: "Why" },
        { head: "Signed", percent: 16 },
        { head: "Now", percent: 18 },
      ],
      rows,
    ),
  );
}

/** Findings whose value is a plain ratio: a bare bound of theirs has no unit. */
const RATIOS: ReadonlySet<string> = new Set([
  "film-thin",
  "bush-slips-hot",
  "gauge-coarse",
]);

/** The bound as it was written; a bare length with the unit of the job. */
function boundAsWritten(
  { shop, system }: Subject,
  ref: string,
  code: string | undefined,
): string {
  const entry = entryOf(shop, ref);
  const fact = entry === undefined ? undefined : allOf(entry, "UpToFact")[0];
  if (entry === undefined || fact?.value === undefined) return "no bound";
  const body = entry.block.lines[fact.span.line]?.body ?? "";
  const written = body.replace(/^up\s+to\s+/, "");
  const isBareLength =
    fact.value.asLength !== undefined && !RATIOS.has(code ?? "");
  return isBareLength ? `${written} ${UNIT_OF_SYSTEM[system]}` : written;
}
