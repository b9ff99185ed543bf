// The rooms and the direction of imports between them. DEVELOPERS.md draws this; here it is held.
import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, test } from "vitest";

const root = path.join(import.meta.dirname, "..", "..");

/** Each room with the rooms of ours that it may import besides itself, and the packages. The first prefix that fits a file is its room. */
const ROOMS: readonly {
  readonly room: string;
  readonly ours: readonly string[];
  readonly packages: readonly RegExp[];
}[] = [
  { room: "grammar", ours: [], packages: [/^ohm-js$/] },
  { room: "server/core", ours: [], packages: [/^jstat$/] },
  {
    room: "server/model",
    ours: ["grammar", "server/core"],
    packages: [/^dequal\/lite$/],
  },
  // the names that records have
  { room: "server/record-names", ours: [], packages: [] },
  // plain files of the disk
  { room: "server/plain-file", ours: [], packages: [/^node:/] },
  { room: "server/why-not", ours: ["server/model"], packages: [] },
  // folders of the disk
  {
    room: "server/make-folder",
    ours: ["server/why-not"],
    packages: [/^node:/],
  },
  {
    room: "server/rules",
    ours: ["grammar", "server/core", "server/model", "server/record-names"],
    packages: [/^fastest-levenshtein$/],
  },
  {
    room: "server/ide",
    ours: [
      "grammar",
      "server/core",
      "server/model",
      "server/rules",
      "server/pictures",
      "server/markup",
      "server/protocol",
    ],
    packages: [/^fastest-levenshtein$/],
  },
  { room: "server/markup", ours: [], packages: [] },
  {
    room: "server/pictures",
    ours: [
      "grammar",
      "server/core",
      "server/model",
      "server/rules",
      "server/records",
      "server/markup",
    ],
    packages: [],
  },
  {
    room: "server/sheet",
    ours: [
      "grammar",
      "server/core",
      "server/model",
      "server/rules",
      "server/pictures",
      "server/markup",
    ],
    packages: [],
  },
  {
    room: "server/compare",
    ours: [
      "grammar",
      "server/core",
      "server/model",
      "server/rules",
      "server/markup",
    ],
    packages: [],
  },
  {
    room: "server/records",
    ours: ["grammar", "server/core", "server/model", "server/markup"],
    packages: [],
  },
  // Parquet files of what checks say; DuckDB is loaded when it is asked for
  {
    room: "server/archive",
    ours: [
      "server/core",
      "server/model",
      "server/rules",
      "server/make-folder",
      "server/why-not",
    ],
    packages: [/^node:/, /^@duckdb\/node-api$/],
  },
  // files of states in version control; it knows no records
  {
    room: "server/history",
    ours: ["server/plain-file"],
    packages: [/^node:/],
  },
  // types and names that the extension and the server share
  { room: "server/protocol", ours: ["server/model"], packages: [] },
  {
    room: "server/lsp",
    ours: [
      "grammar",
      "server/model",
      "server/rules",
      "server/markup",
      "server/pictures",
      "server/sheet",
      "server/compare",
      "server/records",
      "server/ide",
      "server/protocol",
      "server/record-names",
    ],
    packages: [
      /^vscode-languageserver(-textdocument|-types|-protocol)?(\/|$)/,
      /^dequal\/lite$/,
    ],
  },
  {
    room: "server/cli",
    ours: [
      "grammar",
      "server/core",
      "server/model",
      "server/rules",
      "server/sheet",
      "server/compare",
      "server/records",
      "server/pictures",
      "server/history",
      "server/archive",
      "server/make-folder",
      "server/plain-file",
      "server/record-names",
      "server/why-not",
    ],
    packages: [
      /^node:/,
      /^commander$/,
      /^picocolors$/,
      /^fastest-levenshtein$/,
    ],
  },
  {
    room: "server/main",
    ours: [
      "server/lsp",
      "server/history",
      "server/plain-file",
      "server/record-names",
    ],
    packages: [/^node:/, /^vscode-languageserver\/(node|browser)$/],
  },
  // not shipped: it writes the TextMate grammar from the vocabulary
  { room: "client/syntaxes", ours: ["grammar"], packages: [] },
  {
    room: "client",
    ours: ["server/protocol", "server/record-names"],
    packages: [/^node:/, /^vscode$/, /^vscode-languageclient(\/|$)/],
  },
];

