// Reads each fact's line into its value: one reader a rule of thou.ohm. A reader gives undefined where any part can't be read.
import { child, children, type Node } from "../../grammar/tree.ts";
import { quoted, signature } from "./clauses.ts";
import {
  bodies,
  choice,
  count,
  length,
  namedTemperatures,
  numberRange,
  range,
  ref,
  refs,
  si,
  text,
  wordAfter,
  type FactReader,
  type Read,
} from "./fact-parts.ts";
import {
  between,
  learnedLength,
  learnedShare,
  lessonBush,
} from "./lesson-facts.ts";
import {
  anyQuantityOf,
  lengthsOf,
  reportReversed,
  textOf,
  valueOf,
} from "./quantities.ts";
import { lengthRangeOf, sideOf } from "./ranges.ts";
import { reading } from "./reading-fact.ts";
import { swing } from "./swing-fact.ts";
import type { FactRule, FactValues, MemberValue, Point } from "./values.ts";

function memberValue(node: Node, line: FactReader): MemberValue | undefined {
  const member = child(node, "Member");
  const name = member === undefined ? undefined : child(member, "member");
  if (member === undefined || name === undefined) return undefined;
  const value = lengthRangeOf(line, member, undefined);
  const part = child(member, "OfPart");
  const partRef = part === undefined ? undefined : ref(part, line);
  if (value === undefined) return undefined;
  return { name: textOf(line, name), range: value, part: partRef };
}

function lineBore(
  node: Node,
  line: FactReader,
): FactValues["LineBoreFact"] | undefined {
  const bore = ref(node, line);
  const [from, to] = lengthsOf(line, children(node, "length")) ?? [];
  const centres = child(node, "Centres");
  const points = centres === undefined ? [] : children(centres, "Point");
  const coordinates = lengthsOf(
    line,
    points.flatMap((point) => children(point, "length")),
  );
  if (
    bore === undefined ||
    from === undefined ||
    to === undefined ||
    coordinates === undefined
  )
    return undefined;
  if (to.value < from.value) {
    reportReversed(line, node, children(node, "length"));
    return undefined;
  }
  const at = points.map((_, index): Point => ({
    x: coordinates[2 * index]?.value ?? 0,
    y: coordinates[2 * index + 1]?.value ?? 0,
  }));
  return { bore, from: from.value, to: to.value, centres: at };
}

function sizeOf(
  node: Node,
  line: FactReader,
): FactValues["SizeFact"] | undefined {
  const named = child(node, "Size_number", "Size_letter");
  if (named !== undefined) {
    const found = line.namedSize(textOf(line, named).split(/\s+/u));
    if (found === undefined) {
      line.report("line-damaged", named, {
        message: `There is no standard size \`${textOf(line, named)}\`: write its diameter.`,
      });
      return undefined;
    }
    return {
      range: { low: found, high: found, step: undefined, className: undefined },
      named: textOf(line, named),
    };
  }
  const sized = child(node, "Size_length") ?? node;
  const found = lengthRangeOf(line, sized, sideOf("reamer", "size"));
  return found === undefined ? undefined : { range: found, named: undefined };
}

