// What is handed out, opened: the package that an editor installs and the one that npm installs. What is in each and nothing else, that it
// is small, that its README shows its picture, that every bundled package has its licence in it. Whether an editor takes its package is for
// the tests in the real editor; the command line is installed here, in an empty folder, and used.
import { execFile, spawn } from "node:child_process";
import {
  copyFile,
  mkdir,
  mkdtemp,
  readFile,
  readdir,
  rm,
  writeFile,
} from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { promisify } from "node:util";
import { build } from "esbuild";
import JSZip from "jszip";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { bundles } from "../../.config/bundles.mjs";
import { createEditor, labelOf } from "../lsp/editor.ts";
import manifest from "../../package.json" with { type: "json" };

/** All that is to be in it; whatever is added to the package is added here, with a look at what it weighs. */
const WANTED = [
  "[Content_Types].xml",
  "extension.vsixmanifest",
  "extension/LICENSE.txt",
  "extension/changelog.md",
  "extension/client/icons/file-dark.svg",
  "extension/client/icons/file-light.svg",
  "extension/client/icons/overview.svg",
  "extension/client/icons/thou-256.png",
  "extension/client/language-configuration.json",
  "extension/client/syntaxes/thou.tmLanguage.json",
  "extension/client/walkthrough/beside.svg",
  "extension/client/walkthrough/overview.svg",
  "extension/client/walkthrough/reading.svg",
  "extension/client/walkthrough/sample.svg",
  "extension/client/walkthrough/settings.svg",
  "extension/dist/bench-style.css",
  "extension/dist/bench.js",
  "extension/dist/client.browser.js",
  "extension/dist/client.cjs",
  "extension/dist/licences.txt",
  "extension/dist/package.json",
  "extension/dist/server.browser.js",
  "extension/dist/server.cjs",
  "extension/dist/session.js",
  "extension/package.json",
  "extension/readme.md",
  "extension/samples/first-job.thou",
];
const MOST = 1_000_000; // bytes

let folder = "";
let bytes = Buffer.alloc(0);
let zip = new JSZip();
const text = async (name: string): Promise<string> => {
  const file = zip.file(`extension/${name}`);
  if (file === null) throw new Error(`no ${name} in the package`);
  return file.async("string");
};

beforeAll(async () => {
  folder = await mkdtemp(path.join(tmpdir(), "thou-package-test-"));
  await promisify(execFile)("npm", ["run", "--silent", "package", folder]);
  const file = path.join(folder, `thou-${manifest.version}.vsix`);
  bytes = await readFile(file);
  zip = await JSZip.loadAsync(bytes);
}, 120_000);
afterAll(() => rm(folder, { recursive: true, force: true }));

test("it holds what it should and nothing else", () => {
  const files = Object.values(zip.files).filter(({ dir }) => !dir);
  expect(files.map(({ name }) => name).sort()).toEqual(WANTED);
});

