// A ring without a wall: a boss that is no larger than its hole, a bush that is no larger outside than inside. One of the two is a slip, and
// nothing of the press can be worked out from them.
import { metresToTenths } from "../../core/quantity/exact.ts";
import { showLength, showRange } from "../../core/quantity/show.ts";
import { given, type Entry } from "../../model/entry.ts";
import { settings } from "../../model/evaluate/settings.ts";
import { sizeOf } from "../../model/evaluate/size.ts";
import type { Shop } from "../../model/shop.ts";
import type { Draft, Rule } from "../rule.ts";

export const wallMissing: Rule = {
  code: "wall-missing",
  level: "error",
  about: ["hole", "bush"],
  check(shop, ref, entry) {
    return entry.kind === "hole"
      ? bossOf(shop, ref, entry)
      : bushOf(shop, ref, entry);
  },
};

function bossOf(shop: Shop, ref: string, entry: Entry): readonly Draft[] {
  const boss = given(entry, "BossFact");
  const size = sizeOf(shop, ref);
  if (
    boss.state !== "given" ||
    !size.known ||
    metresToTenths(size.value.low) < metresToTenths(boss.value.value)
  )
    return [];
  const { system } = settings(shop);
  const { low, high, step } = size.value;
  return [
    {
      span: boss.span,
      message: `The boss, ${showLength(boss.value.value, system, boss.value.step)}, leaves no wall round ${ref}, ${showRange(low, high, system, step)}: \`boss\` is the outside diameter of the metal round the hole. Write that.`,
      related: [{ ref, message: ref }],
    },
  ];
}

function bushOf(shop: Shop, ref: string, entry: Entry): readonly Draft[] {
  const od = given(entry, "OdFact");
  const id = given(entry, "IdFact");
  if (
    od.state !== "given" ||
    id.state !== "given" ||
    metresToTenths(id.value.high) < metresToTenths(od.value.low)
  )
    return [];
  const { system } = settings(shop);
  const shown = ({ low, high, step }: typeof od.value): string =>
    showRange(low, high, system, step);
  return [
    {
      span: id.span,
      message: `Between the inside, ${shown(id.value)}, and the outside, ${shown(od.value)}, is no wall: one of the two is not what the bush has. \`od\` is its outside diameter, \`id\` its inside one.`,
      related: [{ ref, span: od.span, message: `outside of ${ref}` }],
    },
  ];
}
