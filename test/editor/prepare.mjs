// What has to be there before the editor opens: the editor itself, the bundles, the package (VSIX) and the bundled host
// tests. It runs the tools that make them and says where they lie; it starts no editor.
import { spawn } from "node:child_process";
import { mkdir, readFile, writeFile } from "node:fs/promises";
import path from "node:path";

export { packageExtension as packageVsix } from "../../.config/package.mjs";

export const root = path.resolve(import.meta.dirname, "../..");
export const shop = path.join(root, "samples/shop");
/** The record of the shop that the tests read and that opens first for a person. */
export const record = "winch.thou";

/** The two releases that the tests know: an old editor, on this Node, and a new one, which brings its own. */
export const editors = {
  usual: { release: "4.100.3", vscode: "1.100.3", folder: ".editor" },
  new: { release: "4.139.1", vscode: "1.139.1", folder: ".editor-new" },
};

/** Runs a command in the project's folder with its output shown; resolves on exit code 0 and rejects on any other. */
function command(name, args) {
  return new Promise((resolve, reject) => {
    const child = spawn(name, args, {
      cwd: root,
      stdio: ["ignore", "inherit", "inherit"],
    });
    child.once("error", reject);
    child.once("exit", (code, signal) => {
      if (code === 0) resolve();
      else
        reject(
          new Error(
            `${[name, ...args].join(" ")} ended with ${signal ?? code}`,
          ),
        );
    });
  });
}

/** Installs the editor where it is missing and gives its folder. */
export async function installEditor({ release, folder }) {
  const where = path.resolve(root, process.env.THOU_EDITOR_DIR || folder);
  await command("bash", [
    path.join(root, "test/editor/install-editor.sh"),
    where,
    release,
  ]);
  return where;
}

export function buildBundles() {
  return command("npm", ["run", "--silent", "build"]);
}

/** Unpacks a package as an editor does that installs it, and gives the folder that the extension then is. */
export async function unpackVsix(vsix, folder) {
  const { default: JSZip } = await import("jszip");
  const zip = await JSZip.loadAsync(await readFile(vsix));
  const where = path.join(folder, "unpacked");
  for (const each of Object.values(zip.files)) {
    if (each.dir) continue;
    const file = path.join(where, each.name);
    await mkdir(path.dirname(file), { recursive: true });
    await writeFile(file, await each.async("nodebuffer"));
  }
  return path.join(where, "extension");
}

/** Bundles the module whose `run` an extension host calls and gives its path. */
export async function bundleHostTests(folder) {
  const { build } = await import("esbuild");
  const outfile = path.join(folder, "host-tests.cjs");
  await build({
    entryPoints: [path.join(root, "test/editor/host/index.ts")],
    outfile,
    bundle: true,
    platform: "node",
    format: "cjs",
    target: "node20",
    external: ["vscode"],
    sourcemap: "inline",
    logLevel: "warning",
  });
  return outfile;
}

/**
 * An extension with nothing in it. Tests run only where a development folder is named; with this one the extension
 * under test is the installed package and not the checkout.
 */
export async function emptyExtension(folder) {
  const where = path.join(folder, "empty-extension");
  await mkdir(where, { recursive: true });
  const manifest = {
    name: "empty",
    publisher: "thou",
    version: "0.0.1",
    engines: { vscode: "*" },
  };
  await writeFile(path.join(where, "package.json"), JSON.stringify(manifest));
  return where;
}
