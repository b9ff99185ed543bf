// A comma in a number: a decimal point in half the world, thousands in the other, and with no blank after it not the comma of a list. Only
// whoever wrote it knows.
import type { Entry } from "../../model/entry.ts";
import type { FactRule, Span } from "../../model/values.ts";
import type { DraftFix, TextRule } from "../rule.ts";

export const numberComma: TextRule = {
  code: "number-comma",
  level: "error",
  draft({ span, data }, entry) {
    const written = String(data.number);
    const ways = waysToRead(written, placeOf(entry, span));
    const [only, other] = ways;
    const fixes = ways.map((way): DraftFix => ({
      title: `${way.title}: ${way.text}`,
      safe: other === undefined,
      edits: [{ span, text: way.text }],
    }));
    if (only === undefined)
      return {
        message: `\`${written}\` is no one number: a number takes a point and no comma.`,
      };
    if (other !== undefined)
      return {
        message: `\`${written}\` can be read in more ways than one: write ${ways.map((way) => way.text).join(" or ")}.`,
        fixes,
      };
    return { message: `${only.rule}: write ${only.text}.`, fixes };
  },
};

/** What a comma without a blank may stand for besides a point. */
type Place = "list" | "reading" | "range" | "number";

const PLACES: Readonly<Partial<Record<FactRule, Place>>> = {
  ShimsFact: "list",
  LineBoreFact: "list",
  ReadFact: "reading",
  RepeatFact: "reading",
  BushReadFact: "reading",
  StackReadFact: "reading",
  LimitsFact: "range",
  ServiceLimitFact: "range",
  OdFact: "range",
  IdFact: "range",
  WantFact: "range",
  WantHotFact: "range",
};

function placeOf(entry: Entry, { line }: Span): Place {
  const fact = entry.facts.find((each) => each.span.line === line);
  return (fact === undefined ? undefined : PLACES[fact.rule]) ?? "number";
}

interface Way {
  readonly title: string;
  readonly text: string;
  readonly rule: string;
}

function waysToRead(written: string, place: Place): readonly Way[] {
  const parts = written.split(",");
  const ways: Way[] = [];
  const isPlain = /^[+\u{2212}-]?\d+,\d+$/u.test(written);
  if (isPlain)
    ways.push({
      title: "Write a point",
      text: parts.join("."),
      rule: "A number takes a point, not a comma",
    });
  // groups of three, and none before them is 0
  if (/^[+\u{2212}-]?[1-9]\d{0,2}(?:,\d{3})+(?:\.\d+)?$/u.test(written))
    ways.push({
      title: "Take the comma out",
      text: parts.join(""),
      rule: "Thousands are not parted",
    });
  if (/^[+\u{2212}-]?[1-9]\d{0,2}\.\d{3},\d+$/u.test(written))
    ways.push({
      title: "Write a point",
      text: written.replaceAll(".", "").replace(",", "."),
      rule: "A number takes one point, and thousands are not parted",
    });
  const isList = place === "list" || (!isPlain && place !== "number");
  if (
    isList &&
    parts.every((part) => /^[+\u{2212}-]?\d+(?:\.\d+)?$/u.test(part))
  )
    ways.push(...asList(parts, place));
  return ways;
}

/** Several numbers: a blank after the comma of a list, a blank for it in a reading, `to` in a range. */
function asList(parts: readonly string[], place: Place): readonly Way[] {
  // readings and sizes are near each other; with no point in either part it is one number
  if (place !== "list" && !parts.every((part) => part.includes("."))) return [];
  if (place === "range")
    return parts.length === 2
      ? [
          {
            title: "Write a range",
            text: parts.join(" to "),
            rule: "A range is written with `to`",
          },
        ]
      : [];
  return place === "list"
    ? [
        {
          title: "Put a blank after the comma",
          text: parts.join(", "),
          rule: "A blank follows the comma of a list",
        },
      ]
    : [
        {
          title: "Put blanks between the values",
          text: parts.join(" "),
          rule: "Values of a reading are parted by blanks",
        },
      ];
}
