// A range of sizes in another of the trade's forms, without loss: `LOW to HIGH`, a size with its deviations, a size with its class. A shaft
// is written down from its largest size and a hole up from its smallest, as the most metal.
import { child, children, type Node } from "../../grammar/tree.ts";
import { commonClassesAt } from "../core/fits/common-classes.ts";
import type { Feature } from "../core/fits/limits.ts";
import { metresToTenths, readNumber } from "../core/quantity/exact.ts";
import type { System } from "../core/quantity/show.ts";
import { unitOf } from "../core/quantity/units.ts";
import type { OpenFile } from "../model/project.ts";
import { sideOf } from "../model/ranges.ts";
import { factAt, parsedAt, type Spot } from "./position.ts";
import { editAt, type Refactoring } from "./refactoring.ts";

export function otherForms(open: OpenFile, spot: Spot): readonly Refactoring[] {
  const fact = factAt(spot);
  const { kind } = spot.entry;
  const side = kind === undefined ? undefined : sideOf(kind, spot.line.word);
  const parsed = parsedAt(spot);
  const system = open.file.context.system;
  if (
    (side !== "hole" && side !== "shaft") ||
    fact?.value === undefined ||
    parsed === undefined ||
    system === undefined
  )
    return [];
  const value = rangeIn(fact.value);
  const node = [parsed.tree, ...parsed.tree.children]
    .flatMap(({ children: below }) => below)
    .find(({ type }) => type.startsWith("LengthRange_"));
  if (value === undefined || node === undefined) return [];
  const { line, position } = spot;
  const body = line.body;
  const from: Written = { body, node, system, side, ...value };
  const forms = [...asDeviations(from), ...asEnds(from), ...asClass(from)];
  return forms.map(({ title, text, remark = "" }) => {
    const at = position.line;
    const end = line.indent + body.length;
    const isBare = line.comment === line.text.length;
    const edits = [
      editAt(
        open.path,
        at,
        line.indent + node.start,
        line.indent + node.end,
        text,
      ),
    ];
    // what the class was can still be read
    if (remark !== "" && isBare)
      edits.push(editAt(open.path, at, end, end, `  # ${remark}`));
    return { title: `${title}: \`${text}\``, kind: "rewrite", edits };
  });
}

interface Written {
  readonly body: string;
  readonly node: Node;
  readonly system: System;
  readonly side: Feature;
  /** m */
  readonly low: number;
  readonly high: number;
  readonly className: string | undefined;
}

interface Form {
  readonly title: string;
  readonly text: string;
  readonly remark?: string;
}

function rangeIn(
  value: unknown,
): Pick<Written, "low" | "high" | "className"> | undefined {
  const range =
    typeof value === "object" && value !== null && "range" in value
      ? value.range
      : value;
  if (typeof range !== "object" || range === null) return undefined;
  if (!("low" in range) || !("high" in range)) return undefined;
  const { low, high } = range;
  const name = "className" in range ? range.className : undefined;
  return typeof low === "number" && typeof high === "number"
    ? { low, high, className: typeof name === "string" ? name : undefined }
    : undefined;
}

const OWN: Readonly<Record<System, string>> = { inch: "in", mm: "mm" };

/** The unit that all numbers of a node share, written or the file's; undefined where they don't share one. */
function sharedUnit({ body, node, system }: Written): string | undefined {
  const parts = children(node, "length", "deviation");
  const units = parts.map((part) => {
    const unit = child(part, "unit");
    return unit === undefined ? undefined : body.slice(unit.start, unit.end);
  });
  const written = new Set(units.filter((unit) => unit !== undefined));
  if (written.size === 0) return OWN[system];
  const [unit] = written;
  if (written.size !== 1 || unit === undefined) return undefined;
  // one at the end counts for a range; a size and its deviations each have theirs
  const reaches =
    node.type === "LengthRange_to"
      ? units.at(-1) !== undefined
      : units[0] !== undefined && units.at(-1) !== undefined;
  return reaches ? unit : undefined;
}

/** The written numbers as whole steps of the finest of them; undefined where one is no plain decimal. */
function stepsOf({
  body,
  node,
}: Written):
  { readonly all: readonly bigint[]; readonly decimals: number } | undefined {
  const written = children(node, "length", "deviation").map((part) => {
    const sign = child(part, "sign");
    const number = child(part, "number", "decimal");
    if (number === undefined) return undefined;
    const text = body.slice(sign?.start ?? number.start, number.end);
    return readNumber(text.replace(/\s+/gu, ""));
  });
  let decimals = 0;
  for (const each of written) {
    if (each?.decimals === undefined) return undefined;
    decimals = Math.max(decimals, each.decimals);
  }
  return {
    decimals,
    all: written.map((each) =>
      each === undefined
        ? 0n
        : (each.numerator * 10n ** BigInt(decimals)) / each.denominator,
    ),
  };
}

