// A gauge's calibration had run out on the day it was used: the reading's date, else the job's; never today's.
import { gaugeValue } from "../../model/evaluate/gauge.ts";
import { settings } from "../../model/evaluate/settings.ts";
import { allOf } from "../../model/entry.ts";
import { refOf } from "../../model/shop.ts";
import type { Rule } from "../rule.ts";

export const gaugeOverdue: Rule = {
  code: "gauge-overdue",
  level: "warning",
  about: ["journal", "hole", "bore", "bush", "stack", "reamer", "pilot"],
  check(shop, _, entry) {
    const { opened } = settings(shop, "job");
    const facts = [
      ...allOf(entry, "ReadFact"),
      ...allOf(entry, "RepeatFact"),
      ...allOf(entry, "BushReadFact"),
      ...allOf(entry, "StackReadFact"),
    ];
    return facts.flatMap(({ value }) => {
      const gaugeRef = refOf(shop, value?.gauge);
      const due =
        gaugeRef === undefined ? undefined : gaugeValue(shop, gaugeRef)?.due;
      const used = value?.signature.date ?? opened;
      if (
        value?.gauge === undefined ||
        gaugeRef === undefined ||
        due === undefined ||
        used === undefined ||
        used <= due
      )
        return [];
      const day =
        value.signature.date === undefined
          ? `the job was opened on ${used}`
          : `it was used on ${used}`;
      return [
        {
          span: value.gauge.span,
          message: `The calibration of ${gaugeRef} ran out on ${due}, and ${day}: have it calibrated, or read again with another.`,
          related: [{ ref: gaugeRef, message: `due ${due}` }],
        },
      ];
    });
  },
};
