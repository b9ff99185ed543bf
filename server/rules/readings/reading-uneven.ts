// The values of one reading stop at different digits, though a gauge shows all of them with as many: a zero was left off at the end, or a digit.
import type { Entry } from "../../model/entry.ts";
import type { Span } from "../../model/values.ts";
import type { Draft, Rule } from "../rule.ts";
import { readingsIn } from "./readings-in.ts";

export const readingUneven: Rule = {
  code: "reading-uneven",
  level: "information",
  about: ["journal", "hole", "bore", "bush", "stack", "reamer", "pilot"],
  check(_, __, entry) {
    return readingsIn(entry).flatMap(({ values, valueSpans }) =>
      // spares a look: these stop at the same digit
      values.every(({ step }) => step === values[0]?.step)
        ? []
        : draftsOf(
            valueSpans.map((span) => ({ span, text: textAt(entry, span) })),
          ),
    );
  },
};

interface Value {
  readonly span: Span;
  readonly text: string;
}

function draftsOf(values: readonly Value[]): readonly Draft[] {
  const most = Math.max(0, ...values.map(decimalsOf));
  const short = values.filter((value) => decimalsOf(value) < most);
  const [first] = short;
  const last = short.at(-1);
  if (first === undefined || last === undefined || isHalfSteps(values, most))
    return [];
  const said = values.map(({ text }) => `\`${text}\``).join(", ");
  return [
    {
      span: { ...first.span, end: last.span.end },
      message: `These values of one reading stop at different digits: ${said}. A gauge shows all of them with as many: write the zeros that it showed, or read again.`,
      fixes: [
        {
          title: `Write ${String(most)} decimals, where it showed zeros`,
          safe: false,
          edits: short.map((value) => ({
            span: value.span,
            text: withDecimals(value.text, most),
          })),
        },
      ],
    },
  ];
}

/** Half a step that was read by eye between two marks, `0.8740 0.87435`, is written with a 5 more. */
function isHalfSteps(values: readonly Value[], most: number): boolean {
  return values.every(
    (value) =>
      decimalsOf(value) === most - 1 ||
      (decimalsOf(value) === most && value.text.endsWith("5")),
  );
}

function decimalsOf({ text }: Value): number {
  return text.split(".")[1]?.length ?? 0;
}

function withDecimals(text: string, decimals: number): string {
  const [whole = "", digits = ""] = text.split(".");
  return `${whole}.${digits.padEnd(decimals, "0")}`;
}

function textAt({ block }: Entry, { line, start, end }: Span): string {
  const { indent = 0, body = "" } = block.lines[line] ?? {};
  return body.slice(start - indent, end - indent);
}
