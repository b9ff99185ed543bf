// One export at a time: a file in the archive that says who is at work. One that was left by a killed export is told from one that holds.
import { randomUUID } from "node:crypto";
import { link, readFile, rename, rm, writeFile } from "node:fs/promises";
import { hostname, uptime } from "node:os";
import path from "node:path";
import { shown } from "../model/plain-text.ts";
import { codeOf } from "../why-not.ts";
import { ArchiveFault } from "./fault.ts";
import { LOCK } from "./layout.ts";

/** Who holds an archive. */
export interface Holder {
  readonly pid: number;
  readonly host: string;
  /** ISO 8601, UTC. */
  readonly since: string;
  /** Tells two exports of one process apart. */
  readonly id: string;
}

export interface Lock {
  release(): Promise<void>;
}

/** Texts of the locks that this process has. */
const held = new Set<string>();

/** Takes the archive for this process, or says who has it. @param name the folder as the user knows it */
export async function takeLock(folder: string, name: string): Promise<Lock> {
  const at = path.join(folder, LOCK);
  const own = `${at}.${randomUUID()}`;
  const holder: Holder = {
    pid: process.pid,
    host: hostname(),
    since: new Date().toISOString(),
    id: randomUUID(),
  };
  const text = `${JSON.stringify(holder)}\n`;
  try {
    await writeFile(own, text);
    // a second try only after a stale one was taken away
    for (let tries = 0; tries < 2; tries++) {
      if (await isTaken(own, at, text)) {
        held.add(text);
        return {
          async release() {
            held.delete(text);
            if ((await textOf(at)) === text) await rm(at, { force: true });
          },
        };
      }
      const other = await textOf(at);
      if (other === undefined) continue;
      if (!isStale(other)) throw heldBy(other, name);
      await takeAway(at, other, own);
    }
    throw heldBy((await textOf(at)) ?? "", name);
  } finally {
    await rm(own, { force: true });
  }
}

/** True where the file is made with its text in one go; false where it is there already. */
async function isTaken(
  own: string,
  at: string,
  text: string,
): Promise<boolean> {
  try {
    await link(own, at);
    return true;
  } catch (error) {
    if (codeOf(error) === "EEXIST") return false;
  }
  // a disk without links: the file is there for a moment before its text is
  try {
    await writeFile(at, text, { flag: "wx" });
    return true;
  } catch (error) {
    if (codeOf(error) === "EEXIST") return false;
    throw error;
  }
}

async function textOf(at: string): Promise<string | undefined> {
  try {
    return await readFile(at, "utf8");
  } catch (error) {
    if (codeOf(error) === "ENOENT") return undefined;
    throw error;
  }
}

/** Moves a stale lock away, unless another export has put its own in that place since. */
async function takeAway(at: string, stale: string, own: string): Promise<void> {
  const aside = `${own}.stale`;
  try {
    await rename(at, aside);
  } catch (error) {
    if (codeOf(error) === "ENOENT") return;
    throw error;
  }
  // what was moved is another's that came in between: it gets it back
  if ((await textOf(aside)) !== stale)
    await link(aside, at).catch(() => undefined);
  await rm(aside, { force: true });
}

/** Left behind: by a process of this machine that is no more, or from before the machine started. One of another machine never counts so. */
function isStale(text: string): boolean {
  const holder = holderIn(text);
  if (holder?.host !== hostname()) return false;
  // a process that had this one's number before it
  if (holder.pid === process.pid) return !held.has(text);
  // a minute's grace: the clock may have been set
  const started = Date.now() - uptime() * 1000;
  if (Date.parse(holder.since) < started - 60_000) return true;
  try {
    process.kill(holder.pid, 0);
    return false;
  } catch (error) {
    return codeOf(error) === "ESRCH";
  }
}

function holderIn(text: string): Holder | undefined {
  try {
    const value = JSON.parse(text) as Partial<Holder> | null; // each key is looked at below
    return typeof value?.pid === "number" &&
      Number.isInteger(value.pid) &&
      0 < value.pid &&
      typeof value.host === "string" &&
      typeof value.since === "string"
      ? {
          pid: value.pid,
          host: value.host,
          since: value.since,
          id: String(value.id),
        }
      : undefined;
  } catch {
    return undefined;
  }
}

/** To the minute: what was written there by others is shown as it is. */
function minuteOf(since: string): string {
  const [, day, time] = /^(\d{4}-\d\d-\d\d)T(\d\d:\d\d)/u.exec(since) ?? [];
  return day === undefined || time === undefined
    ? shown(since)
    : `${time} UTC on ${day}`;
}

function heldBy(text: string, name: string): ArchiveFault {
  const holder = holderIn(text);
  const who =
    holder === undefined
      ? "another export"
      : `another export (process ${holder.pid} on ${shown(holder.host)}, since ${minuteOf(holder.since)})`;
  return new ArchiveFault(
    `${who} is at work on ${shown(name)}: wait until it is done. If you know that it is not running any more, remove ${shown(path.join(name, LOCK))} and try again.`,
  );
}
