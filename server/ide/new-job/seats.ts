// Asks for each place where the shaft of a new job runs: its name and sizes, the bush in it, where it lies.
import type { System } from "../../core/quantity/show.ts";
import { askOne, askText, choice, type Interview } from "../interview.ts";
import { readName } from "./names.ts";
import { LONGEST_SHAFT, otherwiseMeant, readSize, type Size } from "./sizes.ts";

/** Over every question of a new job. */
export const TITLE = "New job";
const MOST_SEATS = 12;

export interface Seat {
  readonly name: string;
  /** Nominal diameter of the journal. */
  readonly size: Size;
  readonly length: Size;
  /** From the mouth of the first bore to this one's. */
  readonly from: Size;
  readonly bush: "through" | "vented" | "unvented" | "none";
  /** Depth of a blind hole, where it is known. */
  readonly depth: Size | undefined;
}

const USUAL_NAMES = ["front", "rear", "middle"];
const USUAL_SIZE: Readonly<Record<System, string>> = { inch: "1", mm: "25" };

/** Each place where the shaft runs, until that is all. */
export function* askSeats(
  system: System,
  host: string,
): Interview<readonly Seat[]> {
  const seats: Seat[] = [];
  for (;;) {
    const number = seats.length + 1;
    const seat = yield* askSeat(number, seats, system, host);
    seats.push(seat);
    if (MOST_SEATS <= seats.length) return seats;
    const more = yield* askOne(
      {
        key: `more ${String(number)}`,
        title: TITLE,
        about: "Does the shaft run anywhere else?",
      },
      [
        choice("no", "No, that is all", { picked: true }),
        choice("yes", "Yes, one more"),
      ],
    );
    if (more === "no") return seats;
  }
}

/** How a question about one seat is headed. */
type About = (
  key: string,
  question: string,
) => { readonly key: string; readonly title: string; readonly about: string };

function* askSeat(
  number: number,
  before: readonly Seat[],
  system: System,
  host: string,
): Interview<Seat> {
  const last = before.at(-1);
  const about: About = (key, question) => ({
    key: `${key} ${String(number)}`,
    title: `${TITLE}, bore ${String(number)}`,
    about: question,
  });
  const length = (text: string) => readSize(text, system);
  const name = yield* askName(about, number, before);
  const unit = unitWord(system);
  const size = yield* askDiameter(about, name, last, system);
  const bush = yield* askBush(about, name, host, last?.bush);
  const isBlind = bush === "vented" || bush === "unvented";
  const depth = isBlind
    ? yield* askText(
        about(
          "depth",
          `How deep is the hole of ${name}, in ${unit}? Leave it empty until it is measured.`,
        ),
        "",
        (text) => (text === "" ? { value: undefined } : length(text)),
      )
    : undefined;
  const long = yield* askText(
    about(
      "length",
      `How long is ${bush === "none" ? "bore" : "the bush of"} ${name}, in ${unit}? The figure offered is only its diameter: write its own length.`,
    ),
    last?.length.text ?? size.text,
    length,
  );
  const from =
    last === undefined
      ? { text: "0", metres: 0 }
      : yield* askText(
          about(
            "from",
            `How far from the mouth of bore ${before[0]?.name ?? ""} does bore ${name} begin, in ${unit}? The figure offered is only a stand-in: write what it is.`,
          ),
          farther(last, system),
          (text) => startAfter(text, last, system),
        );
  return { name, size, length: long, from, bush, depth };
}

function unitWord(system: System): string {
  return system === "inch" ? "inches" : "millimetres";
}

function askName(
  about: About,
  number: number,
  before: readonly Seat[],
): Interview<string> {
  const taken = before.map(({ name }) => name);
  const usual =
    USUAL_NAMES.find((each) => !taken.includes(each)) ??
    `bore-${String(number)}`;
  return askText(
    about(
      "seat",
      number === 1
        ? "Where does the shaft run? A name for its journal and its bore."
        : "Where else does the shaft run?",
    ),
    usual,
    (text) =>
      /[,;&+]| and /iu.test(text)
        ? {
            fault:
              "One place at a time, such as front: the next one is asked after it.",
          }
        : readName(text, "a bore", taken),
  );
}

/** @param last that of the seat before */
function* askBush(
  about: About,
  name: string,
  host: string,
  last: Seat["bush"] | undefined,
): Interview<Seat["bush"]> {
  return (yield* askOne(about("bush", `What does journal ${name} run in?`), [
    choice("through", "A bush, in a hole that goes through", {
      picked: last === undefined || last === "through",
    }),
    choice("vented", "A bush, in a blind hole with a vent", {
      picked: last === "vented",
    }),
    choice("unvented", "A bush, in a blind hole without a vent", {
      below: "A bush driven in traps air and oil behind it: you will be told",
      picked: last === "unvented",
    }),
    choice("none", `Straight in the ${host}, without a bush`, {
      picked: last === "none",
    }),
  ])) as Seat["bush"]; // the four that are offered
}

/** A diameter; one without a unit that is seldom in the job's own is asked about, unless the bore before has it too. */
function* askDiameter(
  about: About,
  name: string,
  last: Seat | undefined,
  system: System,
): Interview<Size> {
  const unit = unitWord(system);
  const offered = last?.size.text ?? USUAL_SIZE[system];
  const { size, doubt } = yield* askText(
    about(
      "size",
      `What is the nominal diameter of journal ${name}, in ${unit}?`,
    ),
    offered,
    (text) => {
      const read = readSize(text, system);
      return "fault" in read
        ? read
        : {
            value: {
              size: read.value,
              doubt:
                text === last?.size.text
                  ? undefined
                  : otherwiseMeant(text, system),
            },
          };
    },
  );
  if (doubt === undefined) return size;
  const meant = yield* askOne(
    about(
      "unit",
      `This job is in ${unit}, and ${doubt.typed} is ${system === "inch" ? "large" : "small"} for a journal. Which is it?`,
    ),
    [
      choice("other", doubt.meant, { picked: true }),
      choice("own", doubt.typed),
    ],
  );
  return meant === "own" ? size : doubt.size;
}

/** Four lengths on, to be written over. */
function farther({ from, length }: Seat, system: System): string {
  const metres = from.metres + 5 * length.metres;
  const unit = system === "inch" ? 0.0254 : 0.001;
  return String(Number((metres / unit).toFixed(3)));
}

function startAfter(text: string, last: Seat, system: System) {
  const read = readSize(text, system, LONGEST_SHAFT);
  if ("fault" in read) return read;
  const end = last.from.metres + last.length.metres;
  return end <= read.value.metres
    ? read
    : {
        fault: `Bore ${last.name} reaches farther than that: give the bores in their order along the shaft.`,
      };
}
