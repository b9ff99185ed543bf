// A line that stood alike before gives the fact that it was then, and any other its own: what a line says hangs on nothing that was read
// before it.
import { expect, test, vi } from "vitest";
import { examples } from "../../grammar/examples.ts";
import { readLines } from "../../grammar/lines.ts";
import { ENTRIES } from "../../grammar/vocabulary.ts";
import type { System } from "../../server/core/quantity/show.ts";
import type { Entry } from "../../server/model/entry.ts";

type Read = (text: string, system: System | undefined) => Entry;

/** Reads a block; each of these has read nothing yet. */
async function reader(): Promise<Read> {
  vi.resetModules();
  const { readEntry } = await import("../../server/model/read-entry.ts");
  return (text, system) => {
    const [block] = readLines(text).blocks;
    if (block === undefined) throw new Error(`no block: ${text}`);
    return readEntry(block, { system, isJob: false });
  };
}

test("each example says the same whatever was read before it: in another unit, on another line, further in, under another entry", async () => {
  const all = ENTRIES.flatMap(({ kind, form, facts }) => {
    const head = form.replace(/bush\|part/, "bush").replaceAll(/[A-Z]+/g, "x");
    return facts.flatMap(({ word, rule }) =>
      (examples[rule] ?? [])
        .filter((body) => body.startsWith(word))
        .flatMap((body) =>
          [`  ${body}`, `    ${body}`, `\n  ${body}`, `  # said\n  ${body}`]
            .map((text) => `${head}\n${text}\n`)
            .flatMap((text) =>
              (["inch", "mm", undefined] as const).map(
                (system) => ({ kind, text, system }) as const,
              ),
            ),
        ),
    );
  });
  expect(all.length).toBeGreaterThan(2500);
  const [forward, back] = [await reader(), await reader()];
  const said = all.map(({ text, system }) => forward(text, system));
  const backwards = all
    .toReversed()
    .map(({ text, system }) => back(text, system))
    .reverse();
  for (const [index, { text, system }] of all.entries()) {
    expect(backwards[index], text).toEqual(said[index]);
    // and once more, when everything has been read
    expect(forward(text, system), text).toEqual(said[index]);
  }
}, 60_000);

test("two entries with a line alike share its fact, and each refers to what it names", async () => {
  const read = await reader();
  const line = "  read near 0.87432 0.87428 with mic-1\n";
  const one = read(`journal drive on shaft\n${line}`, "inch");
  const other = read(`journal far on shaft\n${line}`, "inch");
  expect(other.facts[0]).toBe(one.facts[0]);
  expect(other.refs.map(({ name }) => name)).toEqual(["shaft", "mic-1"]);
  const lower = read(`journal drive on shaft\n\n${line}`, "inch");
  expect(lower.facts[0]?.span.line).toBe(2);
});

test("a line that stands at many places of an entry has each its own place", async () => {
  const read = await reader();
  const lines = Array.from({ length: 30 }, () => '  note "as it was"');
  const text = ["part case", ...lines, ""].join("\n");
  const places = Array.from({ length: 30 }, (_, index) => index + 1);
  for (let time = 0; time < 2; time++)
    expect(read(text, "inch").facts.map(({ span }) => span.line)).toEqual(
      places,
    );
});

test("a line with which something is wrong says so each time", async () => {
  const read = await reader();
  const text = "journal drive on shaft\n  read near 0,874\n";
  const first = read(text, "inch");
  expect(first.problems.map(({ code }) => code)).toEqual(["number-comma"]);
  expect(read(text, "inch")).toEqual(first);
});
