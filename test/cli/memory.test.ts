// The command over a record of a hundred thousand entries, and over many records, with little memory: the engine ends a process that takes more
// than it is given.
import { expect, test } from "vitest";
import { bundledCommand, runEngine } from "./bundled-command.ts";
import { folderWith } from "./in-process.ts";
import { liveCheck } from "./live.ts";

/** A part, a journal, a bore and the fit of the two, on eight lines. */
function fit(at: number): string {
  return `part p${at}
journal j${at} on p${at}
  limits 25 mm h6
  read 24.99 24.995
bore b${at} in p${at}
  limits 25 H7
fit f${at} of journal j${at} in bore b${at}
  want 0.01 to 0.05
`;
}

test(
  "a hundred thousand entries are read as far as a file is read, in 400 MB",
  { timeout: 240_000 },
  async () => {
    const { command } = await bundledCommand();
    const entries = Array.from({ length: 25_000 }, (_, at) => fit(at));
    const cwd = await folderWith({
      "a.thou": `job a\n  units mm\n${entries.join("")}`,
    });
    const { code, out } = await runEngine(
      ["--max-old-space-size=400", command, "check", "a.thou"],
      cwd,
    );
    expect(code).toBe(1);
    // as the terminal breaks lines
    expect(out.replace(/\s+/gu, " ")).toContain(
      "This file has 200,003 lines, and a file is read up to its line 50,000",
    );
  },
);

test(
  "forty thousand findings are written as SARIF in 64 MB",
  { timeout: 240_000 },
  async () => {
    const { command } = await bundledCommand();
    const names = Array.from({ length: 100 }, (_, at) => `r${100 + at}.thou`);
    const unknown = Array.from({ length: 400 }, (_, at) => `wosit w${at}\n`);
    const cwd = await folderWith(
      Object.fromEntries(
        names.map((name) => [name, `job a\n  units mm\n${unknown.join("")}`]),
      ),
    );
    const { code, out } = await runEngine(
      [
        "--max-old-space-size=64",
        command,
        "check",
        "--jobs",
        "1",
        "--format",
        "sarif",
      ],
      cwd,
    );
    expect(code).toBe(1);
    const log = JSON.parse(out) as {
      readonly runs: readonly { readonly results: readonly unknown[] }[];
    };
    const results = log.runs[0]?.results ?? [];
    expect(results).toHaveLength(40_000);
    for (const [at, line] of [
      [0, 3],
      [39_999, 402],
    ] as const)
      expect(results[at]).toMatchObject({
        ruleId: "word-unknown",
        ruleIndex: 0,
        locations: [
          {
            physicalLocation: {
              artifactLocation: { uri: names[Math.floor(at / 400)] },
              region: { startLine: line },
            },
          },
        ],
      });
  },
);

test(
  "a record more costs a hundred bytes: its name, and nothing that was worked out of it",
  { timeout: 240_000 },
  async () => {
    const bytesOf = await liveCheck();
    const FEW = 6000;
    const MANY = 4 * FEW;
    const cwd = await folderWith(
      Object.fromEntries(
        Array.from({ length: MANY }, (_, at) => [
          `${at < FEW ? "few" : "more"}/shop-${1000 + (at % 50)}/winch-${at}.thou`,
          "job a\n  units mm\n",
        ]),
      ),
    );
    const few = await bytesOf(FEW, cwd, ["--jobs", "1", "few"]);
    const many = await bytesOf(MANY, cwd, ["--jobs", "1"]);
    expect((many - few) / (MANY - FEW)).toBeLessThan(100);
  },
);