function sources(folder: string): readonly string[] {
  return readdirSync(path.join(root, folder), {
    recursive: true,
    encoding: "utf8",
  })
    .filter((file) => file.endsWith(".ts") && !file.endsWith(".d.ts"))
    .map((file) => `${folder}/${file.replaceAll("\\", "/")}`);
}

function roomOf(file: string): (typeof ROOMS)[number] | undefined {
  return ROOMS.find(
    ({ room }) => file.startsWith(`${room}/`) || file.startsWith(`${room}.`),
  );
}

/** What a file imports: ours as paths from the root, packages by name. */
function importsOf(file: string): readonly string[] {
  const text = readFileSync(path.join(root, file), "utf8");
  return [
    ...text.matchAll(
      /^(?:import|export)\b[^"';]*?from\s+"([^"]+)"|^import\s+"([^"]+)"|\bimport\("([^"]+)"\)/gm,
    ),
  ]
    .map((match) => match[1] ?? match[2] ?? match[3] ?? "")
    .map((written) =>
      written.startsWith(".")
        ? path.posix.join(path.posix.dirname(file), written)
        : written,
    );
}

const files = ["grammar", "server", "client"].flatMap(sources);

test("every source lies in a room", () => {
  expect(files.filter((file) => roomOf(file) === undefined)).toEqual([]);
  expect(files.length).toBeGreaterThan(100);
});

describe("imports go downward only", () => {
  test.each(ROOMS)("$room", ({ room, ours, packages }) => {
    const climbing = files
      .filter((file) => roomOf(file)?.room === room)
      .flatMap((file) =>
        importsOf(file)
          .filter((imported) => {
            const target = roomOf(imported);
            if (target !== undefined)
              return target.room !== room && !ours.includes(target.room);
            return !(
              imported === "package.json" ||
              packages.some((allowed) => allowed.test(imported))
            );
          })
          .map((imported) => `${file} imports ${imported}`),
      );
    expect(climbing).toEqual([]);
  });
});

test("only engine.ts loads DuckDB", () => {
  const loading = files.filter((file) =>
    /(?<!typeof )import\("@duckdb|(?<!import type [^;]*)from "@duckdb/u.test(
      readFileSync(path.join(root, file), "utf8"),
    ),
  );
  expect(loading).toEqual(["server/archive/engine.ts"]);
});

test("a state of an archive is written through disk.ts; its folder and its lock alone are made elsewhere", () => {
  const writing = files.flatMap((file) => {
    if (roomOf(file)?.room !== "server/archive") return [];
    const text = readFileSync(path.join(root, file), "utf8");
    const writes = [
      ...text.matchAll(
        /import \{([^}]*)\} from "(?:node:fs\/promises|\.\.\/make-folder\.ts)"/gu,
      ),
    ]
      .flatMap(([, names = ""]) => names.split(","))
      .map((name) => name.trim())
      .filter(
        (name) => name !== "" && !/^(?:read|stat|lstat|access)/u.test(name),
      );
    return writes.length === 0
      ? []
      : [`${path.basename(file)}: ${writes.join(" ")}`];
  });
  expect(writing).toEqual([
    "archive.ts: makeFolder",
    "disk.ts: appendFile copyFile link open rename rm symlink makeFolder",
    "lock.ts: link rename rm writeFile",
  ]);
});

test("only by-ohm.ts calls Ohm", () => {
  const callers = files.filter((file) => importsOf(file).includes("ohm-js"));
  expect(callers).toEqual(["grammar/by-ohm.ts"]);
});

test("the ending of a record's name is told in one place", () => {
  const telling = files.filter((file) =>
    /"\.thou"|\\\.thou\$/u.test(readFileSync(path.join(root, file), "utf8")),
  );
  expect(telling).toEqual(["server/record-names.ts"]);
});

test("why a file can't be read or written is put in words in one place", () => {
  const wording = files.filter((file) =>
    /\bE(?:NOSPC|ACCES|ROFS)\b.*: "[a-z]|case "E[A-Z]+":/u.test(
      readFileSync(path.join(root, file), "utf8"),
    ),
  );
  expect(wording).toEqual(["server/why-not.ts"]);
});

test("whether a file of the disk may be read as a record is asked in one place", () => {
  // whoever reads what is not a record, or says why it is none, asks for more than that
  const others = ["server/cli/answer-cache.ts", "server/cli/sheet.ts"];
  const asking = files.filter(
    (file) =>
      /\bstat\([^]*?\.isFile\(\)/u.test(
        readFileSync(path.join(root, file), "utf8"),
      ) && !others.includes(file),
  );
  expect(asking).toEqual(["server/plain-file.ts"]);
});