test("it holds no source, no map and no test, and no bundle points to a map", async () => {
  const names = Object.keys(zip.files);
  expect(
    names.filter((name) => /\.[cm]?ts$|\.map$|(?:^|\/)test\//.test(name)),
  ).toEqual([]);
  for (const name of names.filter((each) => /\.c?js$/.test(each)))
    expect(await zip.file(name)?.async("string")).not.toContain(
      "sourceMappingURL=",
    );
});

test("nothing in it asks for the archive's engine, nor carries it", async () => {
  for (const [name, file] of Object.entries(zip.files))
    if (/\.c?js$/.test(name))
      expect(await file.async("string"), name).not.toMatch(
        /\b(?:import|require)\(\s*["'`]@duckdb|read_parquet/,
      );
});

test("it is under one megabyte", () => {
  expect(bytes.length).toBeLessThan(MOST);
});

test("no file in it names the machine that made it", async () => {
  const home = path.resolve(import.meta.dirname, "../..");
  for (const [name, file] of Object.entries(zip.files))
    expect((await file.async("string")).includes(home), name).toBe(false);
});

test("its manifest leads only to files in it", async () => {
  const shipped = JSON.parse(await text("package.json")) as typeof manifest;
  expect(shipped.version).toBe(manifest.version);
  expect(shipped.contributes).toEqual(manifest.contributes);
  const named = [
    ...JSON.stringify(shipped).matchAll(
      /"(?:\.\/)?((?:client|dist|samples)\/[^"*]+\.\w+)"/g,
    ),
  ].map(([, name = ""]) => name);
  expect(named).toContain("dist/client.cjs");
  const there = new Set(WANTED);
  expect(
    // the command line goes with the npm package
    named.filter(
      (name) => name !== "dist/cli.cjs" && !there.has(`extension/${name}`),
    ),
  ).toEqual([]);
  expect(shipped.categories.length).toBeGreaterThan(0);
  expect(shipped).not.toHaveProperty("scripts");
  // an editor that takes the package for an ES module refuses its part for browsers
  expect(shipped).not.toHaveProperty("type");
  expect(JSON.parse(await text("dist/package.json"))).toEqual({
    type: "module",
  });
  expect(JSON.stringify(shipped)).not.toContain("duckdb");
});

test("its README shows its picture from within, and links to nothing that is not in it", async () => {
  const readme = await text("readme.md");
  const [, data = ""] =
    /!\[[^\]]+\]\(data:image\/png;base64,([^)]+)\)/.exec(readme) ?? [];
  expect(Buffer.from(data, "base64")).toEqual(
    await readFile("docs/pictures/winch.png"),
  );
  const leads = [...readme.matchAll(/\]\(([^)]+)\)/g)]
    .map(([, to = ""]) => to)
    .filter((to) => !/^(?:data:image\/png;|https:|#)/.test(to));
  expect(leads).toEqual([]);
});

describe("licences", () => {
  test("every package that is bundled has its licence in it, word for word, and no other", async () => {
    const built = await Promise.all(
      bundles(folder).map((each) =>
        build({ ...each, write: false, metafile: true }),
      ),
    );
    const inputs = built.flatMap(({ metafile }) =>
      Object.keys(metafile.inputs),
    );
    const folders = new Set(
      inputs.flatMap(
        (file) =>
          /^.*node_modules\/(?:@[^/]+\/)?[^/]+(?=\/)/.exec(file)?.[0] ?? [],
      ),
    );
    const licences = await text("dist/licences.txt");
    expect(folders.size).toBeGreaterThan(10);
    const titles: string[] = [];
    for (const each of folders) {
      const { name, version } = JSON.parse(
        await readFile(path.join(each, "package.json"), "utf8"),
      ) as { readonly name: string; readonly version: string };
      titles.push(`${name} ${version}`);
      const [file] = (await readdir(each)).filter((one) =>
        /^licen[cs]e/i.test(one),
      );
      const own = await readFile(path.join(each, file ?? ""), "utf8");
      expect(licences, name).toContain(own.trim());
    }
    const listed = [...licences.matchAll(/^(\S+ \d\S*) \(\S+\)\n-{4,}$/gm)].map(
      ([, title = ""]) => title,
    );
    expect(listed.toSorted()).toEqual([...new Set(titles)].toSorted());
  });
});

