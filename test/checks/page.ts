// The page docs/checks.md: what each kind of result was held against, and how closely it agrees. Written by checks.test.ts.
import { RESULT_KINDS } from "../../server/model/result-kinds.ts";
import { allowed, difference, type Check } from "./check.ts";

/** Differences under this are the noise of doubles, and differ from machine to machine. */
const NOISE = 1e-12;

export function checksPage(all: readonly Check[]): string {
  const sections = Object.entries(RESULT_KINDS).map(([kind, means]) => {
    const checks = all.filter((check) => check.kinds.includes(kind));
    return [`## ${kind}`, "", `${capital(means)}.`, "", ...table(checks)].join(
      "\n",
    );
  });
  const rest = all.filter((check) => check.kinds.length === 0);
  return `# What the figures were checked against

<!-- Made from test/checks by npm test -- -u: do not edit. -->

Every kind of result, with the published values it was held against (their text was seen) or the independent computation (no shared code, no shared constants), how many
values were compared, and the largest difference. What is remembered counts for no check. Each row is run by the tests; a difference under 1e-12 counts as none.

${sections.join("\n\n")}

## What the results rest on

Tables and functions that belong to no one kind: limits of size and classes, materials and oils.

${table(rest).join("\n")}
`;
}

function table(checks: readonly Check[]): readonly string[] {
  if (checks.length === 0) return ["Not checked against the outside yet."];
  const groups = new Map<string, Check[]>();
  for (const check of checks) {
    const key = [
      check.method,
      check.against,
      check.source,
      check.because,
      check.unit,
      "relative" in check.within,
    ].join("\n");
    groups.set(key, [...(groups.get(key) ?? []), check]);
  }
  return [
    "| how it is computed | against | source | values | largest difference | allowed |",
    "|---|---|---|---|---|---|",
    ...[...groups.values()].map(row),
  ];
}

function row(checks: readonly Check[]): string {
  const [first] = checks;
  if (first === undefined) return "";
  const isRelative = "relative" in first.within;
  const unit = isRelative || first.unit === "1" ? "" : ` ${first.unit}`;
  const cells = [
    first.method,
    first.against,
    first.because === undefined
      ? first.source
      : `${first.source}. Allowed more: ${first.because}`,
    String(checks.reduce((sum, { points = 1 }) => sum + points, 0)),
    shown(Math.max(...checks.map(difference)), isRelative) + unit,
    shown(Math.max(...checks.map(allowed)), isRelative) + unit,
  ];
  return `| ${cells.map((cell) => cell.replaceAll("|", "\\|").replaceAll("\n", " ")).join(" | ")} |`;
}

/** Two digits at most: more would say what is not known, and would not be the same on every machine. */
function shown(value: number, isRelative: boolean): string {
  if (value <= NOISE) return "none";
  const scaled = isRelative ? value * 100 : value;
  const text = String(Number(scaled.toPrecision(2)));
  return isRelative ? `${text} %` : text;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
