// `thou limits`: the limits of size of classes, as many as are asked. The standards are core/fits'; here words are read.
import { Option, type Command } from "commander";
import {
  classWord,
  classZones,
  parseClass,
  type FitClass,
} from "../core/fits/class-words.ts";
import type { Zone } from "../core/fits/limits.ts";
import {
  readNumber,
  tenthsToMetres,
  toTenths,
} from "../core/quantity/exact.ts";
import { unitOf } from "../core/quantity/units.ts";
import { isPair, pairIn } from "./limits-pair.ts";
import { jsonWriter, textWriter, type Answer } from "./limits-writers.ts";
import { STANDARD_INPUT, CannotRun, type Context, type Io } from "./io.ts";

type Form = "text" | "json";

export function addLimits(program: Command, context: Context): void {
  program
    .command("limits")
    .summary("limits of size of classes such as H7 or RC4")
    .description(
      "Says the limits of size of ISO 286 and ANSI B4.1 classes. A size without a unit is in mm for ISO 286 and in inches for B4.1. A fit, and " +
        "every class of B4.1, gives its hole, then its shaft. A measured pair, hole/shaft and a unit, gives the fits that it comes nearest to. - reads one a " +
        "line from standard input.",
    )
    .argument(
      "<classes...>",
      "a size and a class, or a measured pair, each in quotes",
    )
    .addOption(
      new Option("--format <form>", "how to write it")
        .choices(["text", "json"])
        .default("text"),
    )
    .addHelpText(
      "after",
      `
Exit code:
  0  every one has its limits
  1  at least one has none: the answer in its place says why
  2  it could not run

Examples:
  thou limits "25 H7" "25 mm H7/f7"
  thou limits "0.875 RC4" "7/8 in H7"
  thou limits "25.013/24.981 mm" "0.8752 to 0.8754 / 0.8743 in"
  thou limits --format json - < classes.txt`,
    )
    .action(
      async (asked: readonly string[], options: { readonly format: Form }) => {
        await limits(asked, options.format, context);
      },
    );
}

async function limits(
  asked: readonly string[],
  form: Form,
  { io, exitWith }: Context,
): Promise<void> {
  if (1 < asked.filter((each) => each === STANDARD_INPUT).length)
    throw new CannotRun("Standard input (-) can be read only once.");
  const writer = form === "json" ? jsonWriter(io) : textWriter(io);
  let failed = false;
  try {
    for await (const batch of batches(asked, io)) {
      const answers = batch.flatMap(answersTo);
      failed ||= answers.some((answer) => "error" in answer);
      writer.batch(answers);
      await io.stdout.drained();
      if (io.stdout.isClosed) break;
    }
  } finally {
    // what was answered before the input broke off is whole
    writer.end();
  }
  if (failed) exitWith(1);
}

/** What was asked, as it comes: standard input a piece at a time, so that a long list starts to be answered at once. */
async function* batches(
  asked: readonly string[],
  io: Io,
): AsyncGenerator<readonly string[]> {
  const at = asked.indexOf(STANDARD_INPUT);
  yield at === -1 ? asked : asked.slice(0, at);
  if (at === -1) return;
  yield* linesOf(io.stdin);
  yield asked.slice(at + 1);
}

async function* linesOf(stdin: Io["stdin"]): AsyncGenerator<readonly string[]> {
  const decoder = new TextDecoder("utf-8", { fatal: true });
  let rest = "";
  const decode = (chunk: Uint8Array | undefined): string => {
    try {
      return chunk === undefined
        ? decoder.decode()
        : decoder.decode(chunk, { stream: true });
    } catch {
      throw new CannotRun(
        "Standard input cannot be read: it is not UTF-8; save it as UTF-8.",
      );
    }
  };
  const isAsked = (line: string): boolean => line.trim() !== "";
  for await (const chunk of stdin) {
    const lines = (rest + decode(Buffer.from(chunk))).split(/\r\n|\n|\r(?!$)/);
    rest = lines.pop() ?? "";
    yield lines.filter(isAsked);
  }
  yield (rest + decode(undefined)).split(/[\r\n]+/).filter(isAsked);
}

const SIZE = /^[+\u{2212}-]?(?:\d+[ -]+\d+\/\d+|\d+\/\d+|[\d.,]+)/u;

/** Every answer to one line: a class of one feature has one, a fit two. */
function answersTo(line: string): readonly Answer[] {
  const asked = line.trim();
  const refuse = (error: string): readonly Answer[] => [{ asked, error }];
  if (isPair(asked)) {
    const pair = pairIn(asked);
    return pair.valid ? [{ asked, pair: pair.value }] : refuse(pair.because);
  }
  const written = SIZE.exec(asked)?.[0];
  const words = asked
    .slice(written?.length ?? 0)
    .trim()
    .replace(/\s*\/\s*/g, "/")
    .split(/\s+/);
  const code = words.at(-1) ?? "";
  if (written === undefined || code === "")
    return refuse(
      'it takes a size and a class, together in quotes, as in "25 H7" or "0.875 in RC4"',
    );
  const read = readClass(code, words);
  if (!read.valid) return refuse(read.because + didYouMean(read.near));
  const unitWord = words.slice(0, -1).join(" ");
  if (words.slice(0, -1).some((word) => parseClass(word).valid))
    return refuse("a fit is one word, its hole first, as in 25 mm H7/f7");
  const unit = unitOf(unitWord === "" ? OWN_UNIT[read.value.system] : unitWord);
  if (unit?.tenths === undefined)
    return refuse(`${unitWord} is no unit of length: write mm or in`);
  const number = readNumber(written);
  if (number === undefined)
    return refuse(
      `${written} is no number${didYouMean(written.includes(",") ? [written.replace(",", ".")] : [])}`,
    );
  // 7/8 mm is nobody's size, and its limits would be taken for those of 7/8 in
  if (unitWord === "" && read.value.system === "iso" && written.includes("/"))
    return refuse(
      `a size without a unit is in mm for ISO 286, and a fraction is not: write ${written} in ${code}`,
    );
  const size = tenthsToMetres(toTenths(number, unit.tenths));
  const zones = classZones(size, read.value);
  if (!zones.valid)
    return refuse(
      zones.because +
        (unitWord === "" && read.value.system === "inch" && 0 < size
          ? `; a size without a unit is in inches for it: for millimetres write ${written} mm ${code}`
          : ""),
    );
  return zones.value.map((zone) => ({
    asked,
    zone,
    size,
    code: codeOf(read.value, zone),
    unit,
  }));
}

/** A bare size is in the unit of the class's standard. */
const OWN_UNIT: Readonly<Record<FitClass["system"], string>> = {
  iso: "mm",
  inch: "in",
};

/** The last word is the class, unless it is none and all words together come nearer to one: `H 7`. */
function readClass(
  code: string,
  words: readonly string[],
): ReturnType<typeof parseClass> {
  const read = parseClass(code);
  if (read.valid || words.length < 2) return read;
  const whole = parseClass(words.join(" "));
  return 0 < read.near.length || whole.valid || whole.near.length === 0
    ? read
    : whole;
}

function didYouMean(near: readonly string[]): string {
  const [first, second] = near;
  if (first === undefined) return "";
  return second === undefined
    ? `; did you mean ${first}?`
    : `; did you mean ${first} or ${second}?`;
}

/** The part of a fit that a zone is of; an inch class names both parts. */
function codeOf(fitClass: FitClass, zone: Zone): string {
  if (fitClass.system === "inch" || fitClass.feature !== "fit")
    return classWord(fitClass);
  return classWord(zone.feature === "hole" ? fitClass.hole : fitClass.shaft);
}
