// Asks what a new job is: its name, its parts, each place where the shaft runs, the clearance that is wanted, what hangs on the shelf. What is
// written of it is writer.ts's.
import { materials, type Family } from "../../core/materials/material.ts";
import type { System } from "../../core/quantity/show.ts";
import type { Choice } from "../../protocol/guide.ts";
import {
  askMany,
  askOne,
  askText,
  choice,
  type Interview,
} from "../interview.ts";
import { freeName, readName } from "./names.ts";
import { readSize, type Size } from "./sizes.ts";
import { askSeats, TITLE, type Seat } from "./seats.ts";
import {
  COMPARATOR,
  gaugeChoices,
  reamerChoices,
  setChoices,
} from "./shelf.ts";
import { readWant, wantChoices, type Want } from "./wanted.ts";

export interface NewJob {
  readonly name: string;
  readonly title: string;
  readonly system: System;
  readonly shaft: Part;
  readonly host: Part & { readonly split: "along" | "across" | undefined };
  readonly bushMaterial: string | undefined;
  readonly seats: readonly Seat[];
  readonly isReamed: boolean;
  readonly want: Want;
  /** Names of the starter set; empty where there is a crib. */
  readonly gauges: readonly string[];
  /** What the bore gauge is set on, as its entry writes it; undefined where nobody said, or none is there. */
  readonly set: string | undefined;
  readonly reamers: readonly string[];
}

export interface Part {
  readonly name: string;
  readonly material: string | undefined;
}

export interface Known {
  /** The names of the files in the folder. */
  readonly names: readonly string[];
  /** The folder has a crib: what hangs on the shelf stands there. */
  readonly hasCrib: boolean;
  /** The unit of that crib. */
  readonly system: System | undefined;
}

export function* newJobQuestions(known: Known): Interview<NewJob> {
  const { name, title } = yield* askName(known.names);
  const system = yield* askSystem(known.system);
  const shaft = yield* askPart("shaft", "shaft", SHAFTS, []);
  const host = yield* askPart("case", "case", CASES, [shaft.name]);
  const split = yield* askSplit(host.name);
  const seats = yield* askSeats(system, host.name);
  const hasBush = seats.some(({ bush }) => bush !== "none");
  const bushMaterial = hasBush
    ? yield* askMaterial("bush", "What are the bushes made of?", BUSHES)
    : undefined;
  const isReamed = yield* askReamed(seats.length, hasBush);
  const sizes = seats.map(({ size }) => size);
  const want = yield* askWant(sizes, system);
  const gauges = known.hasCrib
    ? []
    : yield* askMany(
        about("gauges", "Which gauges are at hand? Down and Space tick one."),
        gaugeChoices(system),
      );
  const set = gauges.includes(COMPARATOR)
    ? yield* askSet(gauges, system)
    : undefined;
  const reamers =
    known.hasCrib || !isReamed
      ? []
      : yield* askMany(
          about(
            "reamers",
            "Which reamers are at hand? Down and Space tick one.",
          ),
          reamerChoices(sizes, system),
        );
  return {
    name,
    title,
    system,
    shaft,
    host: { ...host, split },
    bushMaterial,
    seats,
    isReamed,
    want,
    gauges,
    set,
    reamers,
  };
}

/** How a question of a new job is headed. */
function about(key: string, question: string) {
  return { key, title: TITLE, about: question };
}

/** The words that the job is known by, and the name that is made of them. */
function askName(
  names: readonly string[],
): Interview<Pick<NewJob, "name" | "title">> {
  return askText(
    about(
      "name",
      "What is the job? A few words, such as Winch 3 layshaft rebush.",
    ),
    freeName("new-job", names),
    (text) => {
      const read = readName(text, "a job");
      return "fault" in read
        ? read
        : { value: { name: read.value, title: text } };
    },
  );
}

