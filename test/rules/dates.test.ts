// Days as people write them, and what each can mean.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readDate } from "../../server/rules/text/date-wrong.ts";

describe("dates", () => {
  test.each([
    ["2026/11/02", ["2026-11-02"], true],
    ["2026-1-5", ["2026-01-05"], true],
    ["20261102", ["2026-11-02"], true],
    ["2 Nov 2026", ["2026-11-02"], true],
    ["November 2nd, 2026", ["2026-11-02"], true],
    ["2026-11-02T10:30", ["2026-11-02"], true],
    ["13/2/2026", ["2026-02-13"], true],
    ["2.11.2026", ["2026-11-02"], false],
    ["11/2/2026", ["2026-02-11", "2026-11-02"], false],
    ["2026-13-05", ["2026-05-13"], false],
    ["2026-13-45", [], false],
    ["2026-02-30", [], false],
    ["2025-02-29", [], false],
    ["today", [], false],
  ])("%s", (written, dates, sure) => {
    const read = readDate(written);
    expect(read.dates).toEqual(dates);
    if (0 < dates.length) expect(read.sure).toBe(sure);
  });

  test("every day that there is is found in each way of writing it, and no day that there is not is offered", () => {
    const day = fc.date({
      min: new Date("1990-01-01"),
      max: new Date("2099-12-31"),
      noInvalidDate: true,
    });
    fc.assert(
      fc.property(day, (date) => {
        const iso = date.toISOString().slice(0, 10);
        const [year = "", month = "", last = ""] = iso.split("-");
        const [m, d] = [Number(month), Number(last)];
        const inWords = new Intl.DateTimeFormat("en-GB", {
          dateStyle: "long",
          timeZone: "UTC",
        }).format(date);
        for (const written of [
          `${year}/${m}/${d}`,
          `${d}.${m}.${year}`,
          `${d}/${m}/${year}`,
          `${m}/${d}/${year}`,
          inWords,
        ]) {
          const { dates } = readDate(written);
          expect(dates).toContain(iso);
          for (const each of dates)
            expect(new Date(each).toISOString().slice(0, 10)).toBe(each);
        }
      }),
    );
  });
});
