// A date that does not exist, that can't be beside another, or that is not written as ISO 8601 has it, year-month-day. Where it can mean one day only, that day is offered; where
// it can mean two, both are.
import { dateOf } from "../../model/dates.ts";
import type { TextRule } from "../rule.ts";
import { capitalised } from "../../model/sentences.ts";

export const dateWrong: TextRule = {
  code: "date-wrong",
  level: "error",
  draft({ span, data }) {
    if (typeof data.message === "string") return { message: data.message };
    const written = String(data.date);
    const { dates, sure, why } = readDate(written);
    return {
      message:
        dates.length === 0
          ? `\`${written}\` ${why}: write the day that was meant, year-month-day.`
          : `\`${written}\` ${why}: write ${dates.join(" or ")}.`,
      fixes: dates.map((date) => ({
        title: `Write ${date}`,
        safe: sure && dates.length === 1,
        edits: [{ span, text: date }],
      })),
    };
  },
};

interface DateRead {
  readonly dates: readonly string[];
  /** It can mean no other day. */
  readonly sure: boolean;
  /** A sentence part that begins after the date. */
  readonly why: string;
}

const FORM = "is not written year-month-day";
const MONTHS = [
  "january",
  "february",
  "march",
  "april",
  "may",
  "june",
  "july",
  "august",
  "september",
  "october",
  "november",
  "december",
];

/** What a date as people write it can mean. */
export function readDate(written: string): DateRead {
  if (/^[a-z]+$/i.test(written))
    return {
      dates: [],
      sure: false,
      why: "is no date, since a record is read on other days",
    };
  const withHour = /^(\S+)T[\d:.]+\p{L}*$/u.exec(written)?.[1];
  if (withHour !== undefined) {
    const day = readDate(withHour);
    return dateOf(withHour) === undefined
      ? day
      : {
          dates: [withHour],
          sure: true,
          why: "has an hour, and a day is enough",
        };
  }
  return inWords(written) ?? inDigits(written);
}

/** `2 Nov 2026`, `November 2nd, 2026` */
function inWords(written: string): DateRead | undefined {
  const word = /\p{L}{3,}/u.exec(written)?.[0].toLowerCase();
  if (word === undefined) return undefined;
  const month = MONTHS.findIndex((each) => each.startsWith(word.slice(0, 3)));
  const [one = "", two = ""] = written.match(/\d+/g) ?? [];
  const [day, year] = one.length === 4 ? [two, one] : [one, two];
  const date = iso(year, String(month + 1), day);
  return date === undefined
    ? noSuchDay(written)
    : { dates: [date], sure: year.length === 4, why: FORM };
}

function inDigits(written: string): DateRead {
  const whole = /^(\d{4})(\d{2})(\d{2})$/.exec(written);
  const parts = whole?.slice(1) ?? written.split(/[-/.]/u);
  const [one = "", two = "", three = ""] = parts;
  if (one.length === 4) {
    const date = iso(one, two, three);
    if (date !== undefined) return { dates: [date], sure: true, why: FORM };
    const turned = iso(one, three, two);
    const { why } = noSuchDay(`${one}-${two}-${three}`);
    return turned === undefined
      ? { dates: [], sure: false, why }
      : { dates: [turned], sure: false, why: "has its month after its day" };
  }
  const isFull = three.length === 4;
  const dayFirst = iso(three, two, one);
  // points part the day from the month in every country that writes them
  const monthFirst = written.includes(".") ? undefined : iso(three, one, two);
  const yearFirst = isFull ? undefined : iso(one, two, three);
  const dates = [
    ...new Set(
      [yearFirst, dayFirst, monthFirst].filter((each) => each !== undefined),
    ),
  ];
  if (dates.length === 0) return noSuchDay(written);
  return {
    dates,
    sure: dates.length === 1 && isFull && !written.includes("."),
    why: dates.length === 1 ? FORM : "can be read in more ways than one",
  };
}

/** The day as ISO 8601 writes it; undefined where it does not exist. A year of two digits is of this century. */
function iso(year: string, month: string, day: string): string | undefined {
  const full = year.length === 2 ? `20${year}` : year;
  return dateOf(`${full}-${month.padStart(2, "0")}-${day.padStart(2, "0")}`);
}

function noSuchDay(written: string): DateRead {
  const [year = "", month = "", day = ""] = written.split("-");
  const name = MONTHS[Number(month) - 1];
  const none = (why: string): DateRead => ({ dates: [], sure: false, why });
  if (year.length !== 4 || day === "") return none("is no day that there is");
  if (name === undefined)
    return none(`is no date, since a year has 12 months and this is ${month}`);
  const last = new Date(Date.UTC(2000, Number(month), 0));
  last.setUTCFullYear(Number(year), Number(month), 0);
  return none(
    `is no date, since ${capitalised(name)} ${year} has ${last.getUTCDate()} days`,
  );
}
