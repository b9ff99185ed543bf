// What a check by the bundled command holds at its end: a script that is required before it tells.
import { writeFile } from "node:fs/promises";
import path from "node:path";
import { expect } from "vitest";
import { bundledCommand, runEngine } from "./bundled-command.ts";

/** Says on standard error, as the last record is written, what is in use once all that is let go of is collected. */
const LIVE = `
const { stdout } = process;
const write = stdout.write.bind(stdout);
let left = Number(process.env.THOU_RECORDS);
stdout.write = (text, ...more) => {
  if (text.startsWith('{"file"') && --left === 0) {
    gc();
    gc();
    const { heapUsed, external } = process.memoryUsage();
    process.stderr.write(String(heapUsed + external));
  }
  return write(text, ...more);
};`;

/** Gives what checks so many records as JSON, and says how many bytes are then in use. @param words besides those that ask for JSON */
export async function liveCheck(): Promise<
  (
    records: number,
    cwd: string,
    words: readonly string[],
    env?: Readonly<Record<string, string>>,
  ) => Promise<number>
> {
  const { folder, command } = await bundledCommand();
  const live = path.join(folder, "live.cjs");
  await writeFile(live, LIVE);
  return async (records, cwd, words, env = {}) => {
    const { code, err } = await runEngine(
      [
        ...["--expose-gc", "--require", live, command],
        ...["check", "--format", "json", ...words],
      ],
      cwd,
      { ...env, THOU_RECORDS: String(records) },
    );
    expect([code, err]).toEqual([0, expect.stringMatching(/^\d+$/u)]);
    return Number(err);
  };
}
