// What a command may touch of the world: streams, the folder it stands in, the environment. The process gives the real ones (main.ts), a
// test its own. It also holds how a command ends: an exit code, or a sentence why it could not run.
import picocolors from "picocolors";
import type { Project } from "../rules/check.ts";
import type { Thread } from "./crew.ts";

export interface Output {
  write(text: string): void;
  /** Resolves once what was written is on its way: for those who write without end. */
  drained(): Promise<void>;
  readonly isTerminal: boolean;
  /** Columns of the terminal; undefined where there is none. */
  readonly columns: number | undefined;
  /** True once nobody reads any more: what is written then goes nowhere. */
  readonly isClosed: boolean;
}

/** Stands for standard input where a path would be. */
export const STANDARD_INPUT = "-";

export interface Io {
  readonly stdin: AsyncIterable<Uint8Array | string>;
  readonly stdout: Output;
  readonly stderr: Output;
  /** The folder that relative paths start from. */
  readonly cwd: string;
  readonly env: Readonly<Record<string, string | undefined>>;
}

/** As much of a project as a check or a sheet needs. */
export type CheckedProject = Pick<
  Project,
  | "setFile"
  | "dropFile"
  | "close"
  | "missingUses"
  | "restsOn"
  | "open"
  | "check"
>;

/** What the commands are given to work with. */
export interface Parts {
  readonly createProject: () => CheckedProject;
  /** The page of each finding, by its code. */
  readonly pages: Readonly<Record<string, string>>;
  /** Where the bundled language server lies. */
  readonly serverFile: string;
  /** The bundled command itself; none where it is no bundle. */
  readonly commandFile?: string;
  /** Starts a thread that checks records; none where the command is no bundle. */
  readonly startThread?: () => Thread;
  /** How many threads the machine has room for. */
  readonly cores?: number;
}

/** 0: as wished. 1: some finding, some change, some error in what was asked. 2: it could not run, or not on all of it. */
export type ExitCode = 0 | 1 | 2;

export interface Context {
  readonly io: Io;
  readonly parts: Parts;
  /** The highest code that is given stands. */
  readonly exitWith: (code: ExitCode) => void;
}

/** Ends a command: its message is one sentence for the user, with the way out. */
export class CannotRun extends Error {
  override readonly name = "CannotRun";
}

const USUAL_COLUMNS = 100;
const LEAST_COLUMNS = 40;

/** Past so many columns an eye loses the line that it reads. */
const MOST_COLUMNS_OF_PROSE = 100;

/** The width to write whole paragraphs for. */
export function columnsForProse(output: Output): number {
  return Math.min(columnsOf(output), MOST_COLUMNS_OF_PROSE);
}

/** The width to write for. */
export function columnsOf(output: Output): number {
  return Math.max(LEAST_COLUMNS, output.columns ?? USUAL_COLUMNS);
}

export type Paint = ReturnType<typeof picocolors.createColors>;

/** Colours where the terminal has them; NO_COLOR goes before FORCE_COLOR, and both before the look at the terminal. */
export function paintFor(output: Output, env: Io["env"]): Paint {
  return picocolors.createColors(hasColours(output, env));
}

export function hasColours(output: Output, env: Io["env"]): boolean {
  const { NO_COLOR = "", FORCE_COLOR = "", TERM = "" } = env;
  if (NO_COLOR !== "") return false;
  if (FORCE_COLOR !== "") return FORCE_COLOR !== "0" && FORCE_COLOR !== "false";
  return output.isTerminal && TERM !== "dumb";
}

/** What is written to a file is not written to one that is called `-`, which stands for the standard streams. */
export function refuseDash(option: string, file: string, way: string): void {
  if (file === STANDARD_INPUT)
    throw new CannotRun(`${option} takes a file, and - is none: ${way}.`);
}
