// What waits in a spool comes back as it was, however much it is and whether or not there is room for a file of it.
import { readdir } from "node:fs/promises";
import path from "node:path";
import { describe, expect, test } from "vitest";
import { createSpool } from "../../server/cli/spool.ts";
import { folderWith } from "./in-process.ts";

/** Lines of all lengths, about three megabytes: some of them with characters of several bytes, which the ends of what is read at a time cut. */
const LINES = Array.from(
  { length: 3000 },
  (_, at) => `${at} ${"µ€🔩".repeat(at % 240)}${at % 7 === 0 ? "" : "."}`,
).concat("long ".repeat(500_000), "", "last");

describe("a spool", () => {
  test("gives back every line in its order, and leaves no file", async () => {
    const folder = await folderWith({});
    const spool = createSpool(folder);
    for (const line of LINES) spool.add(line);
    expect([...spool.lines()]).toEqual(LINES);
    expect(await readdir(folder)).toEqual([]);
  });

  test("leaves no file where not all is read", async () => {
    const folder = await folderWith({});
    const spool = createSpool(folder);
    for (const line of LINES) spool.add(line);
    for (const line of spool.lines()) {
      expect(line).toBe(LINES[0]);
      break;
    }
    expect(await readdir(folder)).toEqual([]);
  });

  test("does without a file where there is little, or no place for one", async () => {
    const none = path.join(await folderWith({}), "none");
    const few = createSpool(none);
    few.add("one");
    expect([...few.lines()]).toEqual(["one"]);
    const many = createSpool(none);
    for (const line of LINES) many.add(line);
    expect([...many.lines()]).toEqual(LINES);
    expect([...createSpool(none).lines()]).toEqual([]);
  });
});
