// Writes the record of a new job, and the crib that it begins, in the canonical layout. Everything comes in as answers that were read; nothing
// here is asked or guessed.
import type { NewJobFiles } from "../../protocol/guide.ts";
import { freeName, quotedText } from "./names.ts";
import type { NewJob } from "./questions.ts";
import type { Seat } from "./seats.ts";
import { gaugeEntries, reamerEntries } from "./shelf.ts";
import { wantText } from "./wanted.ts";

export interface Place {
  /** The names of the files in the folder; null where all goes into one file. */
  readonly names: readonly string[] | null;
  /** The crib's name as it stands in the folder; null where there is none yet. */
  readonly crib: string | null;
  readonly today: string;
}

type Block = readonly string[];

/** The files of a new job, none with a name that is there already, and where the first reading is wanted. */
export function writeNewJob(
  job: NewJob,
  { names, crib, today }: Place,
): NewJobFiles {
  const name = freeName(job.name, names ?? []);
  const shelf = shelfBlocks(job);
  const isApart = names !== null;
  const uses = isApart ? (crib ?? "crib.thou") : undefined;
  const blocks = [
    headBlock(job, name, uses, today),
    ...partBlocks(job),
    ...job.seats.map((seat) => journalBlock(job, seat)),
    ...job.seats.flatMap((seat) => bushBlocks(job, seat)),
    ...job.seats.map((seat) => boreBlock(job, seat)),
    ...bushed(job).map(({ name: of }) => [
      `press ${of} of bush ${of} in hole ${of}`,
    ]),
    ...job.seats.map((seat) => fitBlock(job, seat)),
    ...(job.isReamed ? [lineBlock(job)] : []),
    ...stepBlocks(job),
    ...(isApart ? [] : shelf),
  ];
  const text = textOf(blocks);
  const files = [{ name: `${name}.thou`, text }];
  if (isApart && crib === null)
    files.push({
      name: "crib.thou",
      text: `# What hangs on the wall, with what is known of it: add each gauge's uncertainty from its certificate, and readings of each reamer.\n${textOf([["shop crib", `  units ${job.system}`], ...shelf])}`,
    });
  return { files, caret: caretIn(text, job) };
}

function textOf(blocks: readonly Block[]): string {
  return `${blocks.map((lines) => lines.join("\n")).join("\n\n")}\n`;
}

/** The end of the first journal's opening line. */
function caretIn(text: string, { seats, shaft }: NewJob): NewJobFiles["caret"] {
  const head = `journal ${seats[0]?.name ?? ""} on ${shaft.name}`;
  return {
    line: Math.max(0, text.split("\n").indexOf(head)),
    character: head.length,
  };
}

function headBlock(
  { title, system }: NewJob,
  name: string,
  uses: string | undefined,
  today: string,
): Block {
  return [
    `job ${name}`,
    `  title ${quotedText(title)}`,
    `  units ${system}`,
    ...(uses === undefined ? [] : [`  use "${uses}"`]),
    `  opened ${today}`,
  ];
}

function partBlocks({ shaft, host }: NewJob): readonly Block[] {
  const material = (of: string | undefined): Block =>
    of === undefined ? [] : [`  material ${of}`];
  return [
    [`part ${shaft.name}`, ...material(shaft.material)],
    [
      `part ${host.name}`,
      ...material(host.material),
      ...(host.split === undefined ? [] : [`  split ${host.split}`]),
    ],
  ];
}

function bushed({ seats }: NewJob): readonly Seat[] {
  return seats.filter(({ bush }) => bush !== "none");
}

function journalBlock({ shaft }: NewJob, { name, size }: Seat): Block {
  return [`journal ${name} on ${shaft.name}`, `  nominal ${size.text}`];
}

function bushBlocks(
  job: NewJob,
  { name, bush, depth, length }: Seat,
): readonly Block[] {
  if (bush === "none") return [];
  const hole =
    bush === "through"
      ? ["  depth through"]
      : [
          depth === undefined
            ? '  note "Blind: its depth is to be measured"'
            : `  depth ${depth.text} blind`,
          ...(bush === "vented" ? ["  vented"] : []),
        ];
  return [
    [`hole ${name} in ${job.host.name}`, ...hole],
    [
      `bush ${name} in hole ${name}`,
      ...(job.bushMaterial === undefined
        ? []
        : [`  material ${job.bushMaterial}`]),
      `  length ${length.text}`,
    ],
  ];
}

function boreBlock({ host }: NewJob, { name, bush, length }: Seat): Block {
  return bush === "none"
    ? [`bore ${name} in part ${host.name}`, `  length ${length.text}`]
    : [`bore ${name} in bush ${name}`];
}

function fitBlock({ want, system }: NewJob, { name, size }: Seat): Block {
  const text = wantText(want, size, system);
  return [
    `fit ${name} of journal ${name} in bore ${name}`,
    ...(text === undefined ? [] : [`  want ${text}`]),
  ];
}

function lineBlock({ shaft, seats, system }: NewJob): Block {
  const unit = system === "inch" ? 0.0254 : 0.001;
  return [
    `line ${shaft.name}`,
    ...seats.map(({ name, from, length }) => {
      const to = String(
        Number(((from.metres + length.metres) / unit).toFixed(6)),
      );
      return `  bore ${name} from ${from.text} to ${to}`;
    }),
  ];
}

function stepBlocks(job: NewJob): readonly Block[] {
  const bushes = bushed(job);
  const list = (kind: string, of: readonly Seat[]): string =>
    of.map(({ name }) => `${kind} ${name}`).join(", ");
  const blocks: Block[] = [];
  let after: string | undefined;
  const add = (name: string, ...facts: readonly string[]): void => {
    blocks.push([
      `step ${name}`,
      ...(after === undefined ? [] : [`  after ${after}`]),
      ...facts,
    ]);
    after = name;
  };
  if (0 < bushes.length) add("press-in", `  presses ${list("press", bushes)}`);
  if (job.isReamed) add("ream", `  cuts line ${job.shaft.name}`);
  add("dry-fit", `  checks ${list("fit", job.seats)}`);
  return blocks;
}

function shelfBlocks({
  gauges,
  set,
  reamers,
  seats,
  system,
}: NewJob): readonly Block[] {
  return [
    ...gaugeEntries(gauges, system, set),
    ...reamerEntries(
      reamers,
      seats.map(({ size }) => size),
      system,
    ),
  ];
}
