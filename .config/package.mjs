// Makes the package (VSIX) that an editor installs, of what stands in dist/: `npm run package` builds first.
//   node .config/package.mjs [FOLDER]     into FOLDER, by default here, as thou-VERSION.vsix
// package-files.json decides what goes in besides the manifest and the README, in plain names or stars within one folder; `files` in
// package.json is what npm packs, the command line alone. The package is made in a folder of its own, where the README has its picture
// within itself: an editor shows no picture beside a README, and there is no public address to fetch one from.
import { execFile } from "node:child_process";
import {
  cp,
  mkdir,
  mkdtemp,
  readdir,
  readFile,
  rm,
  writeFile,
} from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";

const FILES = JSON.parse(
  await readFile(new URL("package-files.json", import.meta.url), "utf8"),
);
const root = path.resolve(import.meta.dirname, "..");
const vsce = path.join(root, "node_modules/.bin/vsce");
const withoutDependencies = "--no-dependencies"; // esbuild has bundled them

/**
 * What only those need who build it; and the word that it is an ES module, for which editors would refuse its part for browsers: they load
 * that as CommonJS. What is one in it says so beside itself.
 */
const NOT_SHIPPED = [
  "devDependencies",
  "dependencies",
  "optionalDependencies",
  "scripts",
  "prettier",
  "type",
];
const MODULES = { name: "dist/package.json", text: '{ "type": "module" }\n' };

/** Packages the extension as it stands in dist/, and gives the package's path. Refuses when a file that it names is not there. */
export async function packageExtension(folder) {
  const manifest = JSON.parse(await readFile(file("package.json"), "utf8"));
  const stage = await mkdtemp(path.join(tmpdir(), "thou-stage-"));
  try {
    for (const name of await wanted()) {
      await mkdir(path.dirname(path.join(stage, name)), { recursive: true });
      await cp(file(name), path.join(stage, name));
    }
    const shipped = Object.fromEntries(
      Object.entries(manifest).filter(([key]) => !NOT_SHIPPED.includes(key)),
    );
    shipped.files = [...FILES, MODULES.name];
    await writeFile(path.join(stage, MODULES.name), MODULES.text);
    await writeFile(
      path.join(stage, "package.json"),
      JSON.stringify(shipped, undefined, 2),
    );
    await writeFile(path.join(stage, "README.md"), await readme());
    const vsix = path.join(folder, `${manifest.name}-${manifest.version}.vsix`);
    await promisify(execFile)(
      vsce,
      [
        "package",
        withoutDependencies,
        "--allow-missing-repository",
        "--no-rewrite-relative-links", // there is no repository address to rewrite them to
        "--out",
        path.resolve(vsix),
      ],
      { cwd: stage, maxBuffer: 1 << 28 },
    );
    return vsix;
  } finally {
    await rm(stage, { recursive: true, force: true });
  }
}

/** The files that the list names. A pattern that matches none is a mistake. */
async function wanted() {
  const names = await Promise.all(FILES.map(matching));
  const idle = FILES.filter((_, index) => names[index].length === 0);
  if (0 < idle.length)
    throw new Error(
      `the list has ${idle.join(", ")}, and nothing is there: npm run build?`,
    );
  return [...new Set(names.flat())].sort();
}

async function matching(pattern) {
  const folder = path.dirname(pattern);
  const plain = path
    .basename(pattern)
    .split("*")
    .map((part) => part.replaceAll(/[.+?^${}()|[\]\\]/g, "\\$&"));
  const name = new RegExp(`^${plain.join(".*")}$`);
  const there = await readdir(file(folder)).catch(() => []);
  return there
    .filter((each) => name.test(each))
    .map((each) => path.posix.join(folder, each));
}

/** The README with its pictures within it, and without links to files that do not go into the package. */
async function readme() {
  const text = await readFile(file("README.md"), "utf8");
  const pictures = new Map();
  for (const [, picture] of text.matchAll(/!\[[^\]]*\]\(([^):]+\.png)\)/g))
    pictures.set(
      picture,
      `data:image/png;base64,${await readFile(file(picture), "base64")}`,
    );
  return text.replace(
    /(!?)\[([^\]]*)\]\(([^):#]+)\)/g,
    (whole, isPicture, label, target) =>
      isPicture ? `![${label}](${pictures.get(target) ?? target})` : label,
  );
}

function file(name) {
  return path.join(root, name);
}

if (process.argv[1] === fileURLToPath(import.meta.url))
  console.log(await packageExtension(process.argv[2] ?? root));
