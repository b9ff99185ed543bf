// An axial chain: its members one after another to one scale, and the float that is left, cold and hot, against what is wanted.
import {
  lengthDigits,
  showRange,
  showTemperature,
  type System,
} from "../core/quantity/show.ts";
import { settings } from "../model/evaluate/settings.ts";
import {
  floatCases,
  floatOf,
  floatVerdict,
  membersOf,
  shimsOf,
  type FloatCase,
  type StackMember,
} from "../model/evaluate/stack.ts";
import { wanted } from "../model/evaluate/wanted.ts";
import type { Shop } from "../model/shop.ts";
import { bandStrip, type BandRow, type Drawn } from "./band-strip.ts";
import { inkOf, widthOf, type Ink, type PictureOptions } from "./ink.ts";
import { scale } from "./scale.ts";
import {
  about,
  arrowHead,
  block,
  hatch,
  lettering,
  line,
  picture,
  sentencePicture,
  SMALL,
  wrapped,
} from "./shapes.ts";
import { NOTHING, together } from "./svg.ts";
import { judgedWords, notKnown, unreadText } from "./words.ts";

const EDGE = 6;
const ROW = 32;
const LEADING = 14;

/** The picture as SVG text. What is not known is said in its place. */
export function stackPicture(
  shop: Shop,
  stack: string,
  options: PictureOptions,
): string {
  const ink = inkOf(options.theme);
  const width = widthOf(options);
  const members = membersOf(shop, stack);
  const sentence =
    unreadText(shop, stack) ??
    (members.known ? undefined : `${stack}: ${notKnown(members)}`);
  if (sentence !== undefined || !members.known)
    return sentencePicture(sentence ?? "", width, ink, stack);
  const { system } = settings(shop);
  const chain = chainOf(members.value, stack, width, system, ink);
  const rows = floatRows(shop, stack);
  const want = wanted(shop, stack);
  const title = wrapped(
    want?.known === true
      ? `End float; wanted ${showRange(want.value.low, want.value.high, system, want.value.step)}`
      : "End float; none is wanted yet",
    width * 0.9,
  );
  const top = EDGE + chain.height + 8;
  const strip = bandStrip(rows, {
    x: EDGE,
    y: top + title.length * 15 + 4,
    width: width - 2 * EDGE,
    system,
    ink,
    zero: "no float",
  });
  return picture(
    { width, height: top + title.length * 15 + 4 + strip.height + EDGE },
    `${stack}: end float ${rows[0]?.words ?? "not known"}`,
    ink,
    stack,
    chain.markup,
    lettering(EDGE, top + 12, title, { fill: ink.text, bold: true }),
    strip.markup,
  );
}

/** Each member from where the one before it ended: what opens the float to the right, what closes it back to the left. */
function chainOf(
  members: readonly StackMember[],
  stack: string,
  width: number,
  system: System,
  ink: Ink,
): Drawn {
  const middle = ({ length }: StackMember): number =>
    (length.low + length.high) / 2;
  let at = 0;
  const spans = members.map((member) => {
    const from = at;
    at += member.sign * middle(member);
    return { member, from, to: at };
  });
  const places = [0, ...spans.map(({ to }) => to)];
  const across = scale(
    [Math.min(...places), Math.max(...places)],
    [EDGE + 2, width - EDGE - 2],
  );
  let below = EDGE;
  const rows = spans.map((span) => {
    const words = memberWords(span.member, system);
    const lines = wrapped(words, width - 2 * EDGE, SMALL);
    const y = below;
    const bar = y + 17 + (lines.length - 1) * LEADING;
    below = bar + ROW - 17;
    return { ...span, words, lines, y, bar };
  });
  return {
    height: below - EDGE,
    markup: together(
      rows.map(({ member, from, to, words, lines, y, bar }, index) => {
        const [x1, x2] = [across(from), across(to)];
        const next = rows[index + 1];
        const box = {
          x: Math.min(x1, x2),
          y: bar,
          width: Math.abs(x2 - x1),
          height: 8,
        };
        return about(
          stack,
          words,
          lettering(
            EDGE,
            y + 12,
            lines,
            // where the member before it ended, a line comes down through them
            { fill: ink.text, size: SMALL, rim: ink.paper },
            LEADING,
          ),
          block(box, {
            stroke: member.sign === 1 ? ink.bore : ink.journal,
            width: 1.5,
            ...(member.isRead ? {} : { dashes: "4 2" }),
          }),
          member.sign === 1
            ? hatch(box, { stroke: ink.bore, spacing: 6 })
            : NOTHING,
          box.width < 10
            ? NOTHING
            : arrowHead(
                x2,
                bar + 4,
                member.sign === 1 ? "right" : "left",
                ink.text,
              ),
          next === undefined
            ? NOTHING
            : line(x2, bar, x2, next.bar + 8, {
                stroke: ink.rule,
                dashes: "2 2",
              }),
        );
      }),
    ),
  };
}

