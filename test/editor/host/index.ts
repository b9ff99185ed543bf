// What an extension host calls: runs the host tests one after another and writes what became of each into a report, a
// file of JSON lines that THOU_TEST_REPORT names. The runner counts from that file, for what a host prints reaches the
// runner in one editor and not in another.
import { appendFileSync } from "node:fs";
import { env, version } from "vscode";
import { tests } from "./tests.ts";

export async function run(): Promise<void> {
  const editor = `VS Code ${version} (${env.appName}, ${env.appHost}), host on Node ${process.versions.node}`;
  write({ declared: tests.length, editor });
  let failed = 0;
  for (const { name, test } of tests) {
    write({ started: name });
    const began = Date.now();
    let error: string | null = null;
    try {
      await test();
    } catch (thrown) {
      failed++;
      error =
        thrown instanceof Error
          ? (thrown.stack ?? thrown.message)
          : String(thrown);
    }
    write({ name, error, milliseconds: Date.now() - began });
  }
  // The editor's exit code follows: it is not to be zero.
  if (0 < failed)
    throw new Error(`${failed} of ${tests.length} host tests failed`);
}

function write(line: object): void {
  const report = process.env.THOU_TEST_REPORT;
  if (report === undefined)
    throw new Error("THOU_TEST_REPORT names no file for the report");
  appendFileSync(report, `${JSON.stringify(line)}\n`);
}