function asDeviations(from: Written): readonly Form[] {
  if (from.node.type === "LengthRange_class") return ofClass(from);
  if (from.node.type !== "LengthRange_to") return [];
  const unit = sharedUnit(from);
  const steps = stepsOf(from);
  const [low, high] = steps?.all ?? [];
  if (steps === undefined || low === undefined || high === undefined) return [];
  if (unit === undefined) return [];
  const width = shownSteps(high - low, steps.decimals);
  const end = isBare(from) ? "" : ` ${unit}`;
  const size = shownSteps(from.side === "shaft" ? high : low, steps.decimals);
  const by =
    from.side === "shaft"
      ? `+0${end} -${width}${end}`
      : `+${width}${end} -0${end}`;
  return [
    { title: "Write a size and deviations", text: `${size}${end} ${by}` },
  ];
}

function isBare({ node }: Written): boolean {
  return children(node, "length", "deviation").every(
    (part) => child(part, "unit") === undefined,
  );
}

function asEnds(from: Written): readonly Form[] {
  const { type } = from.node;
  const isPlusMinus = type === "LengthRange_plusMinus";
  if (!isPlusMinus && type !== "LengthRange_deviations") return [];
  const unit = sharedUnit(from);
  const steps = stepsOf(from);
  const [size, one, other] = steps?.all ?? [];
  if (steps === undefined || size === undefined || one === undefined) return [];
  if (unit === undefined) return [];
  const by = isPlusMinus ? [-one, one] : [one, other ?? 0n];
  const [low, high] = by
    .map((each) => size + each)
    .sort((a, b) => (a < b ? -1 : a === b ? 0 : 1));
  const text = [low, high]
    .map((each) => shownSteps(each ?? 0n, steps.decimals))
    .join(" to ");
  return [
    {
      title: "Write the smallest and the largest size",
      text: isBare(from) ? text : `${text} ${unit}`,
    },
  ];
}

/** `25 mm H7` as `25 mm +0.021 mm -0 mm`: only where its deviations are whole in six decimals of its unit. */
function ofClass(from: Written): readonly Form[] {
  const { node, body, low, high, className = "" } = from;
  const size = child(node, "length");
  const number = size === undefined ? undefined : child(size, "number");
  if (size === undefined || number === undefined) return [];
  const written = child(size, "unit");
  const unit =
    written === undefined
      ? OWN[from.system]
      : body.slice(written.start, written.end);
  const per = unitOf(unit)?.tenths;
  const nominal = readNumber(body.slice(number.start, number.end));
  if (per === undefined || nominal === undefined) return [];
  const at = (nominal.numerator * per) / nominal.denominator;
  if (at * nominal.denominator !== nominal.numerator * per) return [];
  const end = written === undefined ? "" : ` ${unit}`;
  const [upper, lower] = [high, low].map((each) =>
    deviation(BigInt(metresToTenths(each)) - at, per),
  );
  if (upper === undefined || lower === undefined) return [];
  return [
    {
      title: "Write its deviations",
      text: `${body.slice(size.start, size.end)} ${upper}${end} ${lower}${end}`,
      remark: className,
    },
  ];
}

const DECIMALS = 6;

function deviation(tenths: bigint, per: bigint): string | undefined {
  const scaled = tenths * 10n ** BigInt(DECIMALS);
  if (scaled % per !== 0n) return undefined;
  const text = shownSteps(
    scaled < 0n ? -scaled / per : scaled / per,
    DECIMALS,
  ).replace(/\.?0+$/u, "");
  const sign = tenths < 0n ? "-" : "+";
  return `${sign}${text === "" ? "0" : text}`;
}

const MOST_CLASSES = 3;

/** The common classes whose limits at the size are these very ones. */
function asClass({ node, side, low, high, system }: Written): readonly Form[] {
  if (node.type === "LengthRange_class") return [];
  const [least, most] = [metresToTenths(low), metresToTenths(high)];
  const whole = 1e-3;
  const forms: Form[] = [];
  const sizes = new Set(
    [low, high].flatMap((end) => [
      Math.floor(end / whole + 1e-9),
      Math.ceil(end / whole - 1e-9),
    ]),
  );
  for (const size of sizes) {
    if (size <= 0) continue;
    for (const { word, zone } of commonClassesAt(size * whole, side)) {
      if (
        metresToTenths(zone.lower) !== least ||
        metresToTenths(zone.upper) !== most
      )
        continue;
      forms.push({
        title: "Write the class",
        text: `${String(size)}${system === "mm" ? "" : " mm"} ${word}`,
      });
    }
  }
  return forms.slice(0, MOST_CLASSES);
}

/** So many whole steps of the last decimal. */
function shownSteps(steps: bigint, decimals: number): string {
  const text = (steps < 0n ? -steps : steps)
    .toString()
    .padStart(decimals + 1, "0");
  const at = text.length - decimals;
  const sign = steps < 0n ? "-" : "";
  return decimals === 0
    ? sign + text
    : `${sign}${text.slice(0, at)}.${text.slice(at)}`;
}
