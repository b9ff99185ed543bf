// An hour meter shows less on a later day than it did before, or two things on one day.
import { allOf, valueIn } from "../../model/entry.ts";
import type { Draft, Rule } from "../rule.ts";

export const hoursBack: Rule = {
  code: "hours-back",
  level: "information",
  about: ["job"],
  check(_, __, entry) {
    const opened = valueIn(entry, "OpenedFact")?.date;
    const shown = allOf(entry, "HoursFact")
      .flatMap(({ value, span }) => {
        const date = value?.date ?? opened;
        return value === undefined || date === undefined
          ? []
          : [{ span, date, meter: value.meter }];
      })
      .sort((a, b) => (a.date < b.date ? -1 : a.date === b.date ? 0 : 1));
    return shown.flatMap((each, index): readonly Draft[] => {
      const before = shown[index - 1];
      if (before === undefined) return [];
      const isTwice = before.date === each.date && before.meter !== each.meter;
      if (!isTwice && before.meter <= each.meter) return [];
      const [now, then] = [hours(each.meter), hours(before.meter)];
      return [
        {
          span: each.span,
          message: isTwice
            ? `The hour meter shows ${now} and ${then} on one day, ${each.date}: neither counts in a trend against hours. Keep the one that it showed.`
            : `The hour meter shows ${now} on ${each.date}, less than ${then} on ${before.date}: correct the one that is wrong. If it is another meter, or one set anew, wear against hours begins anew here.`,
          related: [
            { span: before.span, message: `${then} on ${before.date}` },
          ],
        },
      ];
    });
  },
};

function hours(meter: number): string {
  return `${String(meter / 3600)} h`;
}