/** "plus case 182.410 to 182.420 mm, measured" */
function memberWords(
  { sign, name, length: { low, high }, step, isRead }: StackMember,
  system: System,
): string {
  return `${sign === 1 ? "plus" : "minus"} ${name} ${showRange(low, high, system, step)}, ${isRead ? "measured" : "predicted from its limits"}`;
}

function floatRows(shop: Shop, stack: string): readonly BandRow[] {
  const { system } = settings(shop);
  const want = wanted(shop, stack);
  const found = floatOf(shop, stack);
  const verdict = floatVerdict(shop, stack);
  const shared = {
    ref: stack,
    wanted: want?.known === true ? want.value : undefined,
  };
  return [
    {
      ...shared,
      name: "at 20 °C",
      band: found.known ? found.value.worst : undefined,
      measured: found.known && found.value.status === "measured",
      wrong: verdict === "out",
      words: found.known
        ? `${showRange(found.value.worst.low, found.value.worst.high, system, found.value.step)} at worst, ${judgedWords(found.value.status, verdict)}`
        : notKnown(found),
    },
    ...shimRow(shop, stack, {
      ...shared,
      status: found.known ? found.value.status : "predicted",
    }),
    ...floatCases(shop, stack).map((each): BandRow => ({
      ...shared,
      name: caseName(each, system),
      band: each.float.known ? each.float.value.worst : undefined,
      measured: each.float.known && each.float.value.status === "measured",
      wrong: false,
      words: each.float.known
        ? `${showRange(each.float.value.worst.low, each.float.value.worst.high, system, each.float.value.step)} at worst, ${each.float.value.status}`
        : notKnown(each.float),
    })),
  ];
}

/** The float once the shims are in that the tool chooses. */
function shimRow(
  shop: Shop,
  stack: string,
  {
    status,
    ...shared
  }: Pick<BandRow, "ref" | "wanted"> & {
    readonly status: "measured" | "predicted";
  },
): readonly BandRow[] {
  const { system } = settings(shop);
  const shims = shimsOf(shop, stack);
  if (shims === undefined) return [];
  const row = { ...shared, measured: status === "measured", wrong: false };
  if (!shims.known)
    return [
      { ...row, name: "with shims", band: undefined, words: notKnown(shims) },
    ];
  const { sum, float } = shims.value;
  if (sum === 0) return [];
  const list = shims.value.shims
    .map((each) => lengthDigits(each, system))
    .join(" + ");
  return [
    {
      ...row,
      name: `with shims ${list}`,
      band: float,
      words: `${showRange(float.low, float.high, system)} at worst, ${status}, as wanted`,
    },
  ];
}

function caseName({ kind, bodies }: FloatCase, system: System): string {
  const at = (["shaft", "case"] as const).flatMap((body) => {
    const temperature = bodies?.[body];
    return temperature === undefined
      ? []
      : [`${body} ${showTemperature(temperature, system)}`];
  });
  return at.length === 0 ? kind : `${kind} (${at.join(", ")})`;
}
