// To drop the bush in, the case would have to be heated past what it bears.
import {
  caseTemperatureToDropIn,
  temperaturesToDropIn,
} from "../../core/press/drop-in.ts";
import { showForces } from "../../core/quantity/show-force.ts";
import { showTemperature } from "../../core/quantity/show.ts";
import { materialOf } from "../../model/evaluate/material.ts";
import { dropInOf, isPressedCold } from "../../model/evaluate/press-heat.ts";
import { forceOf } from "../../model/evaluate/press-pressure.ts";
import { interferenceOf, partsOf } from "../../model/evaluate/press.ts";
import { settings } from "../../model/evaluate/settings.ts";
import { nameOf } from "../../model/reference.ts";
import type { Shop } from "../../model/shop.ts";
import type { Rule } from "../rule.ts";
import { ownTemperature } from "../threshold.ts";

export const heatOver: Rule = {
  code: "heat-over",
  level: "error",
  about: ["press"],
  check(shop, ref, entry) {
    const parts = partsOf(shop, ref);
    const found = interferenceOf(shop, ref);
    const most = dropInOf(shop, ref);
    if (parts === undefined || !found.known || !most.known) return [];
    const housing = materialOf(shop, parts.part);
    if (!housing.known || isPressedCold(shop, ref)) return [];
    const limit =
      ownTemperature(shop, "heat-over") ?? housing.value.caseHeat?.value;
    if (limit === undefined) return [];
    const { od, hole, status } = found.value;
    // a bush that is known by its limits only counts where even its smallest needs too much
    const sizes =
      status === "measured"
        ? most.value
        : { ...most.value, od: od.low, hole: hole.high };
    const needed = caseTemperatureToDropIn(sizes);
    if (needed.valid && needed.value <= limit) return [];
    const { system } = settings(shop);
    const at = needed.valid
      ? `at ${showTemperature(needed.value, system)}`
      : "hotter than any press fit is made";
    const both = temperaturesToDropIn(most.value, limit);
    const freeze = both.valid
      ? `heat the case to no more than ${showTemperature(both.value.case, system)} and freeze the bush below ${showTemperature(both.value.bush, system)}, or `
      : "";
    return [
      {
        span: entry.nameSpan,
        message: `To drop the bush in by heat alone, ${parts.part} would have to be ${at}, and ${showTemperature(limit, system)} is the most for ${nameOf(housing.value.ref)} without its maker's word: past that it may lose its temper or warp. Don't heat it that far: ${freeze}press it in${byForce(shop, ref)}.`,
        related: [{ ref: parts.part, message: parts.part }],
      },
    ];
  },
};

function byForce(shop: Shop, press: string): string {
  const force = forceOf(shop, press);
  if (!force.known) return "";
  const { system } = settings(shop);
  return ` with up to ${showForces(force.value.high, force.value.high, system)}`;
}
