// The SARIF of `check` against the schema of the standard, and the few things that the schema cannot say.
import { readFileSync } from "node:fs";
import { fileURLToPath, pathToFileURL } from "node:url";
import path from "node:path";
import { Ajv2020 } from "ajv/dist/2020.js";
import { describe, expect, test } from "vitest";
import { finding, type FakeWorld } from "./fake-project.ts";
import { folderWith, thou } from "./in-process.ts";
import { CRIB, WINCH, WINCH_WORLD } from "./winch.ts";

const schema = JSON.parse(
  readFileSync(
    fileURLToPath(new URL("sarif-2.1.0.schema.json", import.meta.url)),
    "utf8",
  ),
) as object;
const ajv = new Ajv2020({ strict: false, allErrors: true });
ajv.addFormat("uri", (text: string) => URL.canParse(text));
ajv.addFormat(
  "uri-reference",
  (text: string) =>
    /^[\w.~:/?#[\]@!$&'()*+,;=%-]*$/.test(text) &&
    URL.canParse(text, "file:///base/"),
);
ajv.addFormat("date-time", true);
ajv.addFormat("uuid", true);
const validate = ajv.compile(schema);

interface Location {
  readonly physicalLocation: {
    readonly artifactLocation: {
      readonly uri: string;
      readonly uriBaseId?: string;
    };
    readonly region: object;
  };
}
interface Result {
  readonly ruleId: string;
  readonly ruleIndex: number;
  readonly level: string;
  readonly message: { readonly text: string };
  readonly locations: readonly Location[];
  readonly relatedLocations?: readonly Location[];
  readonly suppressions?: readonly object[];
}
interface Log {
  readonly runs: readonly {
    readonly tool: {
      readonly driver: { readonly rules: readonly { readonly id: string }[] };
    };
    readonly columnKind: string;
    readonly invocations: readonly {
      readonly executionSuccessful: boolean;
      readonly toolExecutionNotifications: readonly object[];
    }[];
    readonly results: readonly Result[];
  }[];
}

const PAGES = {
  "fit-loose":
    "# fit-loose\n\nThe fit leaves {more} than is wanted. And so on.\n",
};

async function run(
  files: Readonly<Record<string, string | Uint8Array>>,
  project: FakeWorld,
  below = ".",
): Promise<Log["runs"][number]> {
  const cwd = path.join(await folderWith(files), below);
  const { out } = await thou(
    [
      "check",
      "--format",
      "sarif",
      ...Object.keys(files).map((name) => path.relative(below, name)),
    ],
    {
      cwd,
      project,
      parts: { pages: PAGES },
    },
  );
  const log: unknown = JSON.parse(out);
  validate(log);
  expect(validate.errors ?? []).toEqual([]);
  const only = (log as Log).runs[0];
  if (only === undefined) throw new Error("no run");
  return only;
}

test("the schema refuses what is no SARIF", () => {
  expect(validate({ version: "2.1.0", runs: [{ results: [] }] })).toBe(false);
  expect(
    validate({
      version: "2.1.0",
      runs: [
        {
          tool: { driver: { name: "x" } },
          results: [{ level: "hint", message: { text: "m" } }],
        },
      ],
    }),
  ).toBe(false);
});

describe("a check", () => {
  test("is valid, with a rule for each code that was found", async () => {
    const { results, tool, columnKind, invocations } = await run(
      { "shop/winch.thou": WINCH, "shop/crib.thou": CRIB },
      WINCH_WORLD,
    );
    const ids = tool.driver.rules.map(({ id }) => id);
    expect(ids).toEqual([
      "film-thin",
      "fit-loose",
      "out-of-round",
      "reading-off-limits",
      "word-unknown",
    ]);
    for (const result of results)
      expect(ids[result.ruleIndex]).toBe(result.ruleId);
    expect(tool.driver.rules[1]).toMatchObject({
      shortDescription: { text: "The fit leaves {{more}} than is wanted." },
    });
    expect(columnKind).toBe("utf16CodeUnits");
    expect(invocations).toEqual([
      { executionSuccessful: true, toolExecutionNotifications: [] },
    ]);
    expect(results.map(({ level }) => level)).toEqual([
      "error",
      "note",
      "warning",
      "error",
      "note",
    ]);
  });

  test("suppresses what a concession accepts, and nothing else", async () => {
    const { results } = await run({ "winch.thou": WINCH }, WINCH_WORLD);
    expect(
      results.filter(({ suppressions }) => suppressions !== undefined),
    ).toMatchObject([
      {
        ruleId: "film-thin",
        suppressions: [
          {
            kind: "inSource",
            status: "accepted",
            justification: "concession slow-start",
          },
        ],
      },
    ]);
  });

  test("places findings and what is related to them from the root of the sources", async () => {
    const { results } = await run(
      { "shop 1/w\u{E4}lle#1.thou": WINCH },
      {
        checks: {
          "w\u{E4}lle#1.thou": WINCH_WORLD.checks["winch.thou"] ?? fail,
        },
      },
    );
    const loose = results.find(({ ruleId }) => ruleId === "fit-loose");
    const artifactLocation = {
      uri: "shop%201/w%C3%A4lle%231.thou",
      uriBaseId: "%SRCROOT%",
    };
    expect(loose?.locations).toEqual([
      {
        physicalLocation: {
          artifactLocation,
          region: { startLine: 15, startColumn: 3, endLine: 15, endColumn: 24 },
        },
        logicalLocations: [{ fullyQualifiedName: "fit front" }],
      },
    ]);
    expect(loose?.relatedLocations).toMatchObject([
      {
        physicalLocation: { artifactLocation, region: { startLine: 6 } },
        message: { text: "Journal front reads down to 0.8736 in." },
      },
      { physicalLocation: { artifactLocation, region: { startLine: 12 } } },
    ]);
  });

  test("names a file outside the working folder by its whole address", async () => {
    const { results } = await run(
      { "crib.thou": CRIB, "jobs/x.thou": "job x\n" },
      WINCH_WORLD,
      "jobs",
    );
    const [location] = results[0]?.locations ?? [];
    expect(location?.physicalLocation.artifactLocation).toEqual({
      uri: expect.stringMatching(/^file:\/\/\/.*\/crib\.thou$/) as string,
    });
    expect(location?.physicalLocation.artifactLocation.uri).not.toContain("..");
    expect(URL.canParse(pathToFileURL("/x").href)).toBe(true);
  });

  test("says what could not be read", async () => {
    const { invocations } = await run(
      { "bad.thou": new Uint8Array([0xff]), "winch.thou": WINCH },
      WINCH_WORLD,
    );
    expect(invocations).toMatchObject([
      {
        executionSuccessful: false,
        toolExecutionNotifications: [
          {
            level: "error",
            message: { text: expect.stringContaining("bad.thou") as string },
          },
        ],
      },
    ]);
  });

  test("lets no text act as a place to fill in or as a link", async () => {
    const checks: FakeWorld["checks"] = {
      "a.thou": (file) => ({
        findings: [
          finding(
            { file, line: 0, start: 0, end: 0 },
            {
              code: "x",
              level: "error",
              message: "{0} and [this](https://a.example)",
            },
          ),
        ],
        results: [],
      }),
    };
    const { results } = await run({ "a.thou": "" }, { checks });
    expect(results[0]?.message.text).toBe(
      "{{0}} and \\[this\\](https://a.example)",
    );
  });
});

function fail(): never {
  throw new Error("no such check");
}
