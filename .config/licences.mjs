// The licences of the packages that are bundled, as one text that goes out with the bundles: each with its name, its version and its own
// licence file, word for word.
import { readFile, readdir } from "node:fs/promises";
import path from "node:path";

/**
 * @param {import("esbuild").Metafile} metafile of the bundles
 * @returns {Promise<string>}
 */
export async function licencesOf({ inputs }) {
  const folders = new Set(
    Object.keys(inputs).flatMap((file) => packageFolder(file) ?? []),
  );
  const packages = await Promise.all([...folders].map(readPackage));
  const byName = new Map(
    packages.map((each) => [`${each.name} ${each.version}`, each]),
  );
  const texts = [...byName]
    .sort(([one], [other]) => (one < other ? -1 : 1))
    .map(
      ([title, { license, text }]) =>
        `${title} (${license})\n${"-".repeat(title.length)}\n\n${text.trim()}\n`,
    );
  return `Thou is bundled with these packages, each under its own licence.\n\n${texts.join("\n\n")}`;
}

/** The folder of the package that a bundled file comes from; undefined for one of our own. */
export function packageFolder(file) {
  const at = file.lastIndexOf("node_modules/");
  if (at < 0) return undefined;
  const [scope, name] = file.slice(at + "node_modules/".length).split("/");
  const parts = scope.startsWith("@") ? [scope, name] : [scope];
  return path.join(file.slice(0, at), "node_modules", ...parts);
}

async function readPackage(folder) {
  const manifest = JSON.parse(
    await readFile(path.join(folder, "package.json"), "utf8"),
  );
  const { name, version } = manifest;
  // some older packages list theirs
  const license = manifest.license ?? manifest.licenses?.[0]?.type;
  if (license === undefined)
    throw new Error(`${name} ${version} is bundled and names no licence`);
  const files = await readdir(folder);
  const file = files.find((each) => /^licen[cs]e/i.test(each));
  if (file === undefined)
    throw new Error(`${name} ${version} is bundled and has no licence file`);
  const text = await readFile(path.join(folder, file), "utf8");
  return { name, version, license, text };
}
