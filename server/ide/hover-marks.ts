// What the small marks of a line mean: days, counts, members of a stack, who has signed. Quantities, names of entries and words have their
// own files.
import type { Node } from "../../grammar/tree.ts";
import { showCount, showRange } from "../core/quantity/show.ts";
import { dateOf } from "../model/dates.ts";
import { settings } from "../model/evaluate/settings.ts";
import { membersOf } from "../model/evaluate/stack.ts";
import type { OpenFile } from "../model/project.ts";
import type { FactValues } from "../model/values.ts";
import { code, escaped } from "../markup/markdown.ts";
import { factAt, ruleOf, type Spot } from "./position.ts";

/** A day in words; over a gauge's due date also how far it is from the job's. */
export function dayHover(
  { shop }: OpenFile,
  spot: Spot,
  text: string,
): string | undefined {
  const day = dateOf(text);
  if (day === undefined) return undefined;
  const words = `**${day}**: ${dayInWords(day)}`;
  const { opened } = settings(shop);
  if (spot.line.word !== "due" || opened === undefined) return words;
  const days = Math.round((Date.parse(day) - Date.parse(opened)) / DAY);
  const away = showCount(Math.abs(days), "day");
  const far =
    days === 0 ? "on the day" : `${away} ${0 < days ? "after" : "before"}`;
  return `${words}, ${far} the job was opened (${opened})`;
}

const DAY = 86_400_000; // milliseconds

const WEEKDAYS = [
  "Sunday",
  "Monday",
  "Tuesday",
  "Wednesday",
  "Thursday",
  "Friday",
  "Saturday",
];
const MONTHS = [
  "January",
  "February",
  "March",
  "April",
  "May",
  "June",
  "July",
  "August",
  "September",
  "October",
  "November",
  "December",
];

/** "Thursday 5 November 2026", of a day that exists. */
function dayInWords(day: string): string {
  const date = new Date(`${day}T00:00:00Z`);
  return `${WEEKDAYS[date.getUTCDay()] ?? ""} ${String(date.getUTCDate())} ${MONTHS[date.getUTCMonth()] ?? ""} ${String(date.getUTCFullYear())}`;
}

const LOBES = [
  "lobe",
  "lobes: so often the pointer rises in one turn",
] as const;

/** What is counted, by the rule of the line. */
const COUNTED: Readonly<Record<string, readonly [string, string]>> = {
  FlutesFact: ["flute", "flutes"],
  DowelsFact: ["dowel", "dowels"],
  SwingFact: LOBES,
  BoreSwingFact: LOBES,
};

export function countHover(
  open: OpenFile,
  spot: Spot,
  text: string,
): string | undefined {
  const rule = ruleOf(spot) ?? "";
  const words = COUNTED[rule];
  if (words !== undefined)
    return `**${text}** ${words[Number(text) === 1 ? 0 : 1]}`;
  if (rule === "GradeFact")
    return `**ISO VG ${text}**: ${text} cSt at 40 °C, a tenth more or less (ISO 3448)`;
  return rule === "SizeFact" ? sizeHover(open, spot) : undefined;
}

/** A size that is a number or a letter, as a length. */
export function sizeHover({ shop }: OpenFile, spot: Spot): string | undefined {
  const fact = factAt(spot);
  if (fact?.rule !== "SizeFact" || fact.value === undefined) return undefined;
  const { range, named } = fact.value as FactValues["SizeFact"]; // the rule says so
  const { system } = settings(shop);
  return named === undefined
    ? undefined
    : `**${escaped(named)}**: ${showRange(range.low, range.high, system, range.step)}`;
}

/** A member of a stack: its length, and whether that was measured. */
export function memberHover(
  { shop }: OpenFile,
  { entry }: Spot,
  name: string,
): string | undefined {
  if (entry.ref === "") return undefined;
  const members = membersOf(shop, entry.ref);
  const found = members.known
    ? members.value.find((each) => each.name === name)
    : undefined;
  if (found === undefined) return undefined;
  const { low, high } = found.length;
  const { system } = settings(shop);
  const of = found.part === undefined ? "" : ` of ${escaped(found.part)}`;
  return `**${escaped(name)}**${of}: ${code(showRange(low, high, system, found.step))} ${found.isRead ? "measured" : "from its limits"}; it ${found.sign === 1 ? "adds to" : "takes from"} the float`;
}

/** Who has signed. Nothing is known of a person but what stands here. */
export function whoHover(
  path: readonly Node[],
  text: string,
): string | undefined {
  const at = path.findIndex(({ type }) => type === "who");
  const isOf = path.slice(0, at).some(({ type }) => type === "By");
  return at === -1 || !isOf ? undefined : `Signed by **${escaped(text)}**`;
}

/** What a text in quotes is, where a look at it does not say. */
const TEXTS: Readonly<Record<string, string>> = {
  Source: "Where the figure comes from.",
};

export function textHover(path: readonly Node[]): string | undefined {
  const holder = path.find(({ type }) => Object.hasOwn(TEXTS, type));
  return holder === undefined ? undefined : TEXTS[holder.type];
}
