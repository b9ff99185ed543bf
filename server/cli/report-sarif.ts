// A check as SARIF 2.1.0 (OASIS, errata 01, 2023), for the tools that gather findings of many checkers. Results that are no findings have no
// place in it.
import { inAddress } from "../model/address.ts";
import { pathToFileURL } from "node:url";
import type { Finding, Place } from "../model/result.ts";
import { nameFrom } from "./find-files.ts";
import type { Io, Parts } from "./io.ts";
import { jsonText } from "./json-text.ts";
import { plainText, summaryOf } from "./page.ts";
import {
  inOrder,
  levelOf,
  type CheckedFile,
  type Outcome,
  type Report,
  type ReportPart,
} from "./report.ts";
import { createSpool } from "./spool.ts";
import { version } from "./version.ts";

const SCHEMA =
  "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json";
const ROOT = "%SRCROOT%";

/** What stands after the last result: the end of the list, of the run, of the runs and of the log. */
const END = "\n    }\n  ]\n}";
/** Before each line of a result, which stands four levels down. */
const WITHIN = " ".repeat(8);

/**
 * The standard's order of things is free, but the rules and what could not be read have always stood before the results, and each result has
 * the number of its rule: what is found waits in a spool until all files are checked.
 */
export function sarifReport(io: Io, pages: Parts["pages"]): Report {
  const spool = createSpool();
  const found = new Set<string>();
  return {
    add({ text, codes = [] }) {
      for (const code of codes) found.add(code);
      if (text !== "") for (const line of text.split("\n")) spool.add(line);
    },
    async end(outcome) {
      const { stdout } = io;
      const codes = [...found].sort();
      const whole = jsonText(log(codes, outcome, pages), 2);
      if (codes.length === 0) stdout.write(whole);
      else {
        stdout.write(whole.slice(0, -`]${END}`.length));
        let before = "\n";
        for (const line of spool.lines()) {
          stdout.write(before + withRule(line, codes));
          before = ",\n";
          await stdout.drained();
        }
        stdout.write(`\n      ]${END}`);
      }
      stdout.write("\n");
      await stdout.drained();
    },
  };
}

/** The findings of one file in their order, each a result on a line of its own that has no number of its rule yet. */
export function sarifPart(
  file: CheckedFile,
  cwd: string,
): Pick<ReportPart, "text" | "codes"> {
  const findings = inOrder(file.check.findings);
  return {
    text: findings.map((finding) => jsonText(result(finding, cwd))).join("\n"),
    codes: [...new Set(findings.map(({ code }) => code))],
  };
}

/** A result as it stands in the log. */
function withRule(line: string, codes: readonly string[]): string {
  const { ruleId, ...rest } = JSON.parse(line) as { readonly ruleId: string }; // a line that `result` gave
  return jsonText(
    { ruleId, ruleIndex: codes.indexOf(ruleId), ...rest },
    2,
  ).replace(/^/gmu, WITHIN);
}

/** All but the results. */
function log(
  codes: readonly string[],
  outcome: Outcome,
  pages: Parts["pages"],
): object {
  return {
    $schema: SCHEMA,
    version: "2.1.0",
    runs: [
      {
        tool: {
          driver: {
            name: "thou",
            version,
            semanticVersion: version,
            rules: codes.map((code) => rule(code, pages[code])),
          },
        },
        columnKind: "utf16CodeUnits",
        originalUriBaseIds: {
          [ROOT]: {
            description: { text: "The folder that the check ran in." },
          },
        },
        invocations: [
          {
            executionSuccessful: outcome.problems.length === 0,
            toolExecutionNotifications: outcome.problems.map((problem) => ({
              level: "error",
              message: message(problem),
            })),
          },
        ],
        // the last of the run: `sarifReport` writes what is in it
        results: [],
      },
    ],
  };
}

function rule(code: string, page: string | undefined): object {
  if (page === undefined) return { id: code };
  return {
    id: code,
    shortDescription: { text: braced(summaryOf(page)) },
    help: { text: braced(plainText(page)), markdown: braced(page) },
  };
}

function result(finding: Finding, cwd: string): object {
  return {
    ruleId: finding.code,
    level: sarifLevel(finding),
    message: message(finding.message),
    locations: [
      {
        physicalLocation: physicalLocation(finding.place, cwd),
        ...(finding.entry === null
          ? {}
          : { logicalLocations: [{ fullyQualifiedName: finding.entry }] }),
      },
    ],
    ...(finding.related.length === 0
      ? {}
      : {
          relatedLocations: finding.related.map((related) => ({
            physicalLocation: physicalLocation(related.place, cwd),
            message: message(related.message),
          })),
        }),
    ...(finding.accepted === null
      ? {}
      : {
          suppressions: [
            {
              kind: "inSource",
              status: "accepted",
              justification: `concession ${finding.accepted}`,
            },
          ],
        }),
  };
}

/** Information and hints are both notes: SARIF has no third step below a warning. */
function sarifLevel(finding: Finding): "error" | "warning" | "note" {
  const level = levelOf(finding);
  return level === "error" || level === "warning" ? level : "note";
}

function physicalLocation(
  { file, line, start, end }: Place,
  cwd: string,
): object {
  return {
    artifactLocation: artifactLocation(file, cwd),
    region: {
      startLine: line + 1,
      startColumn: start + 1,
      endLine: line + 1,
      endColumn: end + 1,
    },
  };
}

/** From the working folder where the file lies below it: a path that climbs out of its base is refused by some that read it. */
function artifactLocation(file: string, cwd: string): object {
  const name = nameFrom(cwd, file);
  if (name.startsWith("../") || /^(?:[A-Za-z]:)?\//.test(name))
    return { uri: pathToFileURL(file).href };
  // a file name may hold half a character pair, which has no place in a URI
  const whole = Buffer.from(name).toString();
  return {
    uri: whole.split("/").map(inAddress).join("/"),
    uriBaseId: ROOT,
  };
}

function message(text: string): object {
  // names in a message are whatever someone typed; they are not to become links (3.11.6)
  const linkless = text.includes("](")
    ? text.replace(/[\\[\]]/g, "\\$&")
    : text;
  return { text: braced(linkless) };
}

/** Braces stand for places to fill in, in every message of SARIF, unless they are doubled (3.11.5). */
function braced(text: string): string {
  return text.replace(/[{}]/g, "$&$&");
}
