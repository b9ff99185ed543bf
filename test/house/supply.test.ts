// What comes with the project from others: few packages, each of one version, none from an address of its own, none that may not be passed on,
// and nothing of ours that runs as it is installed. What is bundled has its licence beside it: test/package/packages.test.ts.
import { readFileSync } from "node:fs";
import path from "node:path";
import { expect, test } from "vitest";

const root = path.join(import.meta.dirname, "..", "..");

interface Manifest {
  readonly scripts?: Readonly<Record<string, string>>;
  readonly dependencies?: Readonly<Record<string, string>>;
  readonly devDependencies?: Readonly<Record<string, string>>;
  readonly optionalDependencies?: Readonly<Record<string, string>>;
}

interface Locked {
  readonly version?: string;
  readonly resolved?: string;
  readonly integrity?: string;
  readonly license?: string;
  readonly dev?: boolean;
  readonly optional?: boolean;
  readonly hasInstallScript?: boolean;
}

interface Lock {
  readonly packages: Readonly<Record<string, Locked & Manifest>>;
}

function json(file: string): unknown {
  return JSON.parse(readFileSync(path.join(root, file), "utf8"));
}

const FOLDERS = ["", "test/bench/peers/"];

/** Packages of others that run something as they are installed, each for building or testing. One more is a decision. */
const RUN_AT_INSTALL = ["@vscode/vsce-sign", "esbuild", "keytar"];

/** Licences under which a package of others may stand in this project, by their SPDX names. */
const LICENCES: ReadonlySet<string> = new Set([
  ...["MIT", "ISC", "0BSD", "BSD-2-Clause", "BSD-3-Clause", "Apache-2.0"],
  ...["BlueOak-1.0.0", "Python-2.0", "CC0-1.0", "CC-BY-3.0", "Artistic-2.0"],
  ...["MPL-2.0", "WTFPL", "(MIT OR WTFPL)", "(MIT OR GPL-3.0-or-later)"],
  ...["(MIT AND Zlib)", "(MIT OR CC0-1.0)"],
  "(BSD-2-Clause OR MIT OR Apache-2.0)",
]);

/** The folders of those whose licence stands in a file of theirs only, or whose entry in the lock says none: each was read. */
const IN_A_FILE: readonly string[] = [
  "@vscode/vsce-sign", // of the packer of the extension; it is used with that, and is not passed on
  "nodejs-polars-", // MIT
  "jstat", // MIT
];

test.each(FOLDERS)("%spackage.json names every version exactly", (folder) => {
  const manifest = json(`${folder}package.json`) as Manifest;
  const named = Object.entries({
    ...manifest.dependencies,
    ...manifest.devDependencies,
    ...manifest.optionalDependencies,
  });
  expect(named.length).toBeGreaterThan(0);
  expect(
    named.filter(
      ([, version]) => !/^\d+\.\d+\.\d+(?:-[\w.]+)?$/u.test(version),
    ),
  ).toEqual([]);
  // what is asked for is what is locked
  const { packages } = json(`${folder}package-lock.json`) as Lock;
  for (const [name, version] of named)
    expect(packages[`node_modules/${name}`]?.version, name).toBe(version);
});

test.each(FOLDERS)(
  "%spackage-lock.json names no host, and a hash for every package",
  (folder) => {
    const text = readFileSync(
      path.join(root, folder, "package-lock.json"),
      "utf8",
    );
    const { packages } = JSON.parse(text) as Lock;
    const locked = Object.entries(packages).filter(([place]) => place !== "");
    expect(locked.length).toBeGreaterThan(5);
    expect(
      locked.filter(
        ([, { resolved, integrity }]) =>
          resolved !== undefined || !(integrity ?? "").startsWith("sha512-"),
      ),
    ).toEqual([]);
    expect(text).not.toMatch(/"(?:git\+|git:|file:|ssh:)/u);
  },
);

test("of what is installed only known packages run something", () => {
  const { packages } = json("package-lock.json") as Lock;
  const running = Object.entries(packages)
    .filter(([, { hasInstallScript }]) => hasInstallScript === true)
    .map(([place]) => place.replace(/^.*node_modules\//u, ""));
  expect(running.toSorted()).toEqual(RUN_AT_INSTALL);
});

test("of ours nothing runs as it is installed, and nothing has to be there to run it but an engine of its own choice", () => {
  for (const folder of FOLDERS) {
    const manifest = json(`${folder}package.json`) as Manifest;
    expect(
      Object.keys(manifest.scripts ?? {}).filter((name) =>
        /^(?:pre|post)?(?:install|prepare|pack|publish)$/u.test(name),
      ),
    ).toEqual([]);
  }
  const manifest = json("package.json") as Manifest;
  expect(manifest).not.toHaveProperty("dependencies");
  expect(Object.keys(manifest.optionalDependencies ?? {})).toEqual([
    "@duckdb/node-api",
  ]);
});

test("every package says its licence, and it is one that lets it be used here", () => {
  const { packages } = json("package-lock.json") as Lock;
  const wrong = Object.entries(packages)
    .map(([place, { license }]) => ({
      name: place.replace(/^.*node_modules\//u, ""),
      license: license ?? "",
    }))
    .filter(
      ({ name, license }) =>
        name !== "" &&
        !LICENCES.has(license) &&
        !IN_A_FILE.some((each) => name.startsWith(each)),
    );
  expect(wrong).toEqual([]);
});
