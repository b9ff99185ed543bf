// What a reamer of the crib is, and what it will cut in a bore. Which one to take is window.ts's.
import { valid, type Answer } from "../../core/answer.ts";
import { parseClass } from "../../core/fits/class-words.ts";
import {
  cutSize,
  type CutHeat,
  type CutSize,
  type Oversize,
  type ToolSize,
} from "../../core/line/cut-size.ts";
import type { CutConditions } from "../../core/line/reamer-ranking.ts";
import { reamerLimits } from "../../core/line/reamer-limits.ts";
import { toolExpansion } from "../../core/line/tool-materials.ts";
import { allOf, given, valueIn } from "../entry.ts";
import {
  known,
  need,
  outside,
  readingOf,
  SILENT,
  unknown,
  type Known,
} from "../known.ts";
import { entryOf, query, type Shop } from "../shop.ts";
import { finest } from "../ranges.ts";
import type { LengthRange } from "../values.ts";
import { propertyOf } from "./material.ts";
import { oversizeOf, oversizeWords, type OversizeOf } from "./oversize.ts";
import { budgetOf, readingsAt } from "./readings.ts";
import { settings } from "./settings.ts";
import { materialOfFeature, toolSpread } from "./size.ts";

export interface ReamerValue {
  readonly ref: string;
  /** Undefined for an adjustable one that nobody has measured. */
  readonly size: ToolSize | undefined;
  readonly expands: LengthRange | undefined;
  readonly measured: boolean;
  readonly step: number | undefined;
  readonly drive: "hand" | "machine" | undefined;
  readonly material: "hss" | "carbide" | undefined;
}

export const reamerValue = query<Known<ReamerValue>>("reamer", (shop, ref) => {
  const entry = entryOf(shop, ref);
  if (entry === undefined || entry.damaged) return SILENT;
  const size = given(entry, "SizeFact");
  const expands = given(entry, "ExpandsFact");
  if (size.state === "damaged" || expands.state === "damaged") return SILENT;
  // a reamer is read cold in the crib; a reading at another temperature needs its material's growth
  const material = (): Known<never> => unknown(readingOf(ref, " at 20 °C"));
  const places = readingsAt(
    shop,
    allOf(entry, "ReadFact"),
    "finished",
    ["finished"],
    material,
  );
  if (!places.known) return places;
  const shared = {
    ref,
    expands: expands.state === "given" ? expands.value : undefined,
    drive: valueIn(entry, "DriveFact"),
    material: valueIn(entry, "ReamerMaterialFact"),
  };
  if (0 < places.value.length) {
    const { values, spread } = toolSpread(places.value);
    const readings = places.value.flatMap((place) => place.readings);
    const budgets = readings.map(
      (reading) => budgetOf(reading, undefined, undefined)?.combined ?? 0,
    );
    const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
    const tool: ToolSize = {
      kind: "measured",
      mean,
      spread,
      count: values.length,
      uncertainty: Math.max(...budgets),
    };
    return known({
      ...shared,
      size: tool,
      measured: true,
      step: finest(readings),
    });
  }
  if (size.state === "absent" && shared.expands === undefined)
    return unknown(need(ref, "size", `the size of ${ref}`));
  const written = size.state === "given" ? size.value.range : undefined;
  const tool = written === undefined ? undefined : asMade(written);
  if (tool?.valid === false) return outside(tool.because);
  return known({
    ...shared,
    size: tool?.value,
    measured: false,
    step: written?.step,
  });
});

/** The limits of a reamer by what is written of it: a hole class means a reamer that is made for such holes, which is not as wide as they are. */
function asMade({ low, high, className }: LengthRange): Answer<ToolSize> {
  const read = className === undefined ? undefined : parseClass(className);
  if (read?.valid !== true || read.value.system !== "iso")
    return valid({ kind: "written", low, high });
  const made = reamerLimits({ low, high }, high - low);
  return made.valid ? valid({ kind: "written", ...made.value }) : made;
}

/** How a reamer cuts in a bore of a line: its oversize in that material, and the heat at the cut. */
export function cutConditions(
  shop: Shop,
  reamer: string | undefined,
  line: string,
  bore: string,
): Known<CutConditions> {
  const oversize =
    reamer === undefined
      ? known<Oversize>({ kind: "assumed-zero" })
      : oversizeAt(shop, reamer, bore);
  if (!oversize.known) return oversize;
  const heat = cutHeat(shop, reamer, line, bore);
  if (!heat.known) return heat;
  return known({
    oversize: oversize.value,
    ...(heat.value === undefined ? {} : { heat: heat.value }),
  });
}

function oversizeAt(shop: Shop, reamer: string, bore: string): Known<Oversize> {
  const found = oversizeInBore(shop, reamer, bore);
  return found.known ? known(found.value.oversize) : found;
}

function oversizeInBore(
  shop: Shop,
  reamer: string,
  bore: string,
): Known<OversizeOf> {
  const material = materialOfFeature(shop, bore);
  return oversizeOf(
    shop,
    reamer,
    material.known ? material.value.ref : undefined,
  );
}

/** Where the oversize of a reamer in a bore is from that nobody wrote; "" where it is written, or no reamer of the crib. */
export function oversizeNote(
  shop: Shop,
  reamer: string | undefined,
  bore: string,
): string {
  if (reamer === undefined) return "oversize taken as zero: none is written";
  const found = oversizeInBore(shop, reamer, bore);
  return found.known ? oversizeWords(found.value, settings(shop).system) : "";
}

/** The heat at the cut of a bore; undefined where the line writes none. */
export function cutHeat(
  shop: Shop,
  reamer: string | undefined,
  line: string,
  bore: string,
): Known<CutHeat | undefined> {
  const lineEntry = entryOf(shop, line);
  const heat =
    lineEntry === undefined
      ? undefined
      : given(lineEntry, "CutTemperatureFact");
  if (heat?.state === "damaged") return SILENT;
  if (heat?.state !== "given") return known(undefined);
  const material = materialOfFeature(shop, bore);
  const expansion = material.known
    ? propertyOf(material.value, "expansion")
    : material;
  if (!expansion.known) return expansion;
  const tool =
    reamer === undefined
      ? undefined
      : valueIn(entryOf(shop, reamer), "ReamerMaterialFact");
  const toolTemperature = heat.value.tool ?? 20;
  if (toolTemperature !== 20 && tool === undefined && reamer !== undefined) {
    return unknown(need(reamer, "material", `the material of ${reamer}`));
  }
  return known({
    partTemperature: heat.value.part ?? 20,
    partExpansion: expansion.value.value,
    toolTemperature,
    toolExpansion: toolExpansion[tool ?? "hss"],
  });
}

/** The bore at 20 °C that a reamer will leave. */
export function cutBy(
  shop: Shop,
  reamer: string,
  line: string,
  bore: string,
): Known<CutSize> {
  const tool = reamerValue(shop, reamer);
  if (!tool.known) return tool;
  if (tool.value.size === undefined)
    return unknown(need(reamer, "size", `the setting of ${reamer}`));
  const conditions = cutConditions(shop, reamer, line, bore);
  if (!conditions.known) return conditions;
  const cut = cutSize(
    tool.value.size,
    conditions.value.oversize,
    conditions.value.heat,
  );
  return cut.valid ? known(cut.value) : outside(cut.because);
}