describe("the package that npm installs", () => {
  const RUNS = [
    "CHANGELOG.md",
    "LICENSE",
    "README.md",
    "dist/cli.cjs",
    "dist/licences.txt",
    "dist/server.cjs",
    "dist/session.js",
    "package.json",
  ];
  const run = promisify(execFile);
  let packed: { filename: string; files: { path: string }[] } | undefined;
  let clean = "";

  beforeAll(async () => {
    const { stdout } = await run("npm", [
      "pack",
      "--silent",
      "--json",
      "--ignore-scripts",
      "--pack-destination",
      folder,
    ]);
    [packed] = JSON.parse(stdout) as [typeof packed];
    clean = path.join(folder, "clean");
    await mkdir(clean);
    // without the network: nothing is to be fetched for it but the engine of the archive, which is optional
    await run(
      "npm",
      [
        "install",
        "--offline",
        "--omit=optional",
        "--no-audit",
        "--no-fund",
        path.join(folder, packed?.filename ?? ""),
      ],
      { cwd: clean },
    );
  }, 120_000);

  test("holds only what runs", () => {
    expect(packed?.files.map((each) => each.path).sort()).toEqual(RUNS);
  });

  test("brings no other package, and runs nothing as it is installed", async () => {
    const there = await readdir(path.join(clean, "node_modules"));
    expect(there.filter((name) => !name.startsWith("."))).toEqual(["thou"]);
    expect(manifest).not.toHaveProperty("dependencies");
    expect(
      Object.keys(manifest.scripts).filter((name) =>
        /^(?:(?:pre|post)?(?:install|pack|publish)|(?:pre|post)?prepare|prepublishOnly)$/.test(
          name,
        ),
      ),
    ).toEqual([]);
  });

  test("checks a record in a folder that has nothing else", async () => {
    await copyFile("samples/first-job.thou", path.join(clean, "job.thou"));
    const thou = path.join(clean, "node_modules/.bin/thou");
    const { stdout } = await run(thou, ["--version"], { cwd: clean });
    expect(stdout.trim()).toBe(manifest.version);
    const checked = await run(thou, ["check", "--format", "json", "job.thou"], {
      cwd: clean,
    }).catch((error: unknown) => error as { stdout: string });
    const here = await run(
      process.execPath,
      [path.resolve("dist/cli.cjs"), "check", "--format", "json", "job.thou"],
      { cwd: clean },
    ).catch((error: unknown) => error as { stdout: string });
    expect(JSON.parse(checked.stdout)).toEqual(JSON.parse(here.stdout));
    expect(checked.stdout).toContain("clearance");
  });

  test("serves an editor", () =>
    served(path.join(clean, "node_modules/.bin/thou"), ["serve", "--stdio"]));
});

test("the server of the editor's package serves from its files alone, in an empty folder", async () => {
  const alone = path.join(folder, "installed");
  for (const [name, file] of Object.entries(zip.files)) {
    if (file.dir) continue;
    const at = path.join(alone, name);
    await mkdir(path.dirname(at), { recursive: true });
    await writeFile(at, await file.async("nodebuffer"));
  }
  await served(process.execPath, [
    path.join(alone, "extension/dist/server.cjs"),
    "--stdio",
  ]);
});

/** Starts a server in a folder of its own, opens the sample, and sees what it says of it. */
async function served(command: string, words: string[]): Promise<void> {
  const cwd = await mkdtemp(path.join(folder, "empty-"));
  const server = spawn(command, words, {
    cwd,
    stdio: ["pipe", "pipe", "inherit"],
  });
  try {
    const editor = createEditor(server.stdout, server.stdin);
    const { capabilities } = await editor.start([pathToFileURL(cwd).href]);
    expect(capabilities.hoverProvider).toBeTruthy();
    const uri = pathToFileURL(path.join(cwd, "job.thou")).href;
    await editor.open(uri, await readFile("samples/first-job.thou", "utf8"));
    const hints = (await editor.hints(uri)).map(labelOf);
    expect(hints.join("\n")).toMatch(/ in, predicted/u);
  } finally {
    server.kill();
  }
}

test("the version is a semantic one, and the changelog's newest release", async () => {
  const changelog = await readFile("CHANGELOG.md", "utf8");
  // semver.org, version 2.0.0, its grammar (clauses 2 and 9): three numbers, and after a hyphen what comes before that release; no number
  // with a zero before it
  const part = String.raw`(?:0|[1-9]\d*|\d*[a-zA-Z-][0-9a-zA-Z-]*)`;
  const number = String.raw`(?:0|[1-9]\d*)`;
  const semver = new RegExp(
    String.raw`^${number}\.${number}\.${number}(?:-${part}(?:\.${part})*)?$`,
  );
  expect(manifest.version).toMatch(semver);
  // examples of the same page
  for (const each of ["1.0.0-alpha.1", "1.0.0-0.3.7", "1.0.0-x.7.z.92"])
    expect(each).toMatch(semver);
  for (const each of ["1.0", "1.0.0-", "1.0.0-01", "1.0.0-a..b", "01.0.0"])
    expect(each).not.toMatch(semver);
  const releases = [
    ...changelog.matchAll(/^## \[(\d[^\]]*)\] - (\d{4}-\d\d-\d\d)$/gm),
  ];
  expect(releases[0]?.[1]).toBe(manifest.version);
  const days = releases.map(([, , day = ""]) => day);
  expect(days).toEqual(days.toSorted().toReversed());
  expect(await text("changelog.md")).toContain(`## [${manifest.version}]`);
});
