// A record that goes while threads check the archive it stands in: the command as it ships, with threads of its own.
import { spawn } from "node:child_process";
import { once } from "node:events";
import { rm } from "node:fs/promises";
import path from "node:path";
import { expect, test } from "vitest";
import { shopHistory } from "../history/shop-history.ts";
import { bundledCommand } from "./bundled-command.ts";
import { folderWith } from "./in-process.ts";

test("it is said, the exit code is 2, and every other record is in the report", async () => {
  const { command } = await bundledCommand();
  const history = shopHistory(47, { records: 180 });
  const texts = Object.fromEntries([
    ...[...history.cribs].map(({ path: at, text }) => [at, text] as const),
    ...[...history.records].map(
      ({ path: at, versions }) => [at, versions.at(-1)?.text ?? ""] as const,
    ),
  ]);
  const cwd = await folderWith(texts);
  const names = Object.keys(texts).sort();
  const gone = names.at(-1) ?? "";
  const child = spawn(
    process.execPath,
    [command, "check", "--format", "json", "--jobs", "2"],
    { cwd, env: { ...process.env, NODE_OPTIONS: "" } },
  );
  let err = "";
  child.stderr.setEncoding("utf8").on("data", (text: string) => {
    err += text;
  });
  // as long as nobody reads, the threads wait a few batches ahead of what is written: the last record is far from being read
  await once(child.stdout, "readable");
  await rm(path.join(cwd, gone));
  let out = "";
  child.stdout.setEncoding("utf8").on("data", (text: string) => {
    out += text;
  });
  const [code] = (await once(child, "close")) as [number | null];
  expect(code).toBe(2);
  expect(err.replaceAll(/\s+/gu, " ")).toBe(
    `thou: ${gone} cannot be read: there is no such file or folder. `,
  );
  const { files } = JSON.parse(out) as { files: { file: string }[] };
  expect(files.map(({ file }) => file).sort()).toEqual(
    names.filter((name) => name !== gone),
  );
}, 120_000);
