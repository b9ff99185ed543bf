// Asks what has to be known before readings are taken: of what, in which state, with which gauge, how warm, where. The answers make the plan.
import { showCount } from "../../core/quantity/show.ts";
import { gaugeValue } from "../../model/evaluate/gauge.ts";
import { settings } from "../../model/evaluate/settings.ts";
import type { OpenFile } from "../../model/project.ts";
import { refsOfKind, type Shop } from "../../model/shop.ts";
import type { Answer, Next, TakingPlan } from "../../protocol/guide.ts";
import { gaugeSummary } from "../hover-crib.ts";
import {
  askOne,
  askText,
  choice,
  interviewed,
  type Fault,
  type Interview,
} from "../interview.ts";
import { spotAt, type Position } from "../position.ts";
import { HIDES } from "./after.ts";
import { nameOf } from "../../model/reference.ts";
import {
  expectedOf,
  isUncut,
  limitsText,
  readingsOf,
  swingTargetsIn,
  targetLabel,
  targetName,
  targetsIn,
  type Target,
} from "./targets.ts";
import { askTurned } from "./turned.ts";
import { askWhere, TITLE } from "./where.ts";

export interface Pointed {
  /** The entry that was pointed at: nothing else is offered. */
  readonly ref: string | null;
  /** The caret: what stands there is offered first. */
  readonly position: Position | null;
}

/** The next question, or the plan; a sentence where there is nothing to read. */
export function takingSetup(
  open: OpenFile,
  { ref, position }: Pointed,
  answers: readonly Answer[],
  date: string,
): Next | { readonly plan: TakingPlan } | { readonly sentence: string } {
  const { system } = open.file.context;
  if (system === undefined)
    return {
      sentence:
        "This record does not say the unit of its lengths, so a reading without one could be anything: write `units inch` or `units mm` under its first line.",
    };
  const all = targetsIn(open);
  const targets =
    ref === null
      ? [...all, ...swingTargetsIn(open)]
      : all.filter((each) => each.ref === ref);
  if (targets.length === 0)
    return {
      sentence:
        ref === null
          ? "There is nothing here to read: write a journal, a hole, a bush or a bore first."
          : `${ref} is not in this record, or its opening line can't be read.`,
    };
  const here =
    position === null ? undefined : spotAt(open, position)?.entry.ref;
  const found = interviewed(
    () => setup(open.shop, targets, here, system, date),
    answers,
  );
  return "value" in found ? { plan: found.value } : found;
}

function* setup(
  shop: Shop,
  targets: readonly Target[],
  here: string | undefined,
  system: "inch" | "mm",
  date: string,
): Interview<TakingPlan> {
  const target = yield* askTarget(targets, here, system);
  const stage = isUncut(shop, target) ? yield* askStage(target) : null;
  const turned = target.isSwing === true ? yield* askTurned(target.ref) : null;
  const gauge = yield* askGauge(shop, target, date);
  // what is warm grows alike all the way round
  const temperature = turned === null ? yield* askTemperature(shop) : null;
  const where = yield* askWhere(target);
  const resolution =
    gauge === null ? undefined : gaugeValue(shop, `gauge ${gauge}`)?.resolution;
  return {
    ref: target.ref,
    side: target.side,
    ...where,
    turned,
    gauge,
    temperature,
    stage,
    date,
    system,
    expected: expectedOf(shop, target),
    resolution: resolution ?? null,
  };
}

function* askTarget(
  targets: readonly Target[],
  here: string | undefined,
  system: "inch" | "mm",
): Interview<Target> {
  const [only, second] = targets;
  if (only !== undefined && second === undefined) return only;
  // what lacks readings before what has some
  const rank = ({ count, isSwing }: Target): number =>
    isSwing === true ? 2 : Number(0 < count);
  const sorted = [...targets].sort((a, b) => rank(a) - rank(b));
  const first = sorted.find((each) => each.ref === here) ?? sorted[0];
  const given = yield* askOne(
    { key: "target", title: TITLE, about: "What is read?" },
    sorted.map((each) =>
      choice(targetName(each), targetLabel(each), {
        beside:
          each.count === 0
            ? `no ${each.isSwing === true ? "swing" : "readings"} yet`
            : showCount(each.count, "reading"),
        below: each.isSwing === true ? HIDES : limitsText(each, system),
        picked: each === first,
      }),
    ),
  );
  const found = sorted.find((each) => targetName(each) === given);
  if (found === undefined) throw new Error(`${given} was not offered`); // askOne gives only what was
  return found;
}

