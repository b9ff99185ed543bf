// A check as JSON: the contract of docs/language.md, key by key and in its order. A change here needs a new `schema`.
import type { Finding, Result } from "../model/result.ts";
import type { Output } from "./io.ts";
import { jsonText } from "./json-text.ts";
import { inOrder, levelOf, type CheckedFile, type Report } from "./report.ts";

const SCHEMA = 1;

/** Files are written as they come, so that an archive of any size needs no more memory than its largest file. */
export function jsonReport(out: Output): Report {
  let files = 0;
  return {
    add({ text }) {
      out.write(files === 0 ? `{"schema":${SCHEMA},"files":[\n` : ",\n");
      out.write(text);
      files++;
    },
    async end({ summary }) {
      if (files === 0) out.write(`{"schema":${SCHEMA},"files":[`);
      out.write(`\n],"summary":${jsonText(summary)}}\n`);
      await out.drained();
    },
  };
}

/** One file, on one line. */
export function jsonPart(file: CheckedFile): string {
  return jsonText({
    file: file.name,
    findings: inOrder(file.check.findings).map(findingAsJson),
    results: file.check.results.map(resultAsJson),
  });
}

function findingAsJson(finding: Finding): object {
  const { line, start, end } = finding.place;
  return {
    code: finding.code,
    level: levelOf(finding),
    line: line + 1,
    column: start + 1,
    endLine: line + 1,
    endColumn: end + 1,
    message: finding.message,
    entry: finding.entry,
    accepted: finding.accepted !== null,
  };
}

function resultAsJson(result: Result): object {
  return {
    entry: result.entry,
    kind: result.kind,
    of: result.of,
    case: result.case,
    low: plain(result.low),
    nominal: plain(result.nominal),
    high: plain(result.high),
    unit: result.unit,
    status: result.status,
    verdict: result.verdict,
    text: result.text,
    working: result.working.map(({ formula, with: numbers, source }) => ({
      formula,
      with: numbers,
      source,
    })),
    needs: result.needs.map(({ ref, fact, text }) => ({ ref, fact, text })),
  };
}

/** Never -0. */
function plain(value: number | null): number | null {
  return value === null ? null : value + 0;
}
