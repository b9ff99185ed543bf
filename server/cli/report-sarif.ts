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
} from "./report.ts";
import { version } from "./version.ts";

const SCHEMA =
  "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json";
const ROOT = "%SRCROOT%";

export function sarifReport(io: Io, pages: Parts["pages"]): Report {
  const findings: Finding[] = [];
  return {
    add(part) {
      findings.push(...(part.findings ?? []));
    },
    end(outcome) {
      io.stdout.write(
        `${jsonText(log(findings, outcome, pages, io.cwd), 2)}\n`,
      );
    },
  };
}

/** The findings of one file in their order: cures have no place in the log. */
export function sarifPart(file: CheckedFile): readonly Finding[] {
  return inOrder(file.check.findings).map((finding) => ({
    ...finding,
    fixes: [],
  }));
}

function log(
  findings: readonly Finding[],
  outcome: Outcome,
  pages: Parts["pages"],
  cwd: string,
): object {
  const codes = [...new Set(findings.map((finding) => finding.code))].sort();
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
        results: findings.map((finding) =>
          result(finding, codes.indexOf(finding.code), cwd),
        ),
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

function result(finding: Finding, ruleIndex: number, cwd: string): object {
  return {
    ruleId: finding.code,
    ruleIndex,
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