function* askStage(target: Target): Interview<string | null> {
  const stage = yield* askOne(
    {
      key: `stage ${targetName(target)}`,
      title: TITLE,
      about: `How far has ${target.ref} come?`,
    },
    [
      choice("pressed", "Pressed in, not cut yet", { picked: true }),
      choice("roughed", "Roughed, still to be finished"),
      choice("finished", "Cut to size"),
    ],
  );
  return stage === "finished" ? null : stage;
}

/** Kinds of gauges by what they are for: those for the feature first. */
const FOR_SIZE = {
  outside: ["micrometer", "indicator", "air"],
  inside: ["bore-gauge", "plug", "air", "micrometer"],
};
const FOR_SWING = { outside: ["indicator"], inside: ["bore-gauge", "air"] };

/** What goes into a hole reads no shaft. */
const INSIDE_ALONE: ReadonlySet<string> = new Set(["bore-gauge", "plug"]);

function* askGauge(
  shop: Shop,
  target: Target,
  date: string,
): Interview<string | null> {
  const isInside =
    target.side === "id" ||
    target.entry.kind === "hole" ||
    target.entry.kind === "bore";
  const isSwing = target.isSwing === true;
  const side = isInside ? "inside" : "outside";
  const gauges = refsOfKind(shop, "gauge").filter(
    (ref) => isInside || !INSIDE_ALONE.has(gaugeValue(shop, ref)?.kind ?? ""),
  );
  if (gauges.length === 0) return null;
  const order = (isSwing ? FOR_SWING : FOR_SIZE)[side];
  const rank = (ref: string): number => {
    const at = order.indexOf(gaugeValue(shop, ref)?.kind ?? "");
    return at === -1 ? order.length : at;
  };
  const sorted = [...gauges].sort((a, b) => rank(a) - rank(b));
  const used = isSwing
    ? undefined
    : readingsOf(target.entry, target.side).at(-1)?.gauge?.name;
  const first = sorted.find((each) => nameOf(each) === used) ?? sorted[0];
  const given = yield* askOne(
    {
      key: `gauge-${isSwing ? "swing-" : ""}${side}`,
      title: TITLE,
      about: isSwing ? "Which gauge shows the swing?" : "Which gauge reads it?",
      isKept: true,
    },
    [
      ...sorted.map((ref) => {
        const due = gaugeValue(shop, ref)?.due;
        return choice(nameOf(ref), nameOf(ref), {
          beside:
            due !== undefined && due < date
              ? "its calibration has run out"
              : "",
          below: gaugeSummary(shop, ref),
          picked: ref === first,
        });
      }),
      choice("", "Another, not in the crib", {
        below:
          "The readings will not say with what, and their uncertainty stays unknown",
      }),
    ],
  );
  return given === "" ? null : given;
}

function* askTemperature(shop: Shop): Interview<string | null> {
  const { temperatureAssumed, system } = settings(shop);
  const example = system === "inch" ? "68 F" : "20 C";
  const left = temperatureAssumed
    ? "20 °C counts where it is left empty"
    : "the job's own counts where it is left empty";
  return yield* askText(
    {
      key: "temperature",
      title: TITLE,
      about: `How warm are part and gauge? Such as ${example}; ${left}.`,
      isKept: true,
    },
    "",
    readTemperature,
  );
}

/** A temperature as a line writes it; nothing typed is none. */
function readTemperature(
  text: string,
): { readonly value: string | null } | Fault {
  if (text === "") return { value: null };
  const match = /^([+-]?\d{1,4}(?:\.\d{1,3})?) *(?:°|deg)? *([FCK])$/iu.exec(
    text.replace("\u{2212}", "-"),
  );
  if (match === null)
    return {
      fault: /^[+-]?[\d.]+$/u.test(text)
        ? `In which scale? Write ${text} F or ${text} C.`
        : "Write a temperature with its unit, such as 68 F or 20 C, or leave it empty.",
    };
  const [, digits = "", unit = ""] = match;
  const scale = unit.toUpperCase();
  const celsius =
    scale === "F"
      ? (Number(digits) - 32) / 1.8
      : scale === "K"
        ? Number(digits) - 273.15
        : Number(digits);
  return -40 <= celsius && celsius <= 150
    ? { value: `${digits.replace(/^\+/u, "")} ${scale}` }
    : {
        fault: `${digits} ${scale} is no temperature to read a size at. From -40 C to 150 C will do.`,
      };
}
