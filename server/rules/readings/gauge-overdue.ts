// A gauge's calibration had run out on the day it was used: the reading's date, else the job's; never today's.
import { gaugeValue } from "../../model/evaluate/gauge.ts";
import { settings } from "../../model/evaluate/settings.ts";
import { refOf } from "../../model/shop.ts";
import type { Draft, Rule } from "../rule.ts";
import { readingsIn, swingsIn } from "./readings-in.ts";

export const gaugeOverdue: Rule = {
  code: "gauge-overdue",
  level: "warning",
  about: ["journal", "hole", "bore", "bush", "stack", "reamer", "pilot"],
  check(shop, _, entry) {
    const { opened } = settings(shop);
    const drafts = [...readingsIn(entry), ...swingsIn(entry)].flatMap(
      ({ gauge, signature }): readonly Draft[] => {
        const ref = refOf(shop, gauge);
        const due = ref === undefined ? undefined : gaugeValue(shop, ref)?.due;
        const used = signature.date ?? opened;
        if (
          gauge === undefined ||
          ref === undefined ||
          due === undefined ||
          used === undefined ||
          used <= due
        )
          return [];
        const day =
          signature.date === undefined
            ? `the job was opened on ${used}`
            : `it was used on ${used}`;
        return [
          {
            span: gauge.span,
            message: `The calibration of ${ref} ran out on ${due}, and ${day}: have it calibrated, or read again with another.`,
            related: [{ ref, message: `due ${due}` }],
          },
        ];
      },
    );
    // said once an entry of each gauge and day
    return drafts.filter(
      ({ message }, index) =>
        drafts.findIndex((other) => other.message === message) === index,
    );
  },
};
