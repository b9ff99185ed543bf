// What a file exports is used: by another file of the project, or it is no export; and by something that is not a test, or it is not there.
import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { expect, test } from "vitest";

const root = path.join(import.meta.dirname, "..", "..");

/** What is asked for from outside of these files. */
const FROM_OUTSIDE: Readonly<Record<string, string>> = {
  "client/main.browser.ts activate": "by the editor",
  "client/main.node.ts activate": "by the editor",
  "server/core/fits/b4-1.ts inchTolerance": "by the checks: it is published",
  "server/core/fits/iso-286.ts isoTolerance": "by the checks: it is published",
};

const SOURCES = ["client", "grammar", "server"];

const files = [...SOURCES, "test", ".config"]
  .flatMap((room) =>
    readdirSync(path.join(root, room), { recursive: true, encoding: "utf8" })
      .map((file) => `${room}/${file.replaceAll("\\", "/")}`)
      .filter((file) => /\.m?ts$|\.mjs$/.test(file))
      .filter((file) => !/node_modules|\.d\.m?ts$/.test(file)),
  )
  .map((file) => ({ file, text: readFileSync(path.join(root, file), "utf8") }));

/** The names that a file takes from each other file, a script each word of it. */
function taken(file: string, text: string): readonly string[] {
  const named = [
    ...text.matchAll(
      /(?:import|export)\s+(?:type\s+)?\{([^}]*)\}\s+from\s+"(\.[^"]+)"/g,
    ),
  ].flatMap(([, names = "", from = ""]) => {
    const other = path.posix.join(path.posix.dirname(file), from);
    return names
      .split(",")
      .map((name) => /^(?:type\s+)?(\w+)/.exec(name.trim())?.[1])
      .map((name) => `${other} ${name ?? ""}`);
  });
  // a whole file, at once or when it is asked for
  const whole = [
    ...text.matchAll(/import\s+\*\s+as\s+\w+\s+from\s+"(\.[^"]+)"/g),
    ...text.matchAll(/import\(\s*"(\.[^"]+)"/g),
  ].map(
    ([, from = ""]) => `${path.posix.join(path.posix.dirname(file), from)} *`,
  );
  return [...named, ...whole];
}

const isTest = (file: string): boolean => file.startsWith("test/");
const takenByTests = new Set<string>();
const takenBySources = new Set<string>();
for (const { file, text } of files)
  for (const each of taken(file, text))
    (isTest(file) ? takenByTests : takenBySources).add(each);
const scripts = files
  .filter(({ file }) => file.endsWith(".mjs"))
  .map(({ text }) => text)
  .join("\n");

const exported = files
  .filter(({ file }) => SOURCES.includes(file.split("/")[0] ?? ""))
  .flatMap(({ file, text }) =>
    [
      ...text.matchAll(
        /^export (?:async )?(?:function|const|class)\*? (\w+)/gm,
      ),
    ].map(([, name = ""]) => ({ file, name, text })),
  );

function isTaken(by: ReadonlySet<string>, file: string, name: string): boolean {
  return by.has(`${file} ${name}`) || by.has(`${file} *`);
}

function times(name: string, text: string): number {
  return text.match(new RegExp(`\\b${name}\\b`, "g"))?.length ?? 0;
}

test("every function and value that is exported is used", () => {
  expect(exported.length).toBeGreaterThan(1000);
  const idle = exported
    .filter(({ file, name, text }) => {
      if (isTaken(takenBySources, file, name) || 0 < times(name, scripts))
        return false;
      return !isTaken(takenByTests, file, name) || times(name, text) === 1;
    })
    .map(({ file, name }) => `${file} ${name}`);
  expect(idle).toEqual(Object.keys(FROM_OUTSIDE));
});
