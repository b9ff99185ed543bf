// Opens the sample shop in a real editor with the extension in it, for a person to try: `npm run editor`. It builds and
// packages the extension, installs it into an editor with throw-away settings, and prints the address to open in a
// browser. Nothing here is tested; run.mjs does that.
//
//   node test/editor/open.mjs [FOLDER] [--in-place] [--new] [--port N]
//     FOLDER      of records (default samples/shop)
//     --in-place  edit the folder itself and not a copy that goes at the end
//     --new       in the newer editor
//     --port      of the address (default: any free one)
import { existsSync } from "node:fs";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { parseArgs } from "node:util";
import {
  buildBundles,
  editors,
  installEditor,
  packageVsix,
  record,
  shop,
} from "./prepare.mjs";
import { startServer } from "./workbench.mjs";

const { values: options, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    "in-place": { type: "boolean", default: false },
    new: { type: "boolean", default: false },
    port: { type: "string", default: "0" },
  },
});
const folder = path.resolve(positionals[0] ?? shop);
if (!existsSync(folder)) {
  console.error(`there is no folder ${folder}`);
  process.exit(1);
}

const editor = await installEditor(options.new ? editors.new : editors.usual);
await buildBundles();
const scratch = await mkdtemp(path.join(tmpdir(), "thou-package-"));
let server;
try {
  const vsix = await packageVsix(scratch);
  const inPlace = options["in-place"];
  server = await startServer({
    editor,
    folder,
    vsix,
    inPlace,
    port: Number(options.port),
  });
} finally {
  await rm(scratch, { recursive: true, force: true });
}

const first = path.join(server.folder, record);
const payload = existsSync(first) ? [["openFile", server.remote(first)]] : [];
console.log(`
Open this address in a browser on this machine:

  ${server.address(payload)}

${
  options["in-place"]
    ? `Your edits are saved in ${folder}.`
    : `Your edits go to a copy, which is removed at the end (--in-place edits ${folder}).`
}
Ctrl-C ends it.`);

const reason = await server.ended; // Ctrl-C is heard by the server's keeper, which ends this process
await server.close();
console.error(reason);
process.exit(1);
