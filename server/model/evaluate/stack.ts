// The end float of a stack, cold and at temperature, and the shims that bring it to what is wanted. All lengths are at 20 °C but where a
// `hot` or `cold` line says otherwise.
import { wanted } from "./wanted.ts";
import {
  endFloat,
  endFloatAtTemperature,
  type EndFloat,
  type Member,
} from "../../core/stack/chain.ts";
import { drawEndFloats, type DrawnFloat } from "../../core/stack/draws.ts";
import { chooseShims, type ShimChoice } from "../../core/stack/shims.ts";
import { judgeRange, type Verdict } from "../../core/readings/verdict.ts";
import { allOf, given } from "../entry.ts";
import {
  everyKnown,
  known,
  need,
  outside,
  SILENT,
  unknown,
  type Known,
} from "../known.ts";
import { finest } from "../ranges.ts";
import type { Status } from "../result.ts";
import { entryOf, query, refOf, refsOfKind, type Shop } from "../shop.ts";
import type { Bodies, MemberValue, Span } from "../values.ts";
import { namedIn } from "./index-of.ts";
import { materialOf, propertyOf } from "./material.ts";
import { readingsAt } from "./readings.ts";

export interface StackMember extends Member {
  readonly name: string;
  /** Full reference of the part that it grows as; undefined where none is written. */
  readonly part: string | undefined;
  readonly isRead: boolean;
  readonly step: number | undefined;
}

/** The members of a stack: each as it was read, else within its limits. */
export const membersOf = query<Known<readonly StackMember[]>>(
  "members",
  (shop, ref) => {
    const entry = entryOf(shop, ref);
    if (entry === undefined) return SILENT;
    const written = [
      ...allOf(entry, "PlusFact").map(({ value }) => ({
        sign: 1 as const,
        value,
      })),
      ...allOf(entry, "MinusFact").map(({ value }) => ({
        sign: -1 as const,
        value,
      })),
    ];
    if (written.length === 0)
      return unknown(need(ref, "plus", `the members of ${ref}`));
    return everyKnown(
      written.map(({ sign, value }) =>
        value === undefined ? SILENT : memberOf(shop, ref, sign, value),
      ),
    );
  },
);

function memberOf(
  shop: Shop,
  ref: string,
  sign: 1 | -1,
  { name, range, part: site }: MemberValue,
): Known<StackMember> {
  const entry = entryOf(shop, ref);
  if (entry === undefined) return SILENT;
  const part = refOf(shop, site);
  if (site !== undefined && part === undefined) return SILENT;
  const reads = allOf(entry, "StackReadFact");
  // a reading that can't be read may be of this member
  if (reads.some(({ value }) => value === undefined)) return SILENT;
  const found = readingsAt(
    shop,
    reads.filter(({ value }) => value?.member === name),
    "finished",
    ["finished", "run"],
    () =>
      part === undefined
        ? unknown(partOf(ref, sign, name))
        : materialOf(shop, part),
  );
  if (!found.known) return found;
  const readings = found.value.flatMap((place) => place.readings);
  const values = readings.flatMap((reading) => reading.values);
  const isRead = 0 < values.length;
  return known({
    sign,
    name,
    part,
    isRead: isRead || range.low === range.high,
    length: isRead
      ? { low: Math.min(...values), high: Math.max(...values) }
      : { low: range.low, high: range.high },
    step: isRead ? finest(readings) : range.step,
  });
}

function partOf(ref: string, sign: 1 | -1, name: string) {
  return need(
    ref,
    sign === 1 ? "plus" : "minus",
    `the part that ${name} of ${ref} is of`,
  );
}

export interface StackFloat extends EndFloat {
  readonly status: Exclude<Status, "unknown">;
  readonly step: number | undefined;
  readonly members: readonly StackMember[];
}

/** End float at 20 °C. */
export const floatOf = query<Known<StackFloat>>("end-float", (shop, ref) => {
  const members = membersOf(shop, ref);
  if (!members.known) return members;
  return floated(members.value, endFloat(members.value));
});

function floated(
  members: readonly StackMember[],
  found: ReturnType<typeof endFloat>,
): Known<StackFloat> {
  if (!found.valid) return outside(found.because);
  return known({
    ...found.value,
    status: members.every((member) => member.isRead) ? "measured" : "predicted",
    step: finest(members),
    members,
  });
}

/** A `hot` or `cold` line, with what the float is then. */
export interface FloatCase {
  readonly kind: "hot" | "cold";
  /** 1…, the hot lines first. */
  readonly number: number;
  readonly span: Span;
  readonly bodies: Bodies | undefined;
  readonly float: Known<StackFloat>;
}

