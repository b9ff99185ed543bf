// Tries the set-ups for other editors that the README gives, with those editors: `npm run test:others`. It takes each set-up out of the
// README word for word, opens a record of the sample shop with a misspelt word in it, and looks at what comes: the finding, a hover, the
// definition of a gauge in the crib, the layout.
// Exit code 0: both were tried and all is well; 1: something is not; 2: an editor is not here, and its set-up was not tried.
import { execFile } from "node:child_process";
import {
  chmod,
  cp,
  mkdir,
  mkdtemp,
  readFile,
  rm,
  symlink,
  writeFile,
} from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { promisify } from "node:util";

const root = path.resolve(import.meta.dirname, "../..");
const run = promisify(execFile);
const readme = await readFile(path.join(root, "README.md"), "utf8");
const scratch = await mkdtemp(path.join(tmpdir(), "thou-other-editors-"));
const shop = path.join(scratch, "shop");
const record = path.join(shop, "winch.thou");

const EDITORS = [
  {
    name: "Neovim",
    language: "lua",
    version: ["nvim", ["--version"]],
    command: (setUp) => [
      "nvim",
      [
        "--headless",
        "-u",
        setUp,
        record,
        "-c",
        `luafile ${path.join(root, "test/other-editors/neovim.lua")}`,
      ],
    ],
  },
  {
    name: "Emacs",
    language: "elisp",
    version: ["emacs", ["--version"]],
    command: (setUp) => [
      "emacs",
      [
        "--batch",
        "--eval",
        "(package-initialize)",
        "-l",
        setUp,
        "-l",
        path.join(root, "test/other-editors/emacs.el"),
      ],
    ],
  },
];

/** What is to be among the lines that an editor writes. */
const WANTED = [
  /^finding: {3}wnat .* \| .*did you mean `want`\?$/m,
  /^hover: .*\bfit front\b.*clearance/m,
  /^definition: .*crib\.thou/m,
  /^layout: {3}note "x"\|$/m,
];

let failed = 0;
let missing = 0;
try {
  await run("npm", ["run", "--silent", "build"], { cwd: root });
  const bin = path.join(scratch, "bin");
  await mkdir(bin);
  await chmod(path.join(root, "dist/cli.cjs"), 0o755);
  await symlink(path.join(root, "dist/cli.cjs"), path.join(bin, "thou"));
  await cp(path.join(root, "samples/shop"), shop, { recursive: true });
  const text = await readFile(record, "utf8");
  await writeFile(record, text.replace(/^ {2}want /m, "  wnat "));
  const env = {
    ...process.env,
    HOME: scratch,
    PATH: `${bin}${path.delimiter}${process.env.PATH}`,
    THOU_RECORD: record,
  };
  for (const { name, language, version, command } of EDITORS) {
    const [, setUp] =
      new RegExp(`\`\`\`${language}\n([^]*?)\`\`\``).exec(readme) ?? [];
    if (setUp === undefined)
      throw new Error(`the README sets ${name} up no more`);
    const file = path.join(scratch, `set-up.${language}`);
    await writeFile(file, setUp);
    const release = await run(...version, { env }).catch(() => undefined);
    if (release === undefined) {
      missing++;
      console.log(`not tried - ${name} is not here`);
      continue;
    }
    const told = await run(...command(file), {
      cwd: shop,
      env,
      timeout: 90_000,
    })
      // Emacs may end by another code than nought, when it ends the server
      .catch((error) => ({ stdout: `${error.stdout}\n${error.stderr}` }));
    const lacking = WANTED.filter((each) => !each.test(told.stdout));
    const title = release.stdout.split("\n", 1)[0];
    if (lacking.length === 0) console.log(`ok - ${title}`);
    else {
      failed++;
      console.log(`not ok - ${title}: no ${lacking.join(", no ")}`);
      console.error(told.stdout);
    }
  }
} finally {
  await rm(scratch, { recursive: true, force: true });
}
process.exitCode = 0 < failed ? 1 : 0 < missing ? 2 : 0;
