// What stands over the columns of a fit's chart: what each is, and how it is known.
import type { FitZones, Side } from "./fit-zones.ts";
import type { Ink } from "./ink.ts";
import { lettering, SMALL, wrapped, type Box } from "./shapes.ts";
import { together, type Markup } from "./svg.ts";
import { sureness } from "./words.ts";

/** The lines over a column: what it is, and how it is known. */
interface Heading {
  readonly name: readonly string[];
  readonly words: readonly string[];
}

const HEAD_LEADING = 13;
const MOST_NAME = 6;
const MOST_WORDS = 4;

function headingOf(name: string, words: string, width: number): Heading {
  const room = width + 6;
  return {
    // bold letters are a little wider
    name: first(wrapped(name, room / 1.05), MOST_NAME),
    words: words === "" ? [] : first(wrapped(words, room, SMALL), MOST_WORDS),
  };
}

/** With a sign where there are more. */
function first(lines: readonly string[], most: number): readonly string[] {
  return lines.length <= most
    ? lines
    : [...lines.slice(0, most - 1), `${lines[most - 1] ?? ""}…`];
}

/** The room that the headings of a chart take whose columns are so wide. */
export function headHeight({ journal, bore }: FitZones, width: number): number {
  const heads = [
    sideHeading(journal, "journal", width),
    wantedHeading(width, true),
    sideHeading(bore, "bore", width),
  ];
  const most = Math.max(
    ...heads.map(({ name, words }) => name.length + words.length),
  );
  return most * HEAD_LEADING + 22;
}

const WANTED = "bore wanted";
const BY_CLEARANCE = "by the clearance";

/** Over the bore sizes that are wanted, where there are any and where there are none. */
export function wantedHeading(width: number, isKnown: boolean): Heading {
  return headingOf(WANTED, isKnown ? BY_CLEARANCE : "", width);
}

export function sideHeading(
  { ref, size }: Side,
  kind: "journal" | "bore",
  width: number,
): Heading {
  return headingOf(
    ref ?? kind,
    size?.known === true ? sureness(size.value) : "",
    width,
  );
}

export function headingAbove(
  { x, width }: Box,
  { name, words }: Heading,
  ink: Ink,
): Markup {
  const middle = x + width / 2;
  const top = HEAD_LEADING + 4;
  return together(
    lettering(
      middle,
      top,
      name,
      { fill: ink.text, bold: true, anchor: "middle" },
      HEAD_LEADING,
    ),
    lettering(
      middle,
      top + name.length * HEAD_LEADING,
      words,
      { fill: ink.text, size: SMALL, anchor: "middle" },
      HEAD_LEADING,
    ),
  );
}
