// The forms of report by their names, in two halves: what is made of one file, in whatever thread it is checked, and what the whole run
// writes of those parts.
import { columnsOf, hasColours, type Context } from "./io.ts";
import { jsonPart, jsonReport } from "./report-json.ts";
import { sarifPart, sarifReport } from "./report-sarif.ts";
import { textPart, textReport, type TextForm } from "./report-text.ts";
import {
  countOf,
  type CheckedFile,
  type Report,
  type ReportPart,
} from "./report.ts";

export const FORMATS = ["text", "json", "sarif"] as const;
export type Format = (typeof FORMATS)[number];

/** All that the part of a file depends on but the file: plain, so that a thread can be told. */
export interface ReportForm extends TextForm {
  readonly format: Format;
}

export function formOf(
  format: Format,
  isBrief: boolean,
  { io }: Context,
): ReportForm {
  return {
    format,
    isBrief,
    cwd: io.cwd,
    columns: columnsOf(io.stdout),
    hasColours: hasColours(io.stdout, io.env),
  };
}

/** What the report takes of one file. */
export function partOf(file: CheckedFile, form: ReportForm): ReportPart {
  const count = countOf(file.check);
  switch (form.format) {
    case "text":
      return { count, ...textPart(file, form) };
    case "json":
      return { count, text: jsonPart(file) };
    case "sarif":
      return { count, ...sarifPart(file, form.cwd) };
  }
}

export function reportFor(form: ReportForm, { io, parts }: Context): Report {
  switch (form.format) {
    case "text":
      return textReport(io, form);
    case "json":
      return jsonReport(io.stdout);
    case "sarif":
      return sarifReport(io, parts.pages);
  }
}