export const floatCases = query<readonly FloatCase[]>(
  "float-cases",
  (shop, ref) => {
    const entry = entryOf(shop, ref);
    if (entry === undefined) return [];
    return [
      ...allOf(entry, "HotFact").map(
        (fact) => ({ kind: "hot", fact }) as const,
      ),
      ...allOf(entry, "ColdFact").map(
        (fact) => ({ kind: "cold", fact }) as const,
      ),
    ].map(({ kind, fact }, index) => ({
      kind,
      number: index + 1,
      span: fact.span,
      bodies: fact.value,
      float:
        fact.value === undefined
          ? SILENT
          : floatAt(shop, ref, kind, fact.value),
    }));
  },
);

function floatAt(
  shop: Shop,
  ref: string,
  kind: "hot" | "cold",
  bodies: Bodies,
): Known<StackFloat> {
  const members = membersOf(shop, ref);
  if (!members.known) return members;
  const warm = everyKnown(
    members.value.map((member) => {
      const { part, sign, name } = member;
      if (part === undefined) return unknown(partOf(ref, sign, name));
      const material = materialOf(shop, part);
      const expansion = material.known
        ? propertyOf(material.value, "expansion")
        : material;
      const temperature = temperatureOf(shop, ref, kind, bodies, part);
      if (!expansion.known) return expansion;
      if (!temperature.known) return temperature;
      return known({
        ...member,
        expansion: expansion.value.value,
        temperature: temperature.value,
      });
    }),
  );
  return warm.known
    ? floated(members.value, endFloatAtTemperature(warm.value))
    : warm;
}

/** °C of a part: the shaft's where a journal is on it, the case's where a hole or a bore is in it. */
function temperatureOf(
  shop: Shop,
  ref: string,
  kind: "hot" | "cold",
  bodies: Bodies,
  part: string,
): Known<number> {
  const role = roleOf(shop, part);
  // where both are as warm it matters not which it is
  if (
    role === undefined &&
    (bodies.shaft === undefined || bodies.shaft !== bodies.case)
  )
    return unknown(
      need(part, "journal", `a journal on ${part}, or a hole in it`),
    );
  const temperature = role === "shaft" ? bodies.shaft : bodies.case;
  return temperature === undefined
    ? unknown(
        need(
          ref,
          kind,
          `the temperature of the ${role ?? "case"} in \`${kind}\``,
        ),
      )
    : known(temperature);
}

/** Whether a part is the shaft or the case: by what is on or in it, else by a name that ends so. */
const roleOf = query<"shaft" | "case" | undefined>("role", (shop, part) => {
  const has = (kind: "journal" | "hole" | "bore"): boolean =>
    refsOfKind(shop, kind).some((ref) => namedIn(shop, ref)[0] === part);
  if (has("journal")) return "shaft";
  if (has("hole") || has("bore")) return "case";
  if (part.endsWith("shaft")) return "shaft";
  return /(?:case|casing|housing)$/.test(part) ? "case" : undefined;
});

/** The float at 20 °C, all of its worst case, against what is wanted; undefined where either is not known. */
export const floatVerdict = query<Verdict | undefined>(
  "float-verdict",
  (shop, ref) => {
    const found = floatOf(shop, ref);
    const want = wanted(shop, ref);
    if (!found.known || want?.known !== true) return undefined;
    const verdict = judgeRange(
      found.value.worst,
      want.value,
      { kind: "simple" },
      "one",
    );
    return verdict.valid ? verdict.value : undefined;
  },
);

/** The shims to put in; undefined where none are written. */
export const shimsOf = query<Known<ShimChoice> | undefined>(
  "shims",
  (shop, ref) => {
    const entry = entryOf(shop, ref);
    if (entry === undefined) return SILENT;
    const shims = given(entry, "ShimsFact");
    if (shims.state === "damaged") return SILENT;
    if (shims.state === "absent") return undefined;
    const want = wanted(shop, ref);
    const found = floatOf(shop, ref);
    if (want === undefined)
      return unknown(need(ref, "want", `the float that ${ref} wants`));
    if (!want.known) return want;
    if (!found.known) return found;
    const choice = chooseShims(found.value.worst, want.value, shims.value);
    return choice.valid
      ? known(choice.value)
      : unknown(need(ref, "shims", `shims that do: ${choice.because}`));
  },
);

/** The same seed for every stack, so that a figure never changes by itself. */
const DRAWING = { seed: 1, draws: 10_000, shape: "normal" } as const;

/** The float of ten thousand stacks drawn at random, normal with limits at three deviations. */
export const drawnFloat = query<DrawnFloat | undefined>(
  "drawn-float",
  (shop, ref) => {
    const members = membersOf(shop, ref);
    const want = wanted(shop, ref);
    if (!members.known || members.value.every((member) => member.isRead))
      return undefined;
    const drawn = drawEndFloats(members.value, {
      ...DRAWING,
      want: want?.known === true ? want.value : undefined,
    });
    return drawn.valid ? drawn.value : undefined;
  },
);