/** @param usual the unit of the crib, where there is one */
function* askSystem(usual: System | undefined): Interview<System> {
  return (yield* askOne(about("units", "Which unit are its lengths in?"), [
    choice("inch", "Inches", { picked: usual !== "mm" }),
    choice("mm", "Millimetres", { picked: usual === "mm" }),
  ])) as System; // the two that are offered
}

function* askSplit(host: string): Interview<NewJob["host"]["split"]> {
  const split = yield* askOne(about("split", `Is the ${host} in one piece?`), [
    choice("", "In one piece", { picked: true }),
    choice("across", "In halves, parted across the axis of its bores"),
    choice("along", "In halves, parted along the axis of its bores", {
      below:
        "The joint parts the ring round a bush: how far its bore closes is then not worked out",
    }),
  ]);
  return split === "along" || split === "across" ? split : undefined;
}

/** Whether the bores, or the bushes in them, are reamed here. */
function* askReamed(seats: number, hasBush: boolean): Interview<boolean> {
  const cut = yield* askOne(
    about(
      "cut",
      hasBush
        ? "How do the bushes come to size?"
        : "How do the bores come to size?",
    ),
    [
      choice(
        "reamed",
        seats === 1
          ? "Reamed in place"
          : "Reamed in place, all in line with one reamer",
        { picked: true },
      ),
      choice(
        "not",
        hasBush
          ? "They come to size: nothing is cut here"
          : "They are finished: nothing is cut here",
      ),
    ],
  );
  return cut === "reamed";
}

/** A bore gauge shows how far a size is from what it was set on: only whoever sets it knows that. */
function* askSet(
  gauges: readonly string[],
  system: System,
): Interview<string | undefined> {
  const given = yield* askOne(
    about("set", `What is ${COMPARATOR}, the bore gauge, set on?`),
    setChoices(gauges),
  );
  if (given !== "ring") return given === "" ? undefined : given;
  const ring = yield* askText(
    about("ring", "What size is marked on the ring?"),
    "",
    (text) => readSize(text, system),
  );
  return `on ring ${ring.text}`;
}

function* askPart(
  key: string,
  usual: string,
  families: readonly Family[],
  taken: readonly string[],
): Interview<Part> {
  const name = yield* askText(
    about(
      key,
      key === "shaft"
        ? "What is the shaft called?"
        : "What is the part called that the shaft runs in?",
    ),
    usual,
    (text) => readName(text, "a part", taken),
  );
  const material = yield* askMaterial(
    key,
    `What is the ${name} made of?`,
    families,
  );
  return { name, material };
}

const SHAFTS: readonly Family[] = ["steel", "stainless", "iron", "bronze"];
const CASES: readonly Family[] = [
  "iron",
  "aluminium",
  "steel",
  "stainless",
  "bronze",
];
const BUSHES: readonly Family[] = ["bronze", "brass", "iron"];

function* askMaterial(
  key: string,
  question: string,
  families: readonly Family[],
): Interview<string | undefined> {
  const offered: readonly Choice[] = families.flatMap((family) =>
    materials
      .filter((each) => each.family === family)
      .map(({ name, what }) => choice(name, name, { beside: what })),
  );
  const given = yield* askOne(about(`${key} material`, question), [
    choice("", "Not known yet", {
      below: "What hangs on it stays unknown until the record says it",
      picked: true,
    }),
    ...offered,
  ]);
  return given === "" ? undefined : given;
}

function* askWant(sizes: readonly Size[], system: System): Interview<Want> {
  const given = yield* askOne(
    about("want", "Which clearance is wanted, on diameter?"),
    wantChoices(sizes, system),
  );
  if (given === "numbers")
    return yield* askText(
      about("want numbers", "The least and the most clearance on diameter."),
      "",
      (text) => readWant(text, system),
    );
  if (given === "shop-rule" || given === "later") return { kind: given };
  return { kind: "class", word: given.replace(/^class /u, "") };
}