export const READERS: { readonly [K in FactRule]: Read<K> } = {
  NoteFact: text,
  TitleFact: text,
  UnitsFact: choice(),
  UseFact: (node, line) =>
    children(node, "text").map((each) => ({
      path: quoted(line, each) ?? "",
      span: line.spanOf(each),
    })),
  OpenedFact: signature,
  HoursFact: (node, line) => {
    const meter = si("time", "time")(node, line);
    const signed = signature(node, line);
    return meter === undefined || signed === undefined
      ? undefined
      : { meter, date: signed.date };
  },
  TemperatureFact: si("temperature", "temperature"),
  VerdictFact: choice(),
  FollowFact: ref,
  WarnFact: (node, line) => {
    const code = child(node, "code");
    const at = child(node, "anything");
    const value = at === undefined ? undefined : anyQuantityOf(line, at);
    if (code === undefined || value === undefined) return undefined;
    return { code: textOf(line, code), codeSpan: line.spanOf(code), at: value };
  },
  MaterialFact: ref,
  SerialFact: (node, line) =>
    quoted(line, child(node, "text")) ?? wordAfter(node, line),
  LotFact: (node, line) =>
    quoted(line, child(node, "text")) ?? wordAfter(node, line),
  SplitFact: choice(),
  JointFact: (node, line) => {
    const gasket = child(node, "Gasket");
    return gasket === undefined ? 0 : length(gasket, line)?.value;
  },
  BoltsFact: numberRange("torque", "torque"),
  DowelsFact: count,
  LimitsFact: (node, line) => sourced(node, line),
  ServiceLimitFact: (node, line) => sourced(node, line),
  LengthFact: range,
  ReadFact: reading,
  RepeatFact: reading,
  BushReadFact: (node, line) => {
    const found = reading(node, line);
    const side = child(node, "side");
    if (found === undefined || side === undefined) return undefined;
    return { ...found, side: textOf(line, side) === "od" ? "od" : "id" };
  },
  StackReadFact: (node, line) => {
    const found = reading(node, line);
    const member = child(node, "member");
    return found === undefined || member === undefined
      ? undefined
      : { ...found, member: textOf(line, member) };
  },
  SwingFact: swing,
  BoreSwingFact: swing,
  FinishFact: (node, line) => {
    const value = length(node, line);
    const parameter = child(node, "parameter");
    if (value === undefined || parameter === undefined) return undefined;
    return {
      value: value.value,
      parameter: textOf(line, parameter) === "Rz" ? "Rz" : "Ra",
    };
  },
  NominalFact: length,
  RunoutFact: length,
  FilletFact: length,
  ReachesFact: length,
  RoundFact: length,
  TaperFact: length,
  BossFact: length,
  DepthFact: (node, line) => {
    const deep = child(node, "Depth_deep");
    if (deep === undefined) return { depth: undefined, bottom: "through" };
    const depth = length(deep, line);
    const bottom = child(deep, "bottom");
    if (depth === undefined || bottom === undefined) return undefined;
    return {
      depth,
      bottom: textOf(line, bottom) === "blind" ? "blind" : "through",
    };
  },
  VentedFact: () => true,
  OdFact: range,
  IdFact: range,
  ConstructionFact: choice(),
  GrooveFact: choice(),
  OilHoleFact: si("angle", "angle"),
  HeldFact: text,
  WantFact: range,
  WantHotFact: range,
  FrictionFact: numberRange("ratio", "ratio"),
  SmoothingFact: length,
  RunsFact: si("rotation", "rotation"),
  OscillatesFact: (node, line) => {
    const angle = si("angle", "angle")(node, line);
    const frequency = si("frequency", "frequency")(node, line);
    return angle === undefined || frequency === undefined
      ? undefined
      : { angle, frequency };
  },
  LoadFact: (node, line) => {
    const force = si("force", "force")(node, line);
    const loading = child(node, "loading");
    if (force === undefined) return undefined;
    // the grammar admits only these
    return {
      force,
      loading:
        loading === undefined
          ? undefined
          : (textOf(line, loading) as "steady" | "reversing" | "shock"),
    };
  },
  OilFact: (node, line) => {
    const oil = ref(node, line);
    const temperature = si("temperature", "temperature")(node, line);
    return oil === undefined || temperature === undefined
      ? undefined
      : { oil, temperature };
  },
  FeedFact: (node, line) => {
    const pumped = child(node, "FeedPressure");
    // the grammar admits only these
    if (pumped === undefined)
      return {
        feed: wordAfter(node, line) as "splash" | "drip" | "grease",
        pressure: undefined,
      };
    const pressure = si("pressure", "pressure")(pumped, line);
    return pressure === undefined ? undefined : { feed: "pressure", pressure };
  },
  CooledFact: (node, line) => {
    const area =
      child(node, "area") === undefined
        ? undefined
        : si("area", "area")(node, line);
    const air = si("temperature", "temperature")(node, line);
    if (child(node, "area") !== undefined && area === undefined)
      return undefined;
    return air === undefined ? undefined : { area, air };
  },
  HotFact: bodies,
  ColdFact: bodies,
  LineBoreFact: lineBore,
  ReamFact: ref,
  CutFact: range,
  LinePilotFact: (node, line) => {
    const [pilot, inBore, forBore] = refs(node, line);
    return pilot === undefined || inBore === undefined || forBore === undefined
      ? undefined
      : { pilot, in: inBore, for: forBore };
  },
  CutTemperatureFact: (node, line) => {
    const at = namedTemperatures(node, line, "CutBody", "cutBody");
    return at === undefined
      ? undefined
      : { part: at.get("part"), tool: at.get("tool") };
  },
  SpeedFact: (node, line) => {
    const at = child(node, "surfaceOrRotation");
    const found =
      at === undefined ? undefined : valueOf(line, at, "speed", "rotation");
    if (found === undefined) return undefined;
    return found.dimension === "speed"
      ? { speed: found.value }
      : { turns: found.value };
  },
  PlusFact: memberValue,
  MinusFact: memberValue,
  ShimsFact: (node, line) =>
    lengthsOf(line, children(node, "length"))?.map((each) => each.value),
  AfterFact: refs,
  DoFact: text,
  CutsFact: refs,
  PressesFact: refs,
  ChecksFact: refs,
  CautionFact: (node, line) =>
    children(node, "caution").map((each) => ({
      name: textOf(line, each),
      span: line.spanOf(each),
    })),
  FoundFact: (node, line) => {
    const outcome = child(node, "outcome");
    if (outcome === undefined) return undefined;
    return {
      outcome: textOf(line, outcome) === "passed" ? "passed" : "failed",
      text: quoted(line, child(node, "text")),
    };
  },
  DoneFact: signature,
  AllowsFact: (node, line) => {
    const code = child(node, "code");
    const at = child(node, "fullRef");
    const on = at === undefined ? undefined : line.ref(at);
    return code === undefined || on === undefined
      ? undefined
      : { code: textOf(line, code), codeSpan: line.spanOf(code), on };
  },
  UpToFact: (node, line) => {
    const at = child(node, "anything");
    return at === undefined ? undefined : anyQuantityOf(line, at);
  },
  WhyFact: (node, line) => {
    const why = text(node, line);
    const signed = signature(node, line);
    return why === undefined || signed === undefined
      ? undefined
      : { text: why, signature: signed };
  },
  SizeFact: sizeOf,
  OversizeFact: (node, line) => {
    const material = child(node, "materialRef");
    const materialRef = material === undefined ? undefined : line.ref(material);
    const found = lengthRangeOf(line, node, undefined);
    if (found === undefined) return undefined;
    return { material: materialRef, range: found };
  },
  DriveFact: choice(),
  ReamerMaterialFact: choice(),
  ChamferFact: length,
  PointFact: length,
  FlutesFact: (node, line) => {
    const flutes = count(node, line);
    const hand = child(node, "hand");
    // the grammar admits only these
    return flutes === undefined || hand === undefined
      ? undefined
      : {
          count: flutes,
          hand: textOf(line, hand) as "straight" | "left" | "right",
        };
  },
  StockFact: range,
  ExpandsFact: range,
  KindFact: wordAfter,
  ResolutionFact: length,
  UncertaintyFact: length,
  MpeFact: length,
  AddsFact: length,
  SetFact: (node, line) => {
    const ring = child(node, "SetRing");
    if (ring !== undefined) {
      const size = length(ring, line);
      return size === undefined ? undefined : { ring: size.value };
    }
    const gauge = child(node, "SetGauge");
    const gaugeRef = gauge === undefined ? undefined : ref(gauge, line);
    return gaugeRef === undefined ? undefined : { with: gaugeRef };
  },
  CalibratedFact: signature,
  DueFact: signature,
  ExpansionFact: si("expansion", "expansion"),
  ModulusFact: si("pressure", "pressure"),
  PoissonFact: (node, line) => {
    const at = child(node, "ratio");
    return at === undefined ? undefined : valueOf(line, at, "ratio")?.value;
  },
  YieldFact: si("pressure", "pressure"),
  SpecificLoadFact: si("pressure", "pressure"),
  MaterialSpeedFact: si("speed", "speed"),
  PvFact: si("pv", "pv"),
  GradeFact: (node, line) => {
    const iso = child(node, "Grade_iso");
    const sae = child(node, "Grade_sae");
    const at =
      iso === undefined
        ? sae === undefined
          ? undefined
          : child(sae, "saeGrade")
        : child(iso, "count");
    return at === undefined
      ? undefined
      : {
          system: iso === undefined ? "SAE" : "ISO VG",
          grade: textOf(line, at),
        };
  },
  ViscosityFact: (node, line) => {
    const points = children(node, "ViscosityAt").map((each) => {
      const at = child(each, "viscosity");
      const value =
        at === undefined
          ? undefined
          : valueOf(line, at, "viscosity", "dynamic-viscosity");
      const temperature = si("temperature", "temperature")(each, line);
      return value === undefined || temperature === undefined
        ? undefined
        : {
            value: value.value,
            dynamic: value.dimension === "dynamic-viscosity",
            temperature,
          };
    });
    return points.every((point) => point !== undefined) ? points : undefined;
  },
  DensityFact: si("density", "density"),
  LessonReamerFact: (node, line) => {
    const [reamer, material] = refs(node, line);
    return reamer === undefined || material === undefined
      ? undefined
      : { reamer, material };
  },
  LessonOversizeFact: learnedLength,
  LessonBushFact: lessonBush,
  LessonClosesFact: learnedShare,
  LessonGaugeFact: (node, line) => {
    const [gauge, against] = refs(node, line);
    return gauge === undefined || against === undefined
      ? undefined
      : { gauge, against };
  },
  LessonReadsFact: learnedLength,
  BetweenFact: between,
  RouteStepFact: (node, line) => {
    const at = child(node, "stepName");
    return at === undefined
      ? undefined
      : { name: textOf(line, at), span: line.spanOf(at) };
  },
};

function sourced(
  node: Node,
  line: FactReader,
): FactValues["LimitsFact"] | undefined {
  const found = range(node, line);
  const source = child(node, "Source");
  if (found === undefined) return undefined;
  const { low, high, step, className } = found;
  return {
    low,
    high,
    step,
    className,
    source:
      source === undefined ? undefined : quoted(line, child(source, "text")),
  };
}
